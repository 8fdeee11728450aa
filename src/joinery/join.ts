import { type Board, type Face, faces, type Mortise } from '../board/index.js';
import { JoinError } from '../errors.js';
import { type Frame, frameIn, pointOut, scale, turnedOver, type Vec2 } from '../frame/index.js';
import { minimumRectangle, regionArea } from '../profile/index.js';
import type { Span } from './clear-span.js';
import { contact, planeAlong, regionIn } from './contact.js';
import type { Fit, Joint, Tenon } from './joint.js';
import { checkedOptions, type JoinOptions } from './options.js';
import { PRACTICE } from './practice.js';
import { type Footprint, type Side, sideOf, spanAcross, spanAlong, usualDepth } from './side.js';

/** A board, where it stands, and its faces when they are known already. */
export interface Joinable {
  readonly board: Board;
  /** Board frame written in the assembly frame. */
  readonly place: Frame;
  readonly faces?: readonly Face[];
}

/** What a joint made of two boards. */
export interface Joined {
  readonly a: Board;
  readonly b: Board;
  readonly joint: Joint;
}

/** Cutters most shops have, mm. Common practice, no source. */
const USUAL_CUTTERS: readonly number[] = [6, 8, 10, 12];

/** A mortise shorter than its width plus this is a hole, not a mortise. */
const LEAST_RUN = 4;

/**
 * Joins two boards that touch with loose tenons.
 *
 * The seat is the patch on which they touch; the axis is normal to it; the mortises run along its longer side. Both
 * mortises and the tenon come from the same seat, so they are in line by construction.
 *
 * @param a one board, standing in the assembly frame
 * @param b the other
 * @param options lengths mm; what is left out follows {@link PRACTICE}
 * @returns both boards with their mortises, and the joint
 * @throws JoinError `no-contact` when the boards do not touch, `no-room` when the seat is too small, `join-option`
 */
export function join(a: Joinable, b: Joinable, options: JoinOptions = {}): Joined {
  const id = options.id ?? `${a.board.id}/${b.board.id}`;
  checkedOptions(id, [a.board.id, b.board.id], options);
  const touch = contact(standing(a), standing(b));
  const box = minimumRectangle(touch.patch);
  const across: Vec2 = [-box.along[1], box.along[0]];
  const seat = readable(planeAlong(touch.plane, box.centre, options.turned ? across : box.along));
  const patch = regionIn(touch.plane, seat, touch.patch);
  const sides = [
    sideOf('a', a.board, a.place, touch.faceA, seat),
    sideOf('b', b.board, b.place, touch.faceB, seat),
  ] as const;

  const thinner = Math.min(a.board.blank.thickness, b.board.blank.thickness);
  const fit: Fit = {
    cheek: options.cheekClearance ?? PRACTICE.cheekClearance,
    edge: options.edgeClearance ?? PRACTICE.edgeClearance,
    end: options.endGap ?? PRACTICE.endGap,
  };
  const cutter = options.cutter ?? nearest(options.cutters ?? USUAL_CUTTERS, thinner * PRACTICE.tenonShare);
  const thickness = options.tenonThickness ?? cutter - 2 * fit.cheek;
  const refuse = (text: string): never => {
    throw new JoinError('no-room', `joint ${id}: ${text}`);
  };
  if (thickness <= 0)
    refuse(`a ${cutter} mm cutter leaves no tenon between two cheek clearances of ${fit.cheek} mm`);

  const patchSide: Side = { ...sides[0], section: () => patch };
  const inset = options.endInset ?? PRACTICE.endInset;
  const half = (options.turned ? box.width : box.length) / 2;
  const inner = Math.max(half - inset, cutter / 2);
  let foot: Footprint = {
    along: { from: -inner, to: inner },
    across: options.shiftAcross ?? 0,
    width: cutter,
  };
  let depths: readonly number[] = [];
  let room: Span | undefined;
  // the ends of the mortises move the balance across a little, and the other way round: twice is enough
  for (let round = 0; round < 2; round += 1) {
    const now = foot;
    depths = sides.map((side) => options.depths?.[side.board.id] ?? usualDepth(side, now, thickness));
    const mouth = spanAcross([patchSide], [0], foot);
    if (!mouth || mouth.to - mouth.from < cutter) {
      refuse(
        `its seat is ${(mouth ? mouth.to - mouth.from : 0).toFixed(1)} mm wide and the cutter ${cutter} mm: use a thinner cutter or thicker boards`,
      );
    }
    const walls = spanAcross([...sides, patchSide], [...depths, 0], foot);
    if (options.shiftAcross === undefined && walls) foot = { ...foot, across: (walls.from + walls.to) / 2 };
    room = spanAlong([...sides, patchSide], [...depths, 0], foot) ?? spanAlong([patchSide], [0], foot);
    if (!room) refuse('its mortises leave the seat: shift them towards its middle');
    if (room && room.to - room.from > 2 * inset + cutter) {
      foot = { ...foot, along: { from: room.from + inset, to: room.to - inset } };
    }
  }
  if (!room) return refuse('its seat has no room');
  const row = layOut(id, room, inset, cutter, fit, options);

  const tenons = row.centres.map((centre, i): Tenon => {
    const place: Frame = {
      ...seat,
      origin: pointOut(seat, [centre + (options.shiftAlong ?? 0), foot.across, 0]),
    };
    const intoA = depths[0]! - fit.end;
    const intoB = depths[1]! - fit.end;
    return {
      id: `${id}/${i + 1}`,
      place,
      thickness,
      width: row.length - fit.edge,
      length: intoA + intoB,
      intoA,
      intoB,
    };
  });
  if (tenons.some((tenon) => tenon.intoA <= 0 || tenon.intoB <= 0)) {
    refuse(
      `its mortises are ${depths.map((depth) => depth.toFixed(1)).join(' and ')} mm deep and the tenon keeps ${fit.end} mm from each bottom: no tenon is left`,
    );
  }
  const joint: Joint = {
    id,
    a: a.board.id,
    b: b.board.id,
    seat,
    contactAreaMm2: regionArea(patch),
    cutter,
    fit,
    endInset: inset,
    thinner,
    tenons,
  };
  const [intoA, intoB] = sides.map((side, i) => ({
    ...side.board,
    mortises: [
      ...side.board.mortises,
      ...tenons.map((tenon) => mortise(side, tenon, joint, row.length, depths[i]!)),
    ],
  }));
  return { a: intoA!, b: intoB!, joint };
}

/** The seat with x to the right, away or up rather than the other way: two hands of a piece read alike. */
function readable(seat: Frame): Frame {
  const largest = seat.x.reduce((best, part) => (Math.abs(part) > Math.abs(best) + 1e-9 ? part : best), 0);
  return largest < 0 ? { ...seat, x: scale(seat.x, -1), y: scale(seat.y, -1) } : seat;
}

/** The mortise for a tenon, in its board's own frame. */
function mortise(side: Side, tenon: Tenon, joint: Joint, length: number, depth: number): Mortise {
  const mouth = side.board.id === joint.a ? tenon.place : turnedOver(tenon.place);
  return {
    id: tenon.id,
    face: side.face.id,
    at: frameIn(side.place, mouth),
    width: joint.cutter,
    length,
    depth,
    joint: joint.id,
    tenon: tenon.id,
  };
}

/** Mortises of one length in a row, the outer ones against the insets. */
function layOut(
  id: string,
  room: Span,
  inset: number,
  cutter: number,
  fit: Fit,
  options: JoinOptions,
): { length: number; centres: readonly number[] } {
  const web = options.web ?? PRACTICE.web;
  const whole = room.to - room.from;
  const usable = Math.max(whole - 2 * inset, 0);
  const usual = (options.tenonWidth ?? PRACTICE.tenonWidth) + fit.edge;
  const count = options.tenons ?? Math.max(1, Math.round((usable + web) / (usual + web)));
  const widest = Math.floor(((usable - (count - 1) * web) / count) * 2) / 2;
  const length = options.tenonWidth === undefined ? widest : options.tenonWidth + fit.edge;
  if (length < cutter + (options.tenonWidth === undefined ? LEAST_RUN : 0)) {
    throw new JoinError(
      'no-room',
      `joint ${id}: its seat is ${whole.toFixed(1)} mm long; with ${inset} mm kept at each end and ${count} tenon${count > 1 ? 's' : ''} a mortise would be ${Math.max(length, 0).toFixed(1)} mm long, shorter than the ${cutter} mm cutter needs: use fewer tenons, a smaller inset, a thinner cutter or wider boards`,
    );
  }
  const needed = count * length + (count - 1) * (options.tenonWidth === undefined ? web : 0);
  if (needed > whole) {
    throw new JoinError(
      'no-room',
      `joint ${id}: ${count} mortise${count > 1 ? 's' : ''} of ${length.toFixed(1)} mm need ${needed.toFixed(1)} mm and its seat is ${whole.toFixed(1)} mm long: use narrower or fewer tenons`,
    );
  }
  const middle = (room.from + room.to) / 2;
  if (count === 1) return { length, centres: [middle] };
  // wider than the insets allow: keep them on the seat, the end-inset check speaks
  const spread = Math.min(Math.max(usable - length, (count - 1) * length), whole - length);
  const centres = Array.from({ length: count }, (_, i) => middle - spread / 2 + (spread * i) / (count - 1));
  return { length, centres };
}

const standing = (j: Joinable) => ({ id: j.board.id, place: j.place, faces: j.faces ?? faces(j.board) });

const nearest = (sizes: readonly number[], wanted: number): number =>
  sizes.reduce((best, size) => (Math.abs(size - wanted) < Math.abs(best - wanted) ? size : best));

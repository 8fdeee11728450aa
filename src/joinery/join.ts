import { type Board, type Face, faces, type Mortise } from '../board/index.js';
import { type ErrorText, JoinError } from '../errors.js';
import {
  directionIn,
  directionOut,
  type Frame,
  frame,
  frameIn,
  pointOut,
  scale,
  turnedOver,
  type Vec2,
} from '../frame/index.js';
import { minimumRectangle, regionArea } from '../profile/index.js';
import { SAME_POINT } from '../tolerances.js';
import { dropOf, type Lean, leanOf } from './axis.js';
import type { Span } from './clear-span.js';
import { contact, planeAlong, regionIn } from './contact.js';
import type { Fit, Joint, Tenon } from './joint.js';
import { checkedOptions, type JoinOptions } from './options.js';
import { PRACTICE } from './practice.js';
import { layOut } from './row.js';
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

/**
 * Joins two boards that touch with loose tenons.
 *
 * The seat is the patch on which they touch; the axis is normal to it unless asked otherwise; the mortises run along its longer side. Both
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
  const lean = leanOf(id, options.axis, seat, [a.place.x, b.place.x]);
  const sides = [
    sideOf('a', a.board, a.place, touch.faceA, seat, lean.axis),
    sideOf('b', b.board, b.place, touch.faceB, seat, lean.axis),
  ] as const;

  const thinner = Math.min(a.board.blank.thickness, b.board.blank.thickness);
  const fit: Fit = {
    cheek: options.cheekClearance ?? PRACTICE.cheekClearance,
    edge: options.edgeClearance ?? PRACTICE.edgeClearance,
    end: options.endGap ?? PRACTICE.endGap,
  };
  const cutter = options.cutter ?? nearest(options.cutters ?? USUAL_CUTTERS, thinner * PRACTICE.tenonShare);
  const thickness = options.tenonThickness ?? cutter - 2 * fit.cheek;
  const refuse = (text: ErrorText): never => {
    throw new JoinError('no-room', (say) => `joint ${id}: ${typeof text === 'string' ? text : text(say)}`);
  };
  if (thickness <= 0) {
    refuse(
      (say) =>
        `a cutter of ${say.fine(cutter)} leaves no tenon between two cheek clearances of ${say.fine(fit.cheek)}: use a wider cutter or less clearance`,
    );
  }
  if (thickness > cutter) {
    refuse(
      (say) =>
        `its tenon is ${say.fine(thickness)} thick and the cutter, which makes the mortise, ${say.fine(cutter)}: use a wider cutter or a thinner tenon`,
    );
  }

  // what the cutter takes of the seat across: more when it leans
  const swath = cutter * lean.across;
  const patchSide: Side = { ...sides[0], section: () => patch };
  const inset = options.endInset ?? PRACTICE.endInset;
  const half = (options.turned ? box.width : box.length) / 2;
  const inner = Math.max(half - inset, swath / 2);
  let foot: Footprint = {
    along: { from: -inner, to: inner },
    across: options.shiftAcross ?? 0,
    width: swath,
  };
  let depths: readonly number[] = [];
  let room: Span | undefined;
  // the ends of the mortises move the balance across a little, and the other way round: twice is enough
  for (let round = 0; round < 2; round += 1) {
    const now = foot;
    depths = sides.map((side) => options.depths?.[side.board.id] ?? usualDepth(side, now, thickness));
    const mouth = spanAcross([patchSide], [0], foot);
    if (!mouth || mouth.to - mouth.from < swath) {
      refuse((say) =>
        mouth
          ? `its seat is ${say.length(mouth.to - mouth.from)} wide; allowed is at least the cutter, ${say.fine(swath)}: use a thinner cutter or thicker boards`
          : `no straight mortise fits ${foot.across === 0 ? 'round' : `${say.fine(foot.across)} off`} the middle of its seat, ${say.length(box.length)} long and ${say.length(box.width)} wide: change shiftAcross, or keep openings out of the seat`,
      );
    }
    if (
      mouth &&
      (foot.across - swath / 2 < mouth.from - SAME_POINT || foot.across + swath / 2 > mouth.to + SAME_POINT)
    ) {
      const most = (mouth.to - mouth.from - swath) / 2;
      refuse(
        (say) =>
          `shiftAcross puts its mortises ${say.fine(foot.across)} off the middle of its seat; allowed is ${say.fine(most)} each way: shift them less`,
      );
    }
    const walls = spanAcross([...sides, patchSide], [...depths, 0], foot);
    if (options.shiftAcross === undefined && walls) foot = { ...foot, across: (walls.from + walls.to) / 2 };
    room = spanAlong([...sides, patchSide], [...depths, 0], foot) ?? spanAlong([patchSide], [0], foot);
    if (!room)
      refuse('its mortises leave the wood at their middle: shift them towards the middle of the seat');
    if (room && room.to - room.from > 2 * inset + cutter) {
      foot = { ...foot, along: { from: room.from + inset, to: room.to - inset } };
    }
  }
  if (!room) return refuse('its seat has no room');
  const row = rowAlong(id, room, { inset, cutter, fit, thickness }, options, lean);
  // a depth that is given counts from the short point of the mouth
  const drop = dropOf(lean, row.length, cutter);
  depths = sides.map((side, i) => depths[i]! + (options.depths?.[side.board.id] === undefined ? 0 : drop));

  const tenons = row.centres.map((centre, i): Tenon => {
    const origin = pointOut(seat, [centre, foot.across, 0]);
    const place: Frame =
      drop === 0 ? { ...seat, origin } : frame(origin, directionOut(seat, lean.axis), seat.x);
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
  if (tenons.some((tenon) => tenon.intoA <= drop || tenon.intoB <= drop)) {
    refuse(
      (say) =>
        `its mortises are ${depths.map((depth) => say.length(depth)).join(' and ')} deep and the tenon keeps ${say.fine(fit.end)} from each bottom, so no tenon is left: deepen the mortises or lower the end gap`,
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
    web: options.web ?? PRACTICE.web,
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
  const leaning = tenon.place.z !== joint.seat.z;
  return {
    id: tenon.id,
    face: side.face.id,
    ...(leaning ? { faceNormal: directionIn(side.place, side.out.z) } : {}),
    at: frameIn(side.place, mouth),
    width: joint.cutter,
    length,
    depth,
    joint: joint.id,
    tenon: tenon.id,
  };
}

/** The row of mortises on the seat; for an oblique one it is laid out square to the axis and seen along it. */
function rowAlong(
  id: string,
  room: Span,
  of: Parameters<typeof layOut>[2],
  options: JoinOptions,
  { along, skew }: Lean,
): ReturnType<typeof layOut> {
  if (along === 1 && skew === 0) return layOut(id, room, of, options);
  const ends = (of.cutter * skew) / 2;
  const seen = { from: room.from / along + ends, to: room.to / along - ends };
  const row = layOut(
    id,
    seen,
    { ...of, inset: of.inset / along },
    {
      ...options,
      web: (options.web ?? PRACTICE.web) / along,
      shiftAlong: (options.shiftAlong ?? 0) / along,
    },
  );
  return { ...row, centres: row.centres.map((centre) => centre * along) };
}

const standing = (j: Joinable) => ({ id: j.board.id, place: j.place, faces: j.faces ?? faces(j.board) });

const nearest = (sizes: readonly number[], wanted: number): number =>
  sizes.reduce((best, size) => (Math.abs(size - wanted) < Math.abs(best - wanted) ? size : best));

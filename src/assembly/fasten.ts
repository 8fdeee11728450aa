import { type Board, faceFrame, faces, type Groove, type Hole, type Slot } from '../board/index.js';
import { type ErrorText, JoinError } from '../errors.js';
import {
  add,
  cross,
  directionOut,
  dot,
  type Frame,
  frame,
  frameIn,
  frameOut,
  pointIn,
  pointOut,
  scale,
  subtract,
  unit,
  type Vec3,
} from '../frame/index.js';
import { type Contact, contacts } from '../joinery/index.js';
import { seasonalMovement } from '../movement/index.js';
import { minimumRectangle } from '../profile/index.js';
import { type ButtonSize, buttonPieces } from './button.js';
import type { Hardware } from './design.js';
import type { Fastening, FastenRequest } from './fastening.js';
import type { PlacedBoard } from './placed-board.js';
import { screwPieces, screwSizes } from './wood-screw.js';

/** Two boards with what was cut for their fastenings, and the pieces that go in. */
export interface Fastened {
  readonly held: Board;
  readonly to: Board;
  readonly fastenings: readonly Fastening[];
  readonly hardware: readonly Hardware[];
}

/** Common practice, no source; mm. */
const FASTEN = {
  spacing: 300,
  fromEnd: 75,
  slotBelow: 10,
  slotWidth: 8,
  slotDepth: 12,
  /** Wood under the tip of a screw: its point must not show. */
  underTip: 4,
  /** A screw through more than this wants a counterbore or a button. */
  thickest: 35,
  /** Air of a tongue in its slot beyond its travel. */
  air: 0.5,
} as const;

/**
 * Fastens a board to another without glue: a table top on an apron. What its buttons or screws need is cut into both.
 *
 * @throws JoinError `fasten` when a size does not fit, `no-contact` when the boards do not touch
 * @example fasten(top, apron, { held: 'top', to: 'apron', by: 'button' }).hardware
 */
export function fasten(held: PlacedBoard, to: PlacedBoard, request: FastenRequest): Fastened {
  const refuse = (text: ErrorText): never => {
    throw new JoinError(
      'fasten',
      (say) => `fastening ${request.held}/${request.to}: ${typeof text === 'string' ? text : text(say)}`,
    );
  };
  for (const name of ['travel', 'screwLength', 'slotBelow', 'slotWidth', 'slotDepth', 'tongue'] as const) {
    const value = request[name];
    if (value !== undefined && !(Number.isFinite(value) && value >= 0))
      refuse(`${name} is ${value}; it must be 0 or more: give a length`);
  }
  const touch = contacts(standing(to), standing(held))[0]!;
  const box = minimumRectangle(touch.patch);
  const middle = pointOut(touch.plane, [box.centre[0], box.centre[1], 0]);
  const run = directionOut(touch.plane, [box.along[0], box.along[1], 0]);
  const up = touch.plane.z;
  const grain = held.place.x;
  const along = unit(cross(grain, up));
  const count =
    request.count ?? Math.max(2, Math.ceil((box.length - 2 * FASTEN.fromEnd) / FASTEN.spacing) + 1);
  const span = box.length - 2 * Math.min(FASTEN.fromEnd, box.length / 4);
  const places = Array.from({ length: count }, (_, i) =>
    add(middle, scale(run, count === 1 ? 0 : span * (i / (count - 1) - 1 / 2))),
  );
  const made = places.map(
    (place, i): Place => ({
      id: `${request.held}/${request.to}:${i + 1}`,
      place,
      travel: request.travel ?? seasonalMovement(held.board.material, fromMiddle(held, place, along)),
    }),
  );
  const pieces = { held, to, request, touch, run, up, along, made, refuse };
  return request.by === 'button' ? buttons(pieces) : screws(pieces);
}

interface Place {
  readonly id: string;
  readonly place: Vec3;
  readonly travel: number;
}

interface Asked {
  readonly held: PlacedBoard;
  readonly to: PlacedBoard;
  readonly request: FastenRequest;
  readonly touch: Contact;
  readonly run: Vec3;
  readonly up: Vec3;
  readonly along: Vec3;
  readonly made: readonly Place[];
  readonly refuse: (text: ErrorText) => never;
}

const standing = ({ board, place }: PlacedBoard) => ({ id: board.id, place, faces: faces(board) });

/** From the middle of a board's width, along the way it moves. */
const fromMiddle = ({ board, place }: PlacedBoard, at: Vec3, along: Vec3): number => {
  const { length, width, thickness } = board.blank;
  const centre = pointOut(place, [length / 2, width / 2, thickness / 2]);
  return Math.abs(dot(subtract(at, centre), along));
};

/** Buttons against the face of the board below that looks at the middle of the held one. */
function buttons(asked: Asked): Fastened {
  const { held, to, request, run, up, along, made, refuse } = asked;
  const side = innerFace(asked);
  const out = side.frame.z;
  const cut = to.board.grooves.find((groove) => groove.face === side.id && runsAlong(groove, to.place, run));
  const reachOf = (at: Vec3) => dot(subtract(made[0]!.place, at), up);
  const below = cut
    ? reachOf(pointOut(to.place, cut.at.origin)) - cut.width / 2
    : (request.slotBelow ?? FASTEN.slotBelow);
  const width = cut?.width ?? request.slotWidth ?? FASTEN.slotWidth;
  const depth = cut?.depth ?? request.slotDepth ?? FASTEN.slotDepth;
  const thickness = width - 2 * FASTEN.air;
  const screw = screwFor(asked, below + thickness);
  const placed = made.map(({ id, place, travel }) => {
    const inward = Math.abs(dot(along, out)) * travel;
    const reach = request.tongue ?? depth - inward / 2 - FASTEN.air;
    if (reach <= 0)
      refuse(
        (say) =>
          `its slot is ${say.fine(depth)} deep and the board moves ${say.fine(inward)} into it, so no tongue is left; the slot must be at least ${say.fine(inward + FASTEN.air + LEAST_TONGUE)} deep: give slotDepth`,
      );
    const foot = add(place, scale(out, dot(subtract(side.frame.origin, place), out)));
    const size: ButtonSize = { below, thickness, reach, gap: inward / 2 + FASTEN.air };
    return { id, seat: frame(foot, up, out), travel, size };
  });
  const slots = cut
    ? []
    : placed.map(({ id, seat, travel }): Slot => {
        const origin = pointOut(seat, [0, 0, -below - width / 2]);
        return {
          id: `${id}-slot`,
          face: side.id,
          at: frameIn(to.place, frame(origin, out, run)),
          width,
          length: BUTTON_WIDTH + Math.abs(dot(along, run)) * travel + 2 * FASTEN.air + width,
          depth,
        };
      });
  const pieces = placed.map(({ id, seat, size }) => buttonPieces(id, seat, size, screw));
  return {
    held: withPilots(
      held,
      pieces.map(({ screwAt }, i) => ({ id: placed[i]!.id, at: screwAt })),
      screw,
    ),
    to: { ...to.board, slots: [...to.board.slots, ...slots] },
    fastenings: placed.map(
      ({ id, travel, size: { reach } }, i): Fastening => ({
        id,
        by: 'button',
        held: request.held,
        to: request.to,
        at: pieces[i]!.screwAt,
        along,
        travel,
        screw: { id: `${id}-screw`, diameter: screw.diameter, length: screw.length },
        with: [`${id}-button`],
        tongue: { reach, thickness },
      }),
    ),
    hardware: pieces.flatMap(({ hardware }) => hardware),
  };
}

/** What of a tongue stays in its slot when the board has moved away. Common practice, no source; mm. */
export const LEAST_TONGUE = 4;

/** Width of a button along the apron, mm. */
const BUTTON_WIDTH = 25;

const runsAlong = ({ at }: Groove, place: Frame, run: Vec3): boolean =>
  Math.abs(dot(directionOut(place, at.x), run)) > 1 - 1e-9;

/** The face beside the seat, square to it, that looks at the middle of the held board; assembly frame. */
function innerFace({ held, to, touch, run, refuse }: Asked): { id: string; frame: Frame } {
  const { length, width, thickness } = held.board.blank;
  const centre = pointOut(held.place, [length / 2, width / 2, thickness / 2]);
  const beside = faces(to.board)
    .map(({ id, frame: on }) => ({ id, frame: frameOut(to.place, on) }))
    .filter(({ frame: on }) => Math.abs(dot(on.z, touch.plane.z)) < 1e-9 && Math.abs(dot(on.z, run)) < 1e-9)
    .toSorted((p, q) => looks(q.frame) - looks(p.frame));
  function looks(on: Frame): number {
    return dot(on.z, subtract(centre, on.origin));
  }
  return (
    beside[0] ??
    refuse(`${to.board.id} has no face square to its seat for a button to stand against: use screws`)
  );
}

/** Screws through slotted holes. */
function screws(asked: Asked): Fastened {
  const { held, to, request, touch, up, along, made, refuse } = asked;
  const under = faces(to.board)
    .map(({ id, frame: on }) => ({ id, frame: frameOut(to.place, on) }))
    .find(({ frame: on }) => dot(on.z, up) < -1 + 1e-9);
  if (!under) return refuse(`${to.board.id} has no face below its seat for a screw's head: use buttons`);
  const through = dot(subtract(touch.plane.origin, under.frame.origin), up);
  if (through > FASTEN.thickest)
    refuse(
      (say) =>
        `its screws would go through ${say.lengths(through, FASTEN.thickest)[0]} of wood; ${say.lengths(through, FASTEN.thickest)[1]} is the most: fasten it with buttons, or to a cleat`,
    );
  const screw = screwFor(asked, through + 1);
  const placed = made.map(({ id, place, travel }) => ({ id, at: frame(place, up, along), travel }));
  const slots = placed.map(
    ({ id, at, travel }): Slot => ({
      id: `${id}-slot`,
      face: touch.faceA.id,
      at: frameIn(to.place, at),
      width: screw.clearance,
      length: screw.clearance + travel + 2 * FASTEN.air,
      depth: 'through',
    }),
  );
  const pieces = placed.map(({ id, at }) => screwPieces(id, at, through, screw));
  return {
    held: withPilots(held, placed, screw),
    to: { ...to.board, slots: [...to.board.slots, ...slots] },
    fastenings: placed.map(
      ({ id, at, travel }): Fastening => ({
        id,
        by: 'screw',
        held: request.held,
        to: request.to,
        at,
        along,
        travel,
        screw: { id: `${id}-screw`, diameter: screw.diameter, length: screw.length },
        with: [`${id}-washer`],
      }),
    ),
    hardware: pieces.flat(),
  };
}

type Screw = ReturnType<typeof screwSizes> & { readonly length: number; readonly into: number };

/** The screw for so much below the seat: the length asked for, or the longest that does not show. */
function screwFor({ held, touch, request, refuse }: Asked, below: number): Screw {
  const sizes = screwSizes(request.screw ?? 4);
  const { blank } = held.board;
  const on = faceFrame(held.board, touch.faceB.id)!;
  const whole = [blank.length, blank.width, blank.thickness][
    on.z.findIndex((part) => Math.abs(part) > Math.SQRT1_2)
  ]!;
  const room = below + whole - FASTEN.underTip;
  const length =
    request.screwLength ??
    sizes.lengths.findLast((one) => one <= room) ??
    refuse(
      (say) =>
        `no screw is short enough: ${say.length(below)} below the seat and ${say.length(whole)} of wood leave room for ${say.lengths(room, sizes.lengths[0]!)[0]}; the shortest is ${say.lengths(room, sizes.lengths[0]!)[1]}: make the held board thicker`,
    );
  if (length <= below)
    refuse(
      (say) =>
        `its screws are ${say.length(length)} long and ${say.length(below)} stands below the seat, so they do not reach into ${request.held}: give a longer screwLength`,
    );
  return { ...sizes, length, into: length - below };
}

/** The held board with a pilot hole for every screw. */
const withPilots = (
  { board, place }: PlacedBoard,
  at: readonly { readonly id: string; readonly at: Frame }[],
  { pilot, into }: Screw,
): Board => ({
  ...board,
  holes: [
    ...board.holes,
    ...at.map(({ id, at: seat }): Hole => {
      const on = frameIn(place, { ...seat, z: scale(seat.z, -1), y: scale(seat.y, -1) });
      return { id: `${id}-pilot`, face: faceAt(board, on), at: on, diameter: pilot, depth: into };
    }),
  ],
});

/** The face a frame stands on. */
const faceAt = (board: Board, on: Frame): string =>
  faces(board).find(({ frame: f }) => dot(f.z, on.z) > 1 - 1e-9 && Math.abs(pointIn(f, on.origin)[2]) < 1e-3)!
    .id;

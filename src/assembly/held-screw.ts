import { type Board, faceFrame, faces, type Hole } from '../board/index.js';
import type { ErrorText } from '../errors.js';
import { dot, type Frame, frameIn, pointIn, scale, type Vec3 } from '../frame/index.js';
import type { Contact } from '../joinery/index.js';
import { NOISE, SAME_PLACE_MM } from '../tolerances.js';
import type { Hardware } from './design.js';
import type { Fastening, FastenRequest } from './fastening.js';
import type { PlacedBoard } from './placed-board.js';
import { screwSizes } from './wood-screw.js';

/** Two boards with what was cut for their fastenings, and the pieces that go in. */
export interface Fastened {
  readonly held: Board;
  readonly to: Board;
  readonly fastenings: readonly Fastening[];
  readonly hardware: readonly Hardware[];
}

/** Common practice, no source; mm. */
export const FASTEN = {
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

/** A place along a seat, and how far the held board moves there; assembly frame, mm. */
export interface Place {
  readonly id: string;
  readonly place: Vec3;
  readonly travel: number;
}

/** What buttons and screws are fitted from; assembly frame. */
export interface Asked {
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

export type Screw = ReturnType<typeof screwSizes> & { readonly length: number; readonly into: number };

/** The screw for so much below the seat: the length asked for, or the longest that does not show. */
export function screwFor({ held, touch, request, refuse }: Asked, below: number): Screw {
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
        `its screws are ${say.length(length)} long and ${say.length(below)} stands below the seat, so they do not reach into ${request.held}: take longer screws, or make ${request.held} thicker so that they find room`,
    );
  return { ...sizes, length, into: length - below };
}

/** The held board with a pilot hole for every screw. */
export const withPilots = (
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
  faces(board).find(
    ({ frame: f }) => dot(f.z, on.z) > 1 - NOISE && Math.abs(pointIn(f, on.origin)[2]) < SAME_PLACE_MM,
  )!.id;

import { type Frame, pointOut } from '../frame/index.js';
import { circle } from '../profile/index.js';
import type { Hardware } from './design.js';

/** Lengths wood screws are usually sold in, mm. From memory. */
const LENGTHS = [12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80] as const;

/** What belongs to a wood screw with a flat-bottomed head; mm. Proportions from memory. */
export interface ScrewSizes {
  readonly diameter: number;
  /** Hole it passes through. */
  readonly clearance: number;
  /** Hole it bites in: seven tenths of its diameter. */
  readonly pilot: number;
  readonly head: { readonly diameter: number; readonly height: number };
  readonly washer: { readonly bore: number; readonly diameter: number; readonly thickness: number };
  readonly lengths: readonly number[];
}

export const screwSizes = (diameter: number): ScrewSizes => ({
  diameter,
  clearance: diameter + 0.5,
  pilot: 0.7 * diameter,
  head: { diameter: 2 * diameter, height: 0.7 * diameter },
  washer: { bore: diameter + 0.3, diameter: 3 * diameter, thickness: 1 },
  lengths: LENGTHS,
});

/** A screw under its head at `below` the seat; in the held wood it is drawn as thick as its core. */
export const screwPiece = (
  id: string,
  at: Frame,
  below: number,
  { diameter, pilot, head, length }: ScrewSizes & { readonly length: number },
): Hardware => ({
  id: `${id}-screw`,
  kind: 'screw',
  name: `wood screw ${diameter} × ${length} mm, pan head`,
  stages: [
    { outline: circle({ diameter: head.diameter }), from: -below - head.height, to: -below },
    { outline: circle({ diameter }), from: -below, to: 0 },
    { outline: circle({ diameter: pilot }), from: 0, to: length - below },
  ],
  place: at,
  bought: true,
});

/** A screw and its washer under a board so thick. */
export const screwPieces = (
  id: string,
  at: Frame,
  through: number,
  screw: ScrewSizes & { readonly length: number },
): readonly Hardware[] => [
  {
    id: `${id}-washer`,
    kind: 'washer',
    name: `washer ${screw.diameter} mm, ${screw.washer.diameter} mm across`,
    stages: [
      {
        outline: circle({ diameter: screw.washer.diameter }),
        bores: [circle({ diameter: screw.washer.bore })],
        from: 0,
        to: screw.washer.thickness,
      },
    ],
    place: { ...at, origin: pointOut(at, [0, 0, -through - screw.washer.thickness]) },
    bought: true,
  },
  screwPiece(id, at, through + screw.washer.thickness, screw),
];

import { type Frame, pointOut } from '../frame/index.js';
import { circle, rectangle } from '../profile/index.js';
import type { Hardware } from './design.js';
import { type ScrewSizes, screwPiece } from './wood-screw.js';

/** A button's sizes, mm. */
export interface ButtonSize {
  /** From the seat down to its tongue. */
  readonly below: number;
  readonly thickness: number;
  /** How far the tongue reaches past the face of the board it holds to. */
  readonly reach: number;
  /** From that face to the button's shoulder. */
  readonly gap: number;
}

/** Common practice, no source; mm. */
const BODY = { length: 30, width: 25 } as const;

/** A button stands this far short of the seat before it is screwed tight, so that it draws the boards together, mm. */
const DRAW = 0.5;

/**
 * A button and its screw.
 *
 * @param seat on the seat's plane, over the face the button stands against: x out of that face, z into the held board
 * @returns the pieces, and where the screw passes the seat
 */
export function buttonPieces(
  id: string,
  seat: Frame,
  { below, thickness, reach, gap }: ButtonSize,
  screw: ScrewSizes & { readonly length: number },
): { readonly hardware: readonly Hardware[]; readonly screwAt: Frame } {
  const across = (from: number, to: number) =>
    rectangle({ x: from, y: -BODY.width / 2, length: to - from, width: BODY.width });
  const middle = gap + BODY.length / 2;
  const bores = [circle({ diameter: screw.clearance, centre: [middle, 0] })];
  const screwAt: Frame = { ...seat, origin: pointOut(seat, [middle, 0, 0]) };
  const foot = below + thickness;
  const size = (mm: number) => String(Math.round(mm * 10) / 10);
  const button: Hardware = {
    id: `${id}-button`,
    kind: 'button',
    name: `wooden button ${size(reach + gap + BODY.length)} × ${BODY.width} × ${size(foot - DRAW)} mm, tongue ${size(reach + gap)} × ${size(thickness)} mm`,
    stages: [
      { outline: across(-reach, gap + BODY.length), bores, from: -foot, to: -below },
      { outline: across(gap, gap + BODY.length), bores, from: -below, to: -DRAW },
    ],
    place: seat,
    bought: true,
  };
  return { hardware: [button, screwPiece(id, screwAt, foot, screw)], screwAt };
}

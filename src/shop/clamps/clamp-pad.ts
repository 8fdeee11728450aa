import { type Board, makeBoard } from '../../board/index.js';
import { add, angleDeg, cross, type Frame, scale, subtract, unit, type Vec3 } from '../../frame/index.js';
import { trimmed } from '../../length/index.js';
import { SQUARE_TO_CLAMP_DEG } from '../../tolerances.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';

/** A pad under a clamp's jaw, as it sits on the part. mm, degrees. */
export interface PadUse {
  /** Board id of the pad. */
  readonly aid: string;
  /** Between the part's face and the jaw; 0 for a flat pad. */
  readonly angleDeg: number;
  /** Measured along the clamp, where its line passes. */
  readonly thickness: number;
  /** The pad's own frame, assembly frame: its reference face on the part, thicker along x. */
  readonly place: Frame;
}

/** The pad's board id: one for each angle to a hundredth of a degree. */
export const padId = (angleDeg: number): string =>
  angleDeg < SQUARE_TO_CLAMP_DEG ? 'clamp-pad-flat' : `clamp-pad-${trimmed(angleDeg, 2).replace('.', '-')}`;

/**
 * A pad as a board: the reference face lies on the part, the other face is square to the clamp. A wedge rises along its
 * length with the tangent of the angle from its thin end.
 */
export function padBoard(angleDeg: number, material: string): Board {
  const { padLength, padBreadth, padThickness } = PRACTICE;
  const blank = { length: padLength, width: padBreadth };
  if (angleDeg < SQUARE_TO_CLAMP_DEG) {
    return makeBoard({ id: padId(0), material, blank: { ...blank, thickness: padThickness } });
  }
  const angle = (angleDeg * Math.PI) / 180;
  const rise = padLength * Math.tan(angle);
  return makeBoard({
    id: padId(angleDeg),
    material,
    blank: { ...blank, thickness: padThickness + rise },
    bevels: [{ id: 'jaw', point: [0, 0, padThickness], normal: [-Math.sin(angle), 0, Math.cos(angle)] }],
  });
}

/**
 * How a pad sits on a face so that the clamp's line leaves it in the middle, square to its outer face.
 *
 * @param at where the clamp's line leaves the part, assembly frame
 * @param normal of the part's face, out of the wood
 * @param outwards along the clamp, away from the part, unit
 */
export function padUse(aid: string, at: Vec3, normal: Vec3, outwards: Vec3): PadUse {
  const { padLength, padBreadth, padThickness } = PRACTICE;
  const lean = angleDeg(normal, outwards);
  if (lean < SQUARE_TO_CLAMP_DEG) {
    const side: Vec3 = Math.abs(normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
    const x = unit(cross(side, normal));
    const y = cross(normal, x);
    const corner = subtract(subtract(at, scale(x, padLength / 2)), scale(y, padBreadth / 2));
    const place: Frame = { origin: corner, x, y, z: normal };
    return { aid, angleDeg: 0, thickness: padThickness, place };
  }
  const angle = (lean * Math.PI) / 180;
  // thicker on the side the face falls back from the jaw: jaw = −sin·x + cos·normal
  const x = unit(subtract(scale(normal, Math.cos(angle)), outwards));
  const y = cross(normal, x);
  const middle = padThickness + (padLength / 2) * Math.tan(angle);
  const corner = add(add(at, scale(x, -padLength / 2 - middle * Math.tan(angle))), scale(y, -padBreadth / 2));
  return {
    aid,
    angleDeg: lean,
    thickness: middle / Math.cos(angle),
    place: { origin: corner, x, y, z: normal },
  };
}

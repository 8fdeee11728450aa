import { type Board, makeBoard } from '../../board/index.js';
import { cross, type Frame, frame, frameOut, scale, type Vec3, WORLD } from '../../frame/index.js';
import type { Bearing, Lean } from './bearing.js';

/**
 * A wedge as a board: its reference face lies against the rail, its bevel against the work; the grain runs along the
 * mortise. The thickness rises from the thin end with the tangent of the angle: `thin + size · tan angle`.
 *
 * @param id board id
 * @param lean angle in degrees, sizes in mm; `up` and `down` taper over the height, `start` and `end` along the length
 */
export function wedgeBoard(id: string, lean: Lean, material: string): Board {
  const angle = (lean.angleDeg * Math.PI) / 180;
  const overHeight = lean.thickEnd === 'up' || lean.thickEnd === 'down';
  const rise = (overHeight ? lean.height : lean.length) * Math.tan(angle);
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  return makeBoard({
    id,
    material,
    blank: { length: lean.length, width: lean.height, thickness: lean.thin + rise },
    bevels: [
      {
        id: 'taper',
        point: [0, 0, lean.thin],
        normal: overHeight ? [0, -sine, cosine] : [-sine, 0, cosine],
      },
    ],
  });
}

/** Which way a wedge's thick end points, in the frame of its mortise: x along it, y across, z out of the wood. */
export const THICK_END: Readonly<Record<Lean['thickEnd'], Vec3>> = {
  up: WORLD.z,
  down: scale(WORLD.z, -1),
  end: WORLD.x,
  start: scale(WORLD.x, -1),
};

/**
 * Where a wedge sits: its own frame written in the frame the mortise's is written in.
 *
 * @param at the mortise's frame, board frame
 * @param bearing one with a wedge
 */
export function wedgePlace(at: Frame, bearing: Bearing, lean: Lean): Frame {
  const out = bearing.side === 'near' ? -1 : 1;
  const towardsWork: Vec3 = [0, -out, 0];
  // x and y of the wedge, in the mortise's frame; both run from the thin end
  const [x, y]: readonly [Vec3, Vec3] = (() => {
    if (lean.thickEnd === 'up' || lean.thickEnd === 'down') {
      const up = THICK_END[lean.thickEnd];
      return [cross(up, towardsWork), up];
    }
    const along = THICK_END[lean.thickEnd];
    return [along, cross(towardsWork, along)];
  })();
  const middle: Vec3 = [0, out * bearing.toRail, -lean.height / 2];
  const origin: Vec3 = [
    middle[0] - (x[0] * lean.length + y[0] * lean.height) / 2,
    middle[1],
    middle[2] - (x[2] * lean.length + y[2] * lean.height) / 2,
  ];
  return frameOut(at, frame(origin, towardsWork, x));
}

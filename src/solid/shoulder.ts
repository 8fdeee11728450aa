import { frameIn, pointOut, type Vec2 } from '../frame/index.js';
import type { Tenon } from '../joinery/index.js';
import { hit } from './measure.js';
import type { BoardSolid } from './solids.js';

/** The shoulders are looked at this far outside the mouth of a mortise, mm: nearer than any wall that holds. */
const BESIDE_MOUTH = 0.5;

/** How far the two boards' shoulders are looked for on either side of the seat, mm. */
const SHOULDER_REACH = 30;

/**
 * The air between the two boards of a joint where they should bear on each other, measured along the tenon past both ends and
 * both cheeks of its mortises. Cavities are taken for wood: walls are another matter.
 *
 * @param mouth length and width of the mortises, mm
 * @returns the widest air found, mm: 0 or less where the boards touch or share wood; undefined where no spot has wood of both
 */
export function shoulderAir(
  a: BoardSolid,
  b: BoardSolid,
  { place }: Tenon,
  mouth: { readonly length: number; readonly width: number },
): number | undefined {
  const [alongIt, acrossIt] = [mouth.length / 2 + BESIDE_MOUTH, mouth.width / 2 + BESIDE_MOUTH];
  const spots: readonly Vec2[] = [
    [alongIt, 0],
    [-alongIt, 0],
    [0, acrossIt],
    [0, -acrossIt],
  ];
  const found = spots.flatMap(([x, y]) => {
    // each board is looked at from the other one's side: what is met first is its shoulder
    const shoulder = ({ stock, place: stands }: BoardSolid, from: number) => {
      const seen = frameIn(stands, place);
      return hit(stock, pointOut(seen, [x, y, from]), pointOut(seen, [x, y, -from]));
    };
    const [shoulderA, shoulderB] = [shoulder(a, SHOULDER_REACH), shoulder(b, -SHOULDER_REACH)];
    if (shoulderA === undefined || shoulderB === undefined) return [];
    return [shoulderA + shoulderB - 2 * SHOULDER_REACH];
  });
  return found.length === 0 ? undefined : Math.max(...found);
}

import type { Design } from '../assembly/index.js';
import { boardOutside } from '../board/index.js';
import { pointOut, type Vec2, type Vec3 } from '../frame/index.js';
import { regionMoments, regionOf } from '../profile/index.js';
import { density } from '../tables/index.js';
import { ON_FLOOR } from '../tolerances.js';
import { lineRound, type Resting } from './resting.js';

/** Cubic metres in a cubic millimetre. */
const M3 = 1e-9;

/**
 * How a piece rests, from its data alone: its feet as they are; mass and centre from outline and thickness, without what bevels
 * and openings take and with tenons for what their mortises took: some hundredths off.
 */
export function quickResting({ boards }: Design): Resting {
  const corners = boards.flatMap(({ board, place }) =>
    boardOutside(board).corners.map((corner) => pointOut(place, corner)),
  );
  const floor = corners.reduce((least, [, , z]) => Math.min(least, z), Number.POSITIVE_INFINITY);
  const feet = lineRound(corners.filter(([, , z]) => z < floor + ON_FLOOR).map(([x, y]): Vec2 => [x, y]));
  let kg = 0;
  let [mx, my, mz] = [0, 0, 0];
  for (const { board, place } of boards) {
    const { area, centre } = regionMoments(regionOf(board.outline));
    const { thickness } = board.blank;
    const mass = area * thickness * M3 * density(board.material);
    const middle: Vec3 = pointOut(place, [centre[0], centre[1], thickness / 2]);
    kg += mass;
    mx += mass * middle[0];
    my += mass * middle[1];
    mz += mass * middle[2];
  }
  return { feet, floor, kg, centre: [mx / kg, my / kg, mz / kg] };
}

import type { Design } from '../assembly/index.js';
import { boardOutside } from '../board/index.js';
import { pointOut, type Vec2 } from '../frame/index.js';
import { lineRound, regionMoments, regionOf } from '../profile/index.js';
import { massOf } from '../tables/index.js';
import { ON_FLOOR } from '../tolerances.js';
import { type Resting, weighed } from './resting.js';

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
  const weights = boards.map(({ board, place }) => {
    const { area, centre } = regionMoments(regionOf(board.outline));
    const { thickness } = board.blank;
    return {
      kg: massOf(area * thickness, board.material),
      at: pointOut(place, [centre[0], centre[1], thickness / 2]),
    };
  });
  return { feet, floor, ...weighed(weights) };
}

import type { Design } from '../assembly/index.js';
import { boardOutside } from '../board/index.js';
import { type Frame, pointOut, type Vec2, type Vec3 } from '../frame/index.js';
import { lineRound, regionMoments, regionOf } from '../profile/index.js';
import { massOf } from '../tables/index.js';
import { ON_FLOOR } from '../tolerances.js';
import { type Resting, weighed } from './resting.js';

/**
 * How a piece rests, from its data alone: its feet as they are; mass and centre from outline and thickness, without what bevels
 * and openings take and with tenons for what their mortises took: some hundredths off.
 */
export function quickResting({ boards }: Design): Resting {
  const outsides = boards.map(({ board, place }) => ({ place, corners: boardOutside(board).corners }));
  let floor = Number.POSITIVE_INFINITY;
  for (const { corners, place } of outsides)
    for (const corner of corners) floor = Math.min(floor, heightOf(corner, place));
  const standing = outsides.flatMap(({ corners, place }) =>
    corners
      .filter((corner) => heightOf(corner, place) < floor + ON_FLOOR)
      .map((corner): Vec2 => {
        const [x, y] = pointOut(place, corner);
        return [x, y];
      }),
  );
  const feet = lineRound(standing);
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

/** Of a corner of a board, assembly frame. */
const heightOf = (corner: Vec3, { origin, x, y, z }: Frame): number =>
  origin[2] + corner[0] * x[2] + corner[1] * y[2] + corner[2] * z[2];

import { type Mortise, mouthOf } from '../../board/index.js';
import { add, directionIn, type Frame, pointIn, scale, type Vec2 } from '../../frame/index.js';
import { obround, tessellate } from '../../profile/index.js';
import { type Cavity, facetsIn } from '../../solid/index.js';
import { CUTTER_LEAD, SAME_POINT, SKIN, SWEEP_ROUNDING } from '../../tolerances.js';

/** What a cutter sweeps between its stops, below the plane just under the mouth. */
export interface Sweep {
  /** The cutter's frame half way between the stops, board frame. */
  readonly place: Frame;
  readonly travel: number;
  readonly depth: number;
}

/**
 * The most by which a cutter's sweep and a mortise's air can differ, mm³, without cutting one with the other.
 *
 * A straight sweep is convex: an obround prism between a flat bottom and the mouth's plane. When no corner of the air stands
 * farther out of it than a hair, all the air lies in the sweep grown by that hair, whatever its shape. So at most the hair's
 * skin of it is outside, and the difference is at most the sweep less the air, and twice that skin.
 *
 * @returns undefined when some corner stands out farther, or the sweep is not such a prism: nothing is proved then
 */
export function sweptBound(
  { place, travel, depth }: Sweep,
  mortise: Mortise,
  cavity: Cavity,
): number | undefined {
  if (!(travel >= 0 && depth > SKIN)) return undefined;
  const { width, at } = mortise;
  const outline = tessellate(obround({ length: 2 * travel + width, width }));
  // what closes the sweep at the top, in the cutter's frame: for a leaning mouth its plane, as for the air
  const { normal } = mouthOf(mortise);
  const [nx, ny, nz] = mortise.faceNormal ? directionIn(place, normal) : [0, 0, 1];
  const [px, py, pz] = mortise.faceNormal
    ? pointIn(place, add(at.origin, scale(normal, -SKIN)))
    : [0, 0, -SKIN];
  if (!(nz > 0.1)) return undefined;
  const topAt = (x: number, y: number): number => pz - ((x - px) * nx + (y - py) * ny) / nz;
  const tops = outline.map(([x, y]) => topAt(x, y));
  if (Math.min(...tops) <= -depth || Math.max(...tops) > CUTTER_LEAD) return undefined;
  const sides = outline.map(([x, y], i) => sideOf([x, y], outline[(i + 1) % outline.length]!));
  // it is alike on both sides of both its axes: no side is farther behind a corner than one that looks the corner's way
  const quarter = sides.filter(({ x, y }) => x > -SAME_POINT && y > -SAME_POINT);
  const corners = facetsIn(cavity.facets, place);
  for (let i = 0; i < corners.length; i += 3) {
    const x = corners[i]!;
    const y = corners[i + 1]!;
    const z = corners[i + 2]!;
    if (z < -depth - SWEEP_ROUNDING || (z - topAt(x, y)) * nz > SWEEP_ROUNDING) return undefined;
    const [ahead, aside] = [Math.abs(x), Math.abs(y)];
    for (const side of quarter)
      if (side.x * ahead + side.y * aside > side.at + SWEEP_ROUNDING) return undefined;
  }
  const round = sides.reduce((sum, { length }) => sum + length, 0);
  const across = outline.reduce((sum, [x, y], i) => {
    const [x1, y1] = outline[(i + 1) % outline.length]!;
    return sum + (x * y1 - x1 * y) / 2;
  }, 0);
  // the outline is the same turned half round its middle: its height there is its mean height
  const height = topAt(0, 0) + depth;
  const tallest = Math.max(...tops) + depth;
  // corners of a polygon grow by more than its sides, by no more than half as much again at 90° or flatter
  const skin = (1.5 * round * (tallest + 3 * SWEEP_ROUNDING) + across * (1 + 1 / nz)) * 2 * SWEEP_ROUNDING;
  return across * height - cavity.volume + 2 * skin;
}

/** The line through two corners of a polygon run round counter-clockwise, its normal outwards. */
function sideOf([x0, y0]: Vec2, [x1, y1]: Vec2) {
  const length = Math.hypot(x1 - x0, y1 - y0);
  const [x, y] = [(y1 - y0) / length, (x0 - x1) / length];
  return { x, y, at: x * x0 + y * y0, length };
}

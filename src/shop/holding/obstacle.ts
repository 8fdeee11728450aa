import { moved, scale, type Vec2, WORLD } from '../../frame/index.js';
import { intersectRegion, type Region, regionArea } from '../../profile/index.js';
import { PATCH_MM2 } from '../../tolerances.js';
import type { Travelling } from '../at-hand/index.js';
import { allInside, type Work } from './work-at-stage.js';

/** Heights above the mouth at which wood in the way is looked for, mm: under a fillet, a plate, a router. */
const LOOKED_AT = [0.02, 6, 30] as const;

/** Wood that stands above the mouth, in the mortise's x and y; empty when the mouth is outermost. */
export const woodAbove = (work: Work): readonly Region[] =>
  LOOKED_AT.filter((height) => !allInside(work, WORLD.z, height))
    .map((height) => work.section(moved(WORLD, scale(WORLD.z, height))))
    .filter((region) => region.length > 0);

/** Whether wood stands in the way of an outline. */
export const inTheWay = (above: readonly Region[], outline: readonly Vec2[]): boolean =>
  above.some((region) => Math.abs(regionArea(intersectRegion(region, [outline]))) > PATCH_MM2);

/**
 * How far what travels can go from the mortise's centre before it meets wood, along x; mm.
 *
 * @returns the reach of its leading edge each way; without end when nothing is in the way
 */
export function clearWay(
  above: readonly Region[],
  travelling: Travelling,
): readonly [start: number, end: number] {
  const half = travelling.across / 2;
  const strip: readonly Vec2[] = [
    [-1e5, -half],
    [1e5, -half],
    [1e5, half],
    [-1e5, half],
  ];
  const xs = above.flatMap((region) =>
    intersectRegion(region, [strip])
      .flat()
      .map(([x]) => x),
  );
  const before = xs.filter((x) => x <= 0);
  const after = xs.filter((x) => x >= 0);
  return [
    before.length > 0 ? -Math.max(...before) : Number.POSITIVE_INFINITY,
    after.length > 0 ? Math.min(...after) : Number.POSITIVE_INFINITY,
  ];
}

/** The outline swept from one end of a travel to the other, as the box round it. */
export const swept = (travelling: Travelling, travel: number): readonly Vec2[] => {
  const [x, y] = [travelling.along / 2 + travel, travelling.across / 2];
  return [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ];
};

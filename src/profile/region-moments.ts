import type { Vec2 } from '../frame/index.js';
import type { Region } from './region.js';

/** Where the middle of a region lies and which way it runs. */
export interface Moments {
  /** mm² */
  readonly area: number;
  /** Centroid, mm. */
  readonly centre: Vec2;
  /** Direction of the longer principal axis, degrees from x, above -90 and up to 90. */
  readonly directionDeg: number;
}

/** A straight piece of a region's outline, the region to its left; mm. */
export type OutlineEdge = readonly [x0: number, y0: number, x1: number, y1: number];

/** Area, centroid and principal direction of a region, by Green's theorem over its loops. */
export const regionMoments = (region: Region): Moments =>
  outlineMoments(
    region.flatMap((loop) =>
      loop.map(([x0, y0], i): OutlineEdge => {
        const [x1, y1] = loop[(i + 1) % loop.length]!;
        return [x0, y0, x1, y1];
      }),
    ),
  );

/** Area, centroid and principal direction of a region whose closed outline is given as edges in any order. */
export function outlineMoments(edges: readonly OutlineEdge[]): Moments {
  let [area, mx, my, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
  for (const [x0, y0, x1, y1] of edges) {
    const turn = x0 * y1 - x1 * y0;
    area += turn / 2;
    mx += ((x0 + x1) * turn) / 6;
    my += ((y0 + y1) * turn) / 6;
    xx += ((x0 * x0 + x0 * x1 + x1 * x1) * turn) / 12;
    yy += ((y0 * y0 + y0 * y1 + y1 * y1) * turn) / 12;
    xy += ((x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) * turn) / 24;
  }
  const centre: Vec2 = [mx / area, my / area];
  const a = xx - area * centre[0] ** 2;
  const b = yy - area * centre[1] ** 2;
  const c = xy - area * centre[0] * centre[1];
  return { area, centre, directionDeg: (Math.atan2(2 * c, a - b) * 90) / Math.PI };
}

import { add, cross, dot, frame, length, scale, type Vec3 } from '../frame/index.js';
import { area, type Profile, perimeter, type Region, regionArea, regionOf } from '../profile/index.js';
import { PARALLEL_SINE, SAGITTA, SAME_POINT, VOLUME_RELATIVE } from '../tolerances.js';
import type { Board } from './board.js';
import { onceAShape } from './once-a-shape.js';
import { columnRegion, planeRegion } from './plane-region.js';

/** A volume worked out from data with true arcs, and how far a body with facets may be off it; mm³. */
export interface ExpectedVolume {
  readonly volume: number;
  readonly allowance: number;
}

/**
 * The volume of the stock (blank, outline, openings, bevels) without a kernel: level areas integrated through the
 * thickness. Between two levels at which a bevel passes a corner the area is a quadratic of the height, for which Simpson's
 * rule is exact.
 */
export const stockVolume: (board: Board) => ExpectedVolume = onceAShape((board) => {
  const { thickness } = board.blank;
  const outlines: readonly Profile[] = [board.outline, ...board.openings.map((opening) => opening.outline)];
  const column = columnRegion(board);
  const trueArea = board.openings.reduce(
    (left, opening) => left - Math.abs(area(opening.outline)),
    Math.abs(area(board.outline)),
  );
  const facets = arcLength(outlines) * SAGITTA * thickness;
  if (board.bevels.length === 0) {
    const volume = trueArea * thickness;
    return { volume, allowance: facets + volume * VOLUME_RELATIVE };
  }
  const level = (z: number) => regionArea(planeRegion(board, frame([0, 0, z], [0, 0, 1], [1, 0, 0]), column));
  const steps = levels(board);
  let volume = (trueArea - regionArea(column)) * thickness;
  let below = level(0);
  for (let i = 0; i + 1 < steps.length; i += 1) {
    const [from, to] = [steps[i]!, steps[i + 1]!];
    const above = level(to);
    volume += ((to - from) / 6) * (below + 4 * level((from + to) / 2) + above);
    below = above;
  }
  return { volume, allowance: facets + volume * VOLUME_RELATIVE };
});

/**
 * Heights at which a bevel's plane passes over a corner of the outline or of its own strip, or the line in which two bevels
 * meet passes over an edge of either or through a third bevel; with both faces.
 */
function levels(board: Board): readonly number[] {
  const { thickness } = board.blank;
  const corners = columnRegion(board).flat();
  const heights = board.bevels.flatMap(({ point, normal, within }) => {
    const [nx, ny, nz] = normal;
    if (Math.abs(nz) < PARALLEL_SINE) return [];
    const strip = (within ?? []).map(({ x, y }): readonly [number, number] => [x, y]);
    return [...corners, ...strip].map(
      ([x, y]) => point[2] - (nx * (x - point[0]) + ny * (y - point[1])) / nz,
    );
  });
  heights.push(...crossings(board));
  const inside = heights
    .filter((z) => z > SAME_POINT && z < thickness - SAME_POINT)
    .toSorted((a, b) => a - b);
  return [0, ...inside.filter((z, i) => i === 0 || z - inside[i - 1]! > SAME_POINT), thickness];
}

/** A plane as `normal · p = offset`. */
interface Plane {
  readonly normal: Vec3;
  readonly offset: number;
}

/** Heights of the points in which the line of two bevels meets a third plane, where that point can matter. */
function crossings(board: Board): number[] {
  const { bevels, blank } = board;
  if (bevels.length < 2) return [];
  const planes = bevels.map(({ point, normal }): Plane => ({ normal, offset: dot(normal, point) }));
  const strips: Region = bevels.flatMap(({ within }) => (within ? regionOf(within) : []));
  const edges = [...columnRegion(board), ...strips].flatMap((loop) =>
    loop.map((from, i) => ({ from, to: loop[(i + 1) % loop.length]! })),
  );
  const found: number[] = [];
  planes.forEach((a, i) => {
    planes.slice(i + 1).forEach((b, j) => {
      for (const c of planes.slice(i + j + 2)) {
        const p = meeting(a, b, c);
        if (p) found.push(p[2]);
      }
      for (const { from, to } of edges) {
        const upright: Vec3 = [to[1] - from[1], from[0] - to[0], 0];
        const p = meeting(a, b, { normal: upright, offset: dot(upright, [from[0], from[1], 0]) });
        if (!p || p[2] < 0 || p[2] > blank.thickness) continue;
        const run = Math.hypot(to[0] - from[0], to[1] - from[1]);
        const along = ((p[0] - from[0]) * (to[0] - from[0]) + (p[1] - from[1]) * (to[1] - from[1])) / run;
        if (along > -SAME_POINT && along < run + SAME_POINT) found.push(p[2]);
      }
    });
  });
  return found;
}

/** The point three planes share; undefined when two of them are parallel or all hold one line. */
function meeting(a: Plane, b: Plane, c: Plane): Vec3 | undefined {
  const line = cross(a.normal, b.normal);
  const rise = dot(line, c.normal);
  if (Math.abs(rise) < PARALLEL_SINE * length(c.normal)) return undefined;
  const sum = add(
    add(scale(cross(b.normal, c.normal), a.offset), scale(cross(c.normal, a.normal), b.offset)),
    scale(line, c.offset),
  );
  return scale(sum, 1 / rise);
}

/** Length of all arcs, an upper bound of what facets can lose beside them. */
const arcLength = (outlines: readonly Profile[]): number =>
  outlines
    .filter((outline) => outline.some((vertex) => vertex.bulge !== 0))
    .reduce((sum, outline) => sum + perimeter(outline), 0);

import { frame } from '../frame/index.js';
import { area, type Profile, perimeter, regionArea } from '../profile/index.js';
import { SAGITTA, VOLUME_RELATIVE } from '../tolerances.js';
import type { Board } from './board.js';
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
export function stockVolume(board: Board): ExpectedVolume {
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
}

/** Heights at which a bevel's plane passes over a corner of the outline or of its own strip, with both faces. */
function levels(board: Board): readonly number[] {
  const { thickness } = board.blank;
  const corners = columnRegion(board).flat();
  const heights = board.bevels.flatMap(({ point, normal, within }) => {
    const [nx, ny, nz] = normal;
    if (Math.abs(nz) < 1e-9) return [];
    const strip = (within ?? []).map(({ x, y }): readonly [number, number] => [x, y]);
    return [...corners, ...strip].map(
      ([x, y]) => point[2] - (nx * (x - point[0]) + ny * (y - point[1])) / nz,
    );
  });
  const inside = heights.filter((z) => z > 1e-6 && z < thickness - 1e-6).toSorted((a, b) => a - b);
  return [0, ...inside.filter((z, i) => i === 0 || z - inside[i - 1]! > 1e-6), thickness];
}

/** Length of all arcs, an upper bound of what facets can lose beside them. */
const arcLength = (outlines: readonly Profile[]): number =>
  outlines
    .filter((outline) => outline.some((vertex) => vertex.bulge !== 0))
    .reduce((sum, outline) => sum + perimeter(outline), 0);

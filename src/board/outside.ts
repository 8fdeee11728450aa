import { add, heightOver, type Plane, scale, spanOf, subtract, type Vec3 } from '../frame/index.js';
import { tessellate } from '../profile/index.js';
import type { Board } from './board.js';
import { onceAShape } from './once-a-shape.js';

/** What a board before its cuts is bounded by; board frame, mm. */
export interface BoardOutside {
  /** Every corner of it, and no point outside their hull is wood. */
  readonly corners: readonly Vec3[];
  /** Normals of its flat sides, out of the wood. */
  readonly normals: readonly Vec3[];
}

type Polygon = readonly Vec3[];

/** Corners and sides of a board from its data: outline and bevels; a bevel within an outline is left out. */
export const boardOutside: (board: Board) => BoardOutside = onceAShape((board) => {
  const { thickness } = board.blank;
  const points = tessellate(board.outline);
  const at = (z: number): Polygon => points.map(([x, y]) => [x, y, z]);
  const everywhere = board.bevels.filter(({ within }) => !within);
  const left = (polygon: Polygon): Polygon => everywhere.reduce(below, polygon);
  const sawn = points.map(([x, y]) =>
    everywhere.some((bevel) => heightOver(bevel, [x, y, 0]) > 0 || heightOver(bevel, [x, y, thickness]) > 0),
  );
  const lengths = points.map(([x, y], i) => {
    const [u, v] = points[(i + 1) % points.length]!;
    return spanOf(u - x, v - y);
  });
  // a side no bevel cuts has its corners in common with both faces
  const cut = points.flatMap(([x, y], i): Polygon => {
    const next = (i + 1) % points.length;
    if (!sawn[i] && !sawn[next]) return [];
    const [u, v] = points[next]!;
    return left([
      [x, y, 0],
      [u, v, 0],
      [u, v, thickness],
      [x, y, thickness],
    ]);
  });
  const longest = [...lengths.keys()]
    .sort((a, b) => lengths[b]! - lengths[a]!)
    .slice(0, 6)
    .map((i): Vec3 => {
      const [[x, y], [u, v]] = [points[i]!, points[(i + 1) % points.length]!];
      return [(v - y) / lengths[i]!, (x - u) / lengths[i]!, 0];
    });
  return {
    corners: [...left(at(0)), ...left(at(thickness)), ...cut],
    normals: [[0, 0, 1], [0, 0, -1], ...everywhere.map(({ normal }) => normal), ...longest],
  };
});

/** What of a flat polygon lies below a plane: its corners there, and where its sides pass the plane. */
function below(polygon: Polygon, plane: Plane): Polygon {
  const heights = polygon.map((corner) => heightOver(plane, corner));
  if (heights.every((height) => height <= 0)) return polygon;
  const left: Vec3[] = [];
  polygon.forEach((corner, i) => {
    const next = (i + 1) % polygon.length;
    const [here, there] = [heights[i]!, heights[next]!];
    if (here <= 0) left.push(corner);
    if ((here < 0 && there > 0) || (here > 0 && there < 0))
      left.push(add(corner, scale(subtract(polygon[next]!, corner), here / (here - there))));
  });
  return left;
}

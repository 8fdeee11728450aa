import { add, scale, subtract, type Vec3 } from '../frame/index.js';
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
  const sides = points.map(([x, y], i): Polygon => {
    const [u, v] = points[(i + 1) % points.length]!;
    return [
      [x, y, 0],
      [u, v, 0],
      [u, v, thickness],
      [x, y, thickness],
    ];
  });
  const everywhere = board.bevels.filter(({ within }) => !within);
  const left = (polygon: Polygon): Polygon =>
    everywhere.reduce((rest, { point, normal }) => below(rest, point, normal), polygon);
  // a side no bevel cuts has its corners in common with both faces
  const cut = sides.flatMap((side) => {
    const rest = left(side);
    return rest === side ? [] : rest;
  });
  const longest = points
    .map(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length]!;
      const length = Math.hypot(u - x, v - y);
      return { length, normal: [(v - y) / length, (x - u) / length, 0] as Vec3 };
    })
    .sort((a, b) => b.length - a.length)
    .slice(0, 6);
  return {
    corners: [...left(at(0)), ...left(at(thickness)), ...cut],
    normals: [
      [0, 0, 1],
      [0, 0, -1],
      ...everywhere.map(({ normal }) => normal),
      ...longest.map(({ normal }) => normal),
    ],
  };
});

/** What of a flat polygon lies below a plane: its corners there, and where its sides pass the plane. */
function below(polygon: Polygon, point: Vec3, normal: Vec3): Polygon {
  const heightOf = ([x, y, z]: Vec3): number =>
    normal[0] * (x - point[0]) + normal[1] * (y - point[1]) + normal[2] * (z - point[2]);
  if (polygon.every((corner) => heightOf(corner) <= 0)) return polygon;
  const over = polygon.map(heightOf);
  return polygon.flatMap((corner, i) => {
    const next = (i + 1) % polygon.length;
    const [here, there] = [over[i]!, over[next]!];
    const kept = here <= 0 ? [corner] : [];
    if (!((here < 0 && there > 0) || (here > 0 && there < 0))) return kept;
    return [...kept, add(corner, scale(subtract(polygon[next]!, corner), here / (here - there)))];
  });
}

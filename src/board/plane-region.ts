import { dot, type Frame, subtract, type Vec2, type Vec3 } from '../frame/index.js';
import { intersectRegion, type Region, regionOf, subtractRegion, unite } from '../profile/index.js';
import { COPLANAR, LEVEL_SLOPE, SAME_DIRECTION, SAME_POINT, SQUARE } from '../tolerances.js';
import type { Bevel, Board } from './board.js';
import { onceAShape } from './once-a-shape.js';

/** Outline less openings, board XY: the wood seen through the thickness, arcs as polygons. */
export const columnRegion: (board: Board) => Region = onceAShape(({ outline, openings }) => {
  const wood = regionOf(outline);
  if (openings.length === 0) return wood;
  return subtractRegion(wood, unite(openings.flatMap((opening) => regionOf(opening.outline))));
});

/**
 * The wood that lies in a plane, before mortises, holes and slots are cut: a section, or a whole face.
 *
 * @param board its column, thickness and bevels are used
 * @param plane any frame, board frame, z its normal; faces of the board have z out of the wood
 * @param column what {@link columnRegion} gives, when the caller has it
 * @returns loops in the plane's x and y, mm
 */
export function planeRegion(board: Board, plane: Frame, column: Region = columnRegion(board)): Region {
  return Math.abs(plane.z[2]) > SQUARE
    ? leaningPlane(board, plane, column)
    : squarePlane(board, plane, column);
}

/** A plane that crosses every vertical line once: worked out in board XY, then written in the plane. */
function leaningPlane(board: Board, plane: Frame, column: Region): Region {
  const [nx, ny, nz] = plane.z;
  const height = (x: number, y: number) =>
    plane.origin[2] - (nx * (x - plane.origin[0]) + ny * (y - plane.origin[1])) / nz;
  const flat = Math.hypot(nx, ny) < LEVEL_SLOPE;
  let wood = column;
  if (flat) {
    const z = height(0, 0);
    if (z < -COPLANAR || z > board.blank.thickness + COPLANAR) return [];
  } else {
    for (const inside of [height, (x: number, y: number) => board.blank.thickness - height(x, y)]) {
      // a plane that leaves the board nowhere on this side needs no cut
      if (wood.every((loop) => loop.every(([x, y]) => inside(x, y) >= 0))) continue;
      wood = intersectRegion(wood, halfPlane(board, inside));
    }
  }
  for (const bevel of board.bevels) {
    const kept = (x: number, y: number) => -above(bevel, [x, y, height(x, y)]);
    const removed = removedBy(board, bevel, kept);
    if (removed.length > 0) wood = subtractRegion(wood, removed);
    if (liesIn(bevel, plane) && bevel.within) wood = intersectRegion(wood, regionOf(bevel.within));
  }
  const loops = wood.map((loop) =>
    loop.map(([x, y]): Vec2 => {
      const p = subtract([x, y, height(x, y)], plane.origin);
      return [dot(p, plane.x), dot(p, plane.y)];
    }),
  );
  return nz > 0 ? loops : loops.map((loop) => loop.toReversed());
}

/** The part of board XY a bevel takes away from a surface over it; nothing when it runs in the bevel's own plane. */
function removedBy(board: Board, bevel: Bevel, kept: (x: number, y: number) => number): Region {
  const gradient = Math.hypot(kept(1, 0) - kept(0, 0), kept(0, 1) - kept(0, 0));
  if (gradient < LEVEL_SLOPE) {
    if (kept(0, 0) > -COPLANAR) return [];
    return bevel.within ? regionOf(bevel.within) : halfPlane(board, () => 1);
  }
  const half = halfPlane(board, (x, y) => -kept(x, y));
  return bevel.within ? intersectRegion(half, regionOf(bevel.within)) : half;
}

/** A plane square to the faces: intervals along its line in board XY, times the thickness. */
function squarePlane(board: Board, plane: Frame, column: Region): Region {
  const along: Vec2 = [-plane.z[1], plane.z[0]];
  // a face of the board runs on the border of its outline: look just inside it
  const start: Vec2 = [plane.origin[0] - plane.z[0] * SAME_POINT, plane.origin[1] - plane.z[1] * SAME_POINT];
  const at = (s: number, z: number): Vec3 => [start[0] + along[0] * s, start[1] + along[1] * s, z];
  const thickness = board.blank.thickness;
  let wood: Region = intervalsInside(column, start, along).map(([from, to]) => [
    [from, 0],
    [to, 0],
    [to, thickness],
    [from, thickness],
  ]);
  for (const bevel of board.bevels) {
    const inPlane = liesIn(bevel, plane);
    if (inPlane && !bevel.within) continue;
    const columns = bevel.within
      ? intervalsInside(regionOf(bevel.within), start, along)
      : wood.map((loop): [number, number] => [
          Math.min(...loop.map(([s]) => s)),
          Math.max(...loop.map(([s]) => s)),
        ]);
    const strips: Region = columns.map(([from, to]) => [
      [from, 0],
      [to, 0],
      [to, thickness],
      [from, thickness],
    ]);
    if (inPlane) {
      wood = intersectRegion(wood, strips);
      continue;
    }
    const removed = strips
      .map((strip) => clipped(strip, ([s, z]) => above(bevel, at(s, z))))
      .filter((strip) => strip.length > 2);
    if (removed.length > 0) wood = subtractRegion(wood, removed);
  }
  const loops = wood.map((loop) =>
    loop.map(([s, z]): Vec2 => {
      const p = subtract(at(s, z), plane.origin);
      return [dot(p, plane.x), dot(p, plane.y)];
    }),
  );
  return handedness(plane, along) > 0 ? loops : loops.map((loop) => loop.toReversed());
}

const handedness = (plane: Frame, along: Vec2): number => {
  const s: Vec2 = [
    plane.x[0] * along[0] + plane.x[1] * along[1],
    plane.y[0] * along[0] + plane.y[1] * along[1],
  ];
  const z: Vec2 = [plane.x[2], plane.y[2]];
  return s[0] * z[1] - s[1] * z[0];
};

const above = (bevel: Bevel, p: Vec3): number => dot(bevel.normal, subtract(p, bevel.point));

const liesIn = (bevel: Bevel, plane: Frame): boolean =>
  dot(bevel.normal, plane.z) > 1 - SAME_DIRECTION && Math.abs(above(bevel, plane.origin)) < COPLANAR;

/** The part of board XY, a little beyond the blank, where a linear function is positive. */
function halfPlane(board: Board, positive: (x: number, y: number) => number): Region {
  const { length, width } = board.blank;
  const border: Vec2[] = [
    [-length, -width],
    [2 * length, -width],
    [2 * length, 2 * width],
    [-length, 2 * width],
  ];
  const part = clipped(border, ([x, y]) => positive(x, y));
  return part.length > 2 ? [part] : [];
}

/** A convex loop clipped to where a linear function is positive. */
function clipped(loop: readonly Vec2[], positive: (p: Vec2) => number): Vec2[] {
  const out: Vec2[] = [];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    const atP = positive(p);
    const atQ = positive(q);
    if (atP >= 0) out.push(p);
    if (atP >= 0 !== atQ >= 0) {
      const t = atP / (atP - atQ);
      out.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
    }
  });
  return out;
}

/** Where a line runs inside a region, as intervals along it. */
function intervalsInside(region: Region, start: Vec2, along: Vec2): [number, number][] {
  const crossings: number[] = [];
  for (const loop of region) {
    loop.forEach((p, i) => {
      const q = loop[(i + 1) % loop.length]!;
      const sideP = along[0] * (p[1] - start[1]) - along[1] * (p[0] - start[0]);
      const sideQ = along[0] * (q[1] - start[1]) - along[1] * (q[0] - start[0]);
      if (sideP > 0 === sideQ > 0) return;
      const t = sideP / (sideP - sideQ);
      const x = p[0] + (q[0] - p[0]) * t - start[0];
      const y = p[1] + (q[1] - p[1]) * t - start[1];
      crossings.push(x * along[0] + y * along[1]);
    });
  }
  crossings.sort((a, b) => a - b);
  const intervals: [number, number][] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) intervals.push([crossings[i]!, crossings[i + 1]!]);
  return intervals;
}

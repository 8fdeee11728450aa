import { type Board, type Mortise, mouthOf } from '../../board/index.js';
import {
  add,
  directionOut,
  dot,
  pointOut,
  scale,
  subtract,
  unit,
  type Vec2,
  type Vec3,
} from '../../frame/index.js';
import { contains, lineRound, type Profile, tessellate } from '../../profile/index.js';
import { remembered } from '../../remembered.js';
import { WALL_REACH } from '../../solid/index.js';
import { SAME_POINT, SKIN } from '../../tolerances.js';

/** Corners of the ring put round each end of a mortise: it stands out of the true circle by 0.5 %, to the safe side. */
const RING = 32;
const ROUND = Array.from({ length: RING }, (_, i): Vec2 => {
  const turn = (2 * Math.PI * (i + 0.5)) / RING;
  return [Math.cos(turn), Math.sin(turn)];
});

/** What the data of a board say of one mortise; mm. */
export interface DataWalls {
  /** No more than the thinnest wood round it; undefined when the data do not tell. */
  readonly wall: number | undefined;
  /** Past its ends along the board, as high as its middle. */
  readonly endWood: number;
}

/**
 * The wood round each mortise of a board, from the data alone.
 *
 * The cutter's path is put into a prism a little larger. What it keeps from every flat side of the board but its mouth's, from
 * the outline and the openings, and from the other mortises along some direction, no wall falls short of. 0 when it sticks out.
 */
export function wallsByData(board: Board): ReadonlyMap<Mortise, DataWalls> {
  const found = known(JSON.stringify(board), () => wallsOf(board));
  return new Map(board.mortises.map((mortise, i) => [mortise, found[i]!]));
}

/** While one dimension is tried, some boards stay as they are. */
const known = remembered<readonly DataWalls[]>(100);

function wallsOf(board: Board): readonly DataWalls[] {
  const outline = tessellate(board.outline);
  const lines = [
    { profile: board.outline, points: outline },
    ...board.openings.map((opening) => ({ profile: opening.outline, points: tessellate(opening.outline) })),
  ];
  const told =
    board.holes.length + board.slots.length + board.grooves.length === 0 &&
    !board.bevels.some(({ within }) => within);
  const paths = board.mortises.map((mortise) => ({ mortise, path: pathOf(mortise) }));
  return paths.map(({ mortise, path }): DataWalls => {
    const endWood = woodPastEnds(outline, mortise);
    if (!told) return { wall: undefined, endWood };
    const apart = [
      toPlanes(board, mortise, path),
      ...lines.map((line, i) => toOutline(board, line, i === 0, mortise, path)),
      ...paths.map((other) => (other.mortise === mortise ? WALL_REACH : alongSome(mortise, path, other))),
    ];
    return { wall: Math.max(0, Math.min(WALL_REACH, ...apart)), endWood };
  });
}

/** Corners of a prism that holds a mortise's air: as many round the mouth as round the bottom. */
interface Path {
  readonly mouth: readonly Vec3[];
  readonly bottom: readonly Vec3[];
  /** The line round all of it as seen from above, counter-clockwise. */
  readonly seen: readonly Vec2[];
}

function pathOf(mortise: Mortise): Path {
  const { at, length, width, depth } = mortise;
  const [half, radius] = [(length - width) / 2, width / 2 / Math.cos(Math.PI / RING)];
  const normal = mouthOf(mortise).normal;
  const onPlane = add(at.origin, scale(normal, -SKIN));
  const rise = dot(at.z, normal);
  const round = ROUND.map(([x, y]): Vec2 => [x * radius + (x > 0 ? half : -half), y * radius]);
  const mouth = round.map(([x, y]) => {
    const below = pointOut(at, [x, y, 0]);
    return add(below, scale(at.z, dot(normal, subtract(onPlane, below)) / rise));
  });
  const bottom = round.map(([x, y]) => pointOut(at, [x, y, -depth]));
  return { mouth, bottom, seen: lineRound([...mouth, ...bottom].map(([x, y]) => [x, y])) };
}

function toPlanes(board: Board, mortise: Mortise, path: Path): number {
  const { thickness } = board.blank;
  const sides: readonly { readonly normal: Vec3; readonly point: Vec3 }[] = [
    { normal: [0, 0, -1], point: [0, 0, 0] },
    { normal: [0, 0, 1], point: [0, 0, thickness] },
    ...board.bevels,
  ];
  return sides
    .filter(({ normal, point }) => !inMouth(mortise, [point], normal))
    .reduce(
      (least, { normal, point }) => Math.min(least, dot(normal, point) - reachAlong(path, normal)[1]),
      WALL_REACH,
    );
}

/** Do points lie in the plane of a mortise's mouth, the face's normal with it? */
function inMouth(mortise: Mortise, points: readonly Vec3[], normal: Vec3): boolean {
  const mouth = mouthOf(mortise).normal;
  return (
    dot(normal, mouth) > 1 - SAME_POINT &&
    points.every((point) => Math.abs(dot(mouth, subtract(point, mortise.at.origin))) < SAME_POINT)
  );
}

type Line = readonly [from: Vec2, to: Vec2];

/** From the path as seen from above, a convex area, to the sides of an outline. */
function toOutline(
  board: Board,
  { profile, points }: { readonly profile: Profile; readonly points: readonly Vec2[] },
  outer: boolean,
  mortise: Mortise,
  { bottom, seen }: Path,
): number {
  const middle = bottom.reduce<Vec2>(([x, y], point) => [x + point[0] / RING, y + point[1] / RING], [0, 0]);
  if ((contains(profile, middle) === 'inside') !== outer) return 0;
  const hull = seen.map((from, i): Line => [from, seen[(i + 1) % seen.length]!]);
  const [minX, maxX] = ends(seen.map(([x]) => x));
  const [minY, maxY] = ends(seen.map(([, y]) => y));
  let least = WALL_REACH;
  points.forEach((from, i) => {
    const to = points[(i + 1) % points.length]!;
    const away = Math.max(
      minX - Math.max(from[0], to[0]),
      Math.min(from[0], to[0]) - maxX,
      minY - Math.max(from[1], to[1]),
      Math.min(from[1], to[1]) - maxY,
    );
    if (away >= least) return;
    const out = unit([to[1] - from[1], from[0] - to[0], 0]);
    if (
      inMouth(
        mortise,
        [
          [...from, 0],
          [...to, 0],
        ] as const,
        scale(out, outer ? 1 : -1),
      )
    )
      return;
    if (sawnOff(board, from, to)) return;
    if (hull.every((line) => sideOf(line, from) > 0)) least = 0;
    else for (const line of hull) least = Math.min(least, linesApart(line, [from, to]));
  });
  return least - SAME_POINT;
}

/** Is all of a side of the outline beyond a bevel? */
const sawnOff = ({ bevels, blank }: Board, ...corners: readonly Vec2[]): boolean =>
  bevels.some(({ normal, point }) =>
    corners.every(([x, y]) =>
      [0, blank.thickness].every((z) => dot(normal, subtract([x, y, z], point)) > -SAME_POINT),
    ),
  );

const ends = (numbers: readonly number[]): readonly [number, number] => [
  Math.min(...numbers),
  Math.max(...numbers),
];

/** More than 0 to the left of a line. */
const sideOf = ([from, to]: Line, [x, y]: Vec2): number =>
  (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]);

/** The least distance between two straight lines in a plane; 0 when they cross. */
function linesApart(a: Line, b: Line): number {
  const crosses = sideOf(a, b[0]) * sideOf(a, b[1]) < 0 && sideOf(b, a[0]) * sideOf(b, a[1]) < 0;
  if (crosses) return 0;
  return Math.sqrt(Math.min(toLineSq(a[0], b), toLineSq(a[1], b), toLineSq(b[0], a), toLineSq(b[1], a)));
}

/** The square of how far a point is from a line, mm². */
function toLineSq([x, y]: Vec2, [from, to]: Line): number {
  const [fx, fy] = from;
  const dx = to[0] - fx;
  const dy = to[1] - fy;
  const whole = dx * dx + dy * dy;
  const share = whole > 0 ? Math.max(0, Math.min(1, ((x - fx) * dx + (y - fy) * dy) / whole)) : 0;
  const offX = x - fx - share * dx;
  const offY = y - fy - share * dy;
  return offX * offX + offY * offY;
}

/** How far two mortises are apart along the best of a few directions: they are nowhere nearer. */
function alongSome(
  mortise: Mortise,
  path: Path,
  { mortise: other, path: beside }: { readonly mortise: Mortise; readonly path: Path },
): number {
  const between = subtract(
    pointOut(other.at, [0, 0, -other.depth / 2]),
    pointOut(mortise.at, [0, 0, -mortise.depth / 2]),
  );
  const directions = [mortise.at, other.at].flatMap(({ x, y, z }) => [x, y, z]);
  if (Math.hypot(...between) > SAME_POINT) directions.push(unit(between));
  let apart = 0;
  for (const direction of directions) {
    const [lowA, highA] = reachAlong(path, direction);
    const [lowB, highB] = reachAlong(beside, direction);
    apart = Math.max(apart, lowB - highA, lowA - highB);
    if (apart >= WALL_REACH) break;
  }
  return apart;
}

function reachAlong({ mouth, bottom }: Path, direction: Vec3): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const ring of [mouth, bottom]) {
    for (const corner of ring) {
      const at = dot(corner, direction);
      if (at < low) low = at;
      if (at > high) high = at;
    }
  }
  return [low, high];
}

/** From a mortise's ends along its length to the outline. */
function woodPastEnds(points: readonly Vec2[], { at, length }: Mortise): number {
  const along = directionOut({ ...at, origin: [0, 0, 0] }, [1, 0, 0]);
  if (Math.abs(along[2]) > SAME_POINT) return Number.POSITIVE_INFINITY;
  const [x, y] = pointOut(at, [0, 0, -0.5]);
  const met = points.flatMap((from, i) => {
    const to = points[(i + 1) % points.length]!;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const turn = along[0] * dy - along[1] * dx;
    if (turn === 0) return [];
    const way = ((from[0] - x) * dy - (from[1] - y) * dx) / turn;
    const share = ((from[0] - x) * along[1] - (from[1] - y) * along[0]) / turn;
    return share >= 0 && share <= 1 ? [Math.abs(way)] : [];
  });
  return Math.min(...met) - length / 2;
}

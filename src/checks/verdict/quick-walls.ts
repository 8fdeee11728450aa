import { type Board, type Mortise, mouthOf, shapeText } from '../../board/index.js';
import {
  directionOut,
  dot,
  pointOut,
  scale,
  subtract,
  unit,
  type Vec2,
  type Vec3,
} from '../../frame/index.js';
import { contains, type Profile, tessellate } from '../../profile/index.js';
import { remembered } from '../../remembered.js';
import { WALL_REACH } from '../../solid/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { alongSome, type MortisePath, pathOf, RING, reachAlong } from './mortise-path.js';

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
  const { mortises, holes, slots, grooves } = board;
  const cuts = JSON.stringify([mortises, holes, slots, grooves]);
  const found = known(`${shapeText(board)} ${cuts}`, () => wallsOf(board));
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
  const between = paths.map((one, i) =>
    paths.map((other, k) => (told && k > i ? alongSome(one, other) : WALL_REACH)),
  );
  return paths.map(({ mortise, path }, i): DataWalls => {
    const endWood = woodPastEnds(outline, mortise);
    if (!told) return { wall: undefined, endWood };
    const apart = [
      toPlanes(board, mortise, path),
      ...lines.map((line, k) => toOutline(board, line, k === 0, mortise, path)),
      ...paths.map((_, k) => between[Math.min(i, k)]![Math.max(i, k)]!),
    ];
    return { wall: Math.max(0, Math.min(WALL_REACH, ...apart)), endWood };
  });
}

function toPlanes(board: Board, mortise: Mortise, path: MortisePath): number {
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
  { corners, box, seen }: MortisePath,
): number {
  let [x, y] = [0, 0];
  for (let i = RING; i < 2 * RING; i += 1) {
    x += corners[3 * i]! / RING;
    y += corners[3 * i + 1]! / RING;
  }
  if ((contains(profile, [x, y]) === 'inside') !== outer) return 0;
  let least = WALL_REACH;
  for (let i = 0; i < points.length; i += 1) {
    const [from, to] = [points[i]!, points[(i + 1) % points.length]!];
    const away = Math.max(
      box.minX - Math.max(from[0], to[0]),
      Math.min(from[0], to[0]) - box.maxX,
      box.minY - Math.max(from[1], to[1]),
      Math.min(from[1], to[1]) - box.maxY,
    );
    // the line round the path is snapped
    if (away - SAME_POINT >= least) continue;
    const out = unit([to[1] - from[1], from[0] - to[0], 0]);
    const ends = [
      [...from, 0],
      [...to, 0],
    ] as const;
    if (inMouth(mortise, ends, scale(out, outer ? 1 : -1)) || sawnOff(board, from, to)) continue;
    least = Math.min(least, toConvex(seen(), [from, to]));
  }
  return least - SAME_POINT;
}

/** Is all of a side of the outline beyond a bevel? */
const sawnOff = ({ bevels, blank }: Board, ...corners: readonly Vec2[]): boolean =>
  bevels.some(({ normal, point }) =>
    corners.every(([x, y]) =>
      [0, blank.thickness].every((z) => dot(normal, subtract([x, y, z], point)) > -SAME_POINT),
    ),
  );

/** More than 0 to the left of a line. */
const sideOf = (from: Vec2, to: Vec2, [x, y]: Vec2): number =>
  (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]);

/** The least distance between a convex area, its line counter-clockwise, and a straight line; 0 when they meet. */
function toConvex(area: readonly Vec2[], line: Line): number {
  const [from, to] = line;
  let least = Number.POSITIVE_INFINITY;
  let inside = true;
  for (let i = 0; i < area.length; i += 1) {
    const [here, next] = [area[i]!, area[(i + 1) % area.length]!];
    const side = sideOf(here, next, from);
    inside &&= side > 0;
    if (side * sideOf(here, next, to) < 0 && sideOf(from, to, here) * sideOf(from, to, next) < 0) least = 0;
    else
      least = Math.min(least, toLineSq(here, from, to), toLineSq(from, here, next), toLineSq(to, here, next));
  }
  return inside ? 0 : Math.sqrt(least);
}

/** The square of how far a point is from a line, mm². */
function toLineSq(point: Vec2, from: Vec2, to: Vec2): number {
  const x = point[0] - from[0];
  const y = point[1] - from[1];
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const whole = dx * dx + dy * dy;
  const share = whole > 0 ? Math.max(0, Math.min(1, (x * dx + y * dy) / whole)) : 0;
  const offX = x - share * dx;
  const offY = y - share * dy;
  return offX * offX + offY * offY;
}

/** From a mortise's ends along its length to the outline. */
function woodPastEnds(points: readonly Vec2[], { at, length }: Mortise): number {
  const along = directionOut({ ...at, origin: [0, 0, 0] }, [1, 0, 0]);
  if (Math.abs(along[2]) > SAME_POINT) return Number.POSITIVE_INFINITY;
  const [x, y] = pointOut(at, [0, 0, -0.5]);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < points.length; i += 1) {
    const [from, to] = [points[i]!, points[(i + 1) % points.length]!];
    const dx = to[0] - from[0];
    const dy = to[1] - from[1];
    const turn = along[0] * dy - along[1] * dx;
    if (turn === 0) continue;
    const way = ((from[0] - x) * dy - (from[1] - y) * dx) / turn;
    const share = ((from[0] - x) * along[1] - (from[1] - y) * along[0]) / turn;
    if (share >= 0 && share <= 1) least = Math.min(least, Math.abs(way));
  }
  return least - length / 2;
}

import type { Design, PlacedBoard } from '../assembly/index.js';
import { isFace, possibleFaces } from '../board/index.js';
import {
  directionOut,
  type Frame,
  frameOut,
  pointIn,
  pointOut,
  settled,
  settledPoint,
  type Vec3,
} from '../frame/index.js';
import { minimumRectangle, pieces } from '../profile/index.js';
import { type Bar, inertiaOf, SHEAR_MODULUS_SHARE, type Tie, torsionOf } from '../statics/index.js';
import { sheetNames, species } from '../tables/index.js';
import { ON_FLOOR } from '../tolerances.js';

/** A piece as bars along the grain of its boards, ties at its joints and feet; mm. All are settled: what stiff ties pass on tells a last digit in its sixth. */
export interface Skeleton {
  readonly nodes: readonly Vec3[];
  readonly bars: readonly Bar[];
  /** Of each joint, in the order of the design, then of its fastenings. */
  readonly joints: readonly Tie[];
  readonly feet: readonly Foot[];
  /** The node of a board nearest to a point; undefined when nothing holds the board. */
  readonly nodeAt: (board: string, point: Vec3) => number | undefined;
}

/** A place where a board stands on the floor. */
export interface Foot {
  readonly node: number;
  readonly at: Vec3;
}

/** Nodes nearer than this along a board are one, mm. */
const ONE_NODE = 1;

/** A foot this many times as long as wide stands on its two ends; a shorter one turns on its middle. Our own. */
const LONG_FOOT = 1.5;

/** Of sheet goods along the face grain, for how they share loads only; MPa. From memory. */
const SHEET_ELASTICITY = 5_000;

/** Of a tie that gives in no way. */
export const FIRM: Vec3 = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];

/**
 * @param loaded points of boards that are loaded, assembly frame
 * @param floor height of the floor
 */
export function skeletonOf(
  { boards, joints, fastenings = [] }: Design,
  loaded: readonly { readonly board: string; readonly at: Vec3 }[],
  floor: number,
): Skeleton {
  const held = new Set([
    ...joints.flatMap(({ a, b }) => [a, b]),
    ...fastenings.flatMap(({ held: one, to }) => [one, to]),
  ]);
  const standing = boards
    .filter(({ board }) => held.has(board.id))
    .map(({ board, place }): PlacedBoard => ({ board, place: settled(place) }));
  const feet = standing.flatMap((placed) => feetOf(placed, floor));
  const points = new Map<string, Vec3[]>(standing.map(({ board }) => [board.id, []]));
  const put = (board: string, at: Vec3) => points.get(board)?.push(at);
  for (const { a, b, seat } of joints) for (const id of [a, b]) put(id, seat.origin);
  for (const { held: one, to, at } of fastenings) for (const id of [one, to]) put(id, at.origin);
  for (const { board, at } of [...feet, ...loaded]) put(board, at);

  const nodes: Vec3[] = [];
  const bars: Bar[] = [];
  const places = new Map<string, readonly { readonly x: number; readonly node: number }[]>();
  for (const placed of standing) {
    const { board, place } = placed;
    const { length, width, thickness } = board.blank;
    const along = points.get(board.id)!.map((at) => Math.min(Math.max(pointIn(place, at)[0], 0), length));
    const stops: { x: number; node: number }[] = [];
    for (const x of along.toSorted((p, q) => p - q)) {
      if (x - (stops.at(-1)?.x ?? Number.NEGATIVE_INFINITY) < ONE_NODE) continue;
      stops.push({ x, node: nodes.length });
      nodes.push(settledPoint(pointOut(place, [x, width / 2, thickness / 2])));
    }
    places.set(board.id, stops);
    for (const [i, { node }] of stops.slice(1).entries()) bars.push(barOf(placed, stops[i]!.node, node));
  }
  const nodeAt = (board: string, point: Vec3): number | undefined => {
    const placed = standing.find((one) => one.board.id === board);
    if (!placed) return undefined;
    const x = pointIn(placed.place, point)[0];
    return places
      .get(board)!
      .reduce((best, stop) => (Math.abs(stop.x - x) < Math.abs(best.x - x) ? stop : best)).node;
  };
  const tie = (from: string, to: string, { origin: at, x, y, z }: Frame, turns: Vec3): Tie => ({
    from: nodeAt(from, at)!,
    to: nodeAt(to, at)!,
    at,
    axes: [x, y, z],
    moves: FIRM,
    turns,
  });
  return {
    nodes,
    bars,
    joints: [
      ...joints.map(({ a, b, seat }) => tie(a, b, settled(seat), FIRM)),
      ...fastenings.map(({ held: one, to, at }) => tie(to, one, settled(at), [0, 0, 0])),
    ],
    feet: feet.map(({ board, at }) => ({ at: settledPoint(at), node: nodeAt(board, at)! })),
    nodeAt,
  };
}

function barOf({ board, place }: PlacedBoard, from: number, to: number): Bar {
  const { width, thickness } = board.blank;
  const elasticity = sheetNames.includes(board.material)
    ? SHEET_ELASTICITY
    : species(board.material).elasticity;
  return {
    from,
    to,
    elasticity,
    shearModulus: elasticity * SHEAR_MODULUS_SHARE,
    area: width * thickness,
    inertia: inertiaOf({ breadth: thickness, height: width }),
    inertiaAcross: inertiaOf({ breadth: width, height: thickness }),
    torsion: torsionOf(width, thickness),
    deep: place.y,
  };
}

/** Where a board stands: the two ends of a long patch on the floor, the middle of a short one. */
function feetOf({ board, place }: PlacedBoard, floor: number): readonly { board: string; at: Vec3 }[] {
  return possibleFaces(board)
    .map((face) => ({ face, at: frameOut(place, face.frame) }))
    .filter(({ face, at }) => at.z[2] < -DOWN && Math.abs(at.origin[2] - floor) < ON_FLOOR && isFace(face))
    .flatMap(({ face, at }) =>
      pieces(face.region).flatMap((patch) => {
        const box = minimumRectangle(patch);
        const middle = pointOut(at, [box.centre[0], box.centre[1], 0]);
        const half = directionOut(at, [(box.along[0] * box.length) / 2, (box.along[1] * box.length) / 2, 0]);
        const ends = box.length > LONG_FOOT * box.width ? [-1, 1] : [0];
        return ends.map((end) => ({
          board: board.id,
          at: [middle[0] + end * half[0], middle[1] + end * half[1], middle[2] + end * half[2]] as const,
        }));
      }),
    );
}

/** Cosine of the lean up to which a face stands on the floor. */
const DOWN = 0.999;

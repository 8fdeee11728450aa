import { type Mortise, mouthOf } from '../../board/index.js';
import {
  add,
  dot,
  pointOut,
  scale,
  spanOf,
  subtract,
  unit,
  type Vec2,
  type Vec3,
} from '../../frame/index.js';
import { once } from '../../once.js';
import { type Bounds, lineRound } from '../../profile/index.js';
import { WALL_REACH } from '../../solid/index.js';
import { SAME_POINT, SKIN } from '../../tolerances.js';

/** Corners of the ring put round each end of a mortise: it stands out of the true circle by 0.5 %, to the safe side. */
export const RING = 32;
const ROUND = Array.from({ length: RING }, (_, i): Vec2 => {
  const turn = (2 * Math.PI * (i + 0.5)) / RING;
  return [Math.cos(turn), Math.sin(turn)];
});

/** A prism that holds a mortise's air; mm, board frame. */
export interface MortisePath {
  /** Three numbers a corner, as many round the mouth as after them round the bottom. */
  readonly corners: Float64Array;
  readonly middle: Vec3;
  /** Of a ball round the middle that holds it. */
  readonly radius: number;
  /** The box round it as seen from above. */
  readonly box: Bounds;
  /** The line round all of it as seen from above, counter-clockwise. */
  readonly seen: () => readonly Vec2[];
}

/** The prism put round the path of a mortise's cutter. */
export function pathOf(mortise: Mortise): MortisePath {
  const { at, length, width, depth } = mortise;
  const [half, radius] = [(length - width) / 2, width / 2 / Math.cos(Math.PI / RING)];
  const normal = mouthOf(mortise).normal;
  const onPlane = add(at.origin, scale(normal, -SKIN));
  const rise = dot(at.z, normal);
  const corners = new Float64Array(6 * RING);
  const middle = pointOut(at, [0, 0, -depth / 2]);
  let far = 0;
  for (const [i, [c, s]] of ROUND.entries()) {
    const [x, y] = [c * radius + (c > 0 ? half : -half), s * radius];
    const below = pointOut(at, [x, y, 0]);
    const mouth = add(below, scale(at.z, dot(normal, subtract(onPlane, below)) / rise));
    const bottom = pointOut(at, [x, y, -depth]);
    corners.set(mouth, 3 * i);
    corners.set(bottom, 3 * (RING + i));
    far = Math.max(far, apartOf(mouth, middle), apartOf(bottom, middle));
  }
  const [minX, maxX] = reachAlong({ corners }, [1, 0, 0]);
  const [minY, maxY] = reachAlong({ corners }, [0, 1, 0]);
  return {
    corners,
    middle,
    radius: far,
    box: { minX, minY, maxX, maxY },
    seen: once(() =>
      lineRound(Array.from(ROUND.concat(ROUND), (_, i): Vec2 => [corners[3 * i]!, corners[3 * i + 1]!])),
    ),
  };
}

const apartOf = (a: Vec3, b: Vec3): number => spanOf(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** A mortise and the path of its cutter. */
export interface Sunk {
  readonly mortise: Mortise;
  readonly path: MortisePath;
}

/** How far two mortises are apart along the best of a few directions: they are nowhere nearer. */
export function alongSome({ mortise, path }: Sunk, { mortise: other, path: beside }: Sunk): number {
  const between = subtract(beside.middle, path.middle);
  const far = spanOf(...between);
  if (far - path.radius - beside.radius > WALL_REACH) return WALL_REACH;
  const directions = [mortise.at, other.at].flatMap(({ x, y, z }) => [x, y, z]);
  if (far > SAME_POINT) directions.push(unit(between));
  let apart = 0;
  for (const direction of directions) {
    const [lowA, highA] = reachAlong(path, direction);
    const [lowB, highB] = reachAlong(beside, direction);
    apart = Math.max(apart, lowB - highA, lowA - highB);
    if (apart >= WALL_REACH) break;
  }
  return apart;
}

/** The least and the greatest of a path's corners along a direction. */
export function reachAlong(
  { corners }: Pick<MortisePath, 'corners'>,
  [x, y, z]: Vec3,
): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < corners.length; i += 3) {
    const at = corners[i]! * x + corners[i + 1]! * y + corners[i + 2]! * z;
    if (at < low) low = at;
    if (at > high) high = at;
  }
  return [low, high];
}

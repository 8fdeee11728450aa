import type { Mortise } from '../board/index.js';
import { dot, type Frame, pointOut, subtract, type Vec2 } from '../frame/index.js';
import { intersectRegion, type Region, regionArea } from '../profile/index.js';

/** Slices over the height two mortises share: with round ends the sum is then right to a ten-thousandth. */
const SLICES = 400;

/**
 * The air two mortises share, mm³, from their data: slices square to their lengths, which run the same way. Each slice is
 * where two rectangles cross, as wide as the obrounds are there.
 */
export function metVolume(one: Mortise, other: Mortise): number {
  const { at } = one;
  const middle = dot(subtract(other.at.origin, at.origin), at.x);
  const from = Math.max(-one.length / 2, middle - other.length / 2);
  const to = Math.min(one.length / 2, middle + other.length / 2);
  if (to <= from) return 0;
  const step = (to - from) / SLICES;
  let sum = 0;
  for (let i = 0; i < SLICES; i += 1) {
    const height = from + (i + 0.5) * step;
    const [p, q] = [slice(one, at, height), slice(other, at, height - middle)];
    sum += regionArea(intersectRegion(p, q)) * step;
  }
  return sum;
}

/** The rectangle a mortise's cutter takes at a height along its length, in the y and z of a frame. */
function slice({ at, length, width, depth }: Mortise, seen: Frame, height: number): Region {
  const past = Math.max(0, Math.abs(height) - (length - width) / 2);
  const half = Math.sqrt(Math.max((width / 2) ** 2 - past ** 2, 0));
  const corners = (
    [
      [-half, 0],
      [half, 0],
      [half, -depth],
      [-half, -depth],
    ] as const
  ).map(([y, z]): Vec2 => {
    const p = subtract(pointOut(at, [0, y, z]), seen.origin);
    return [dot(p, seen.y), dot(p, seen.z)];
  });
  return [signedArea(corners) < 0 ? corners.toReversed() : corners];
}

const signedArea = (corners: readonly Vec2[]): number =>
  corners.reduce((sum, [x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);

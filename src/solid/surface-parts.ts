import type { Vec3 } from '../frame/index.js';
import type { DoubleMesh, Facets } from './facets.js';

/**
 * The pieces a body's surface falls into below a plane, each cut off along it.
 *
 * The surface of a closed body goes on round every corner, so corners below the plane joined by sides of triangles are in one
 * piece. Triangles that only touch the plane from above are left out.
 *
 * @param normal out of the side that is left away; the plane holds the points p with normal · p = offset
 */
export function surfaceParts(
  { corners, triangles }: DoubleMesh,
  normal: Vec3,
  offset: number,
): readonly Facets[] {
  const count = corners.length / 3;
  const above = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    above[i] =
      corners[3 * i]! * normal[0] +
      corners[3 * i + 1]! * normal[1] +
      corners[3 * i + 2]! * normal[2] -
      offset;
  }
  const joined = joinedBelow(triangles, above);
  const parts = new Map<number, number[]>();
  for (let t = 0; t < triangles.length; t += 3) {
    const three = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
    const below = three.find((corner) => above[corner]! < 0);
    if (below === undefined) continue;
    const root = rootOf(joined, below);
    let part = parts.get(root);
    if (!part) {
      part = [];
      parts.set(root, part);
    }
    addBelow(part, corners, above, three);
  }
  return [...parts.values()].map((part) => Float64Array.from(part));
}

function joinedBelow(triangles: Uint32Array, above: Float64Array): Uint32Array {
  const joined = new Uint32Array(above.length).map((_, i) => i);
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k += 1) {
      const [from, to] = [triangles[t + k]!, triangles[t + ((k + 1) % 3)]!];
      if (above[from]! >= 0 || above[to]! >= 0) continue;
      const [a, b] = [rootOf(joined, from), rootOf(joined, to)];
      if (a !== b) joined[Math.max(a, b)] = Math.min(a, b);
    }
  }
  return joined;
}

function rootOf(joined: Uint32Array, corner: number): number {
  let at = corner;
  while (joined[at] !== at) {
    joined[at] = joined[joined[at]!]!;
    at = joined[at]!;
  }
  return at;
}

/** Adds what of a triangle lies below: all of it, a corner, or what is left without one. */
function addBelow(
  part: number[],
  corners: Float64Array,
  above: Float64Array,
  three: readonly [number, number, number],
): void {
  const cut: number[] = [];
  for (let k = 0; k < 3; k += 1) {
    const [from, to] = [three[k]!, three[(k + 1) % 3]!];
    const [here, there] = [above[from]!, above[to]!];
    if (here <= 0) cut.push(corners[3 * from]!, corners[3 * from + 1]!, corners[3 * from + 2]!);
    if ((here < 0 && there > 0) || (here > 0 && there < 0)) {
      const share = here / (here - there);
      for (let j = 0; j < 3; j += 1) {
        const at = corners[3 * from + j]!;
        cut.push(at + share * (corners[3 * to + j]! - at));
      }
    }
  }
  for (let k = 3; k + 3 < cut.length; k += 3) {
    for (let j = 0; j < 3; j += 1) part.push(cut[j]!);
    for (let j = k; j < k + 6; j += 1) part.push(cut[j]!);
  }
}

import { SAME_POINT } from '../../tolerances.js';

/** Corners and triangles of a closed surface after near corners were joined. */
export interface JoinedCorners {
  /** For each corner the one it is now, itself for most. */
  readonly corner: Uint32Array;
  /** Of the joined corners, without those that became lines. */
  readonly triangles: Uint32Array;
}

/**
 * Joins corners of a surface that an edge connects and that no one can tell apart, and leaves out the triangles that have no area
 * then: the kernel leaves some where faces of two pieces it united lay in one plane, and readers complain of them.
 *
 * Where joining would leave an edge that not just two triangles share, the surface stays as it is.
 *
 * @param positions corner i at 3i, mm
 * @param triangles of a closed surface
 */
export function joinedCorners(positions: ArrayLike<number>, triangles: Uint32Array): JoinedCorners {
  const corner = new Uint32Array(positions.length / 3).map((_, i) => i);
  const rootOf = (i: number): number => {
    let at = i;
    while (corner[at] !== at) at = corner[at]!;
    return at;
  };
  let near = false;
  for (let i = 0; i < triangles.length; i += 1) {
    const from = triangles[i]!;
    const to = triangles[i % 3 === 2 ? i - 2 : i + 1]!;
    const x = positions[3 * from]! - positions[3 * to]!;
    const y = positions[3 * from + 1]! - positions[3 * to + 1]!;
    const z = positions[3 * from + 2]! - positions[3 * to + 2]!;
    if (!(x * x + y * y + z * z <= SAME_POINT * SAME_POINT)) continue;
    near = true;
    const [one, other] = [rootOf(from), rootOf(to)];
    corner[Math.max(one, other)] = Math.min(one, other);
  }
  if (!near) return { corner, triangles };
  const joined = corner.map((_, i) => rootOf(i));
  const kept: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((j) => joined[triangles[i + j]!]!) as [number, number, number];
    if (a !== b && b !== c && c !== a) kept.push(a, b, c);
  }
  return closed(kept, joined.length)
    ? { corner: joined, triangles: Uint32Array.from(kept) }
    : { corner: corner.map((_, i) => i), triangles };
}

/** Every edge is run once each way. */
function closed(triangles: readonly number[], corners: number): boolean {
  const run = new Set<number>();
  triangles.forEach((from, i) => {
    run.add(from * corners + triangles[i % 3 === 2 ? i - 2 : i + 1]!);
  });
  if (run.size !== triangles.length) return false;
  return [...run].every((edge) => run.has((edge % corners) * corners + Math.floor(edge / corners)));
}

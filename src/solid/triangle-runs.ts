import type { Body } from './kernel.js';

/** Triangles as the kernel hands them out: three corners each, and the number of the flat face each lies in. */
export interface TriangleRuns {
  readonly triangles: Uint32Array;
  readonly faces: Uint32Array;
}

/**
 * The triangles of a body in an order that hangs on its shape alone. The kernel hands them out in runs, one for each body it was
 * cut with, and orders the runs by when those were made: a program that has made other designs before would write the same
 * triangles otherwise.
 */
export function triangleRuns({ runIndex, triVerts, faceID }: ReturnType<Body['getMesh']>): TriangleRuns {
  const runs = Array.from(runIndex.subarray(0, -1), (from, i) => triVerts.subarray(from, runIndex[i + 1]!))
    .map((corners, i) => ({ corners, numbers: faceID.subarray(runIndex[i]! / 3, runIndex[i + 1]! / 3) }))
    .filter(({ corners }) => corners.length > 0)
    .sort((one, other) => firstFirst(one.corners, other.corners));
  const triangles = new Uint32Array(triVerts.length);
  const faces = new Uint32Array(triVerts.length / 3);
  // the kernel numbers flat faces only within one run: they are counted through all of them
  const known = new Map<string, number>();
  let at = 0;
  runs.forEach(({ corners, numbers }, run) => {
    triangles.set(corners, 3 * at);
    for (const number of numbers) {
      const key = `${run}/${number}`;
      const face = known.get(key) ?? known.size;
      known.set(key, face);
      faces[at] = face;
      at += 1;
    }
  });
  return { triangles, faces };
}

/** By the corners of the first triangle: no two runs share it. */
function firstFirst(one: Uint32Array, other: Uint32Array): number {
  return one[0]! - other[0]! || one[1]! - other[1]! || one[2]! - other[2]!;
}

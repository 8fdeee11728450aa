import { type Frame, WORLD } from '../frame/index.js';
import { onceForEach } from '../once.js';
import { OVERLAP_MM3 } from '../tolerances.js';
import { doubleMesh, facetsOut } from './facets.js';
import type { Body } from './kernel.js';

/** What planes are tried on: a body's corners, and the normals of its largest flat faces; three numbers each. */
export interface Outside {
  readonly corners: Float64Array;
  readonly normals: Float64Array;
}

/** So many faces of a body are tried as a plane between it and another. */
const MOST_FACES = 16;

/** A body never changes. */
const outsides = new WeakMap<Body, Outside>();

/** A unit normal is told by two of its parts, as whole numbers kept so far apart in one, and by the sign of the third. */
const rounded = (part: number): number => Math.round(part * 1e6);
const SPREAD = 2 ** 22;

/** A body's corners and largest faces, in the body's frame. */
export function outsideOf(body: Body): Outside {
  const known = outsides.get(body);
  if (known) return known;
  const { corners, triangles } = doubleMesh(body);
  const faces = new Map<number, { readonly normal: readonly number[]; area: number }>();
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ux, uy, uz] = [
      corners[b]! - corners[a]!,
      corners[b + 1]! - corners[a + 1]!,
      corners[b + 2]! - corners[a + 2]!,
    ];
    const [vx, vy, vz] = [
      corners[c]! - corners[a]!,
      corners[c + 1]! - corners[a + 1]!,
      corners[c + 2]! - corners[a + 2]!,
    ];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const area = Math.sqrt(x * x + y * y + z * z);
    if (area === 0) continue;
    const key = 4 * (SPREAD * rounded(x / area) + rounded(y / area)) + Math.sign(rounded(z / area));
    const face = faces.get(key);
    if (face) face.area += area;
    else faces.set(key, { normal: [x / area, y / area, z / area], area });
  }
  const largest = [...faces.values()].sort((a, b) => b.area - a.area).slice(0, MOST_FACES);
  const made = { corners, normals: Float64Array.from(largest.flatMap(({ normal }) => normal)) };
  outsides.set(body, made);
  return made;
}

/** Corners and normals of a body, written in the frame around the one it stands in. */
export const outsideIn = ({ corners, normals }: Outside, place: Frame): Outside => ({
  corners: facetsOut(corners, place),
  normals: facetsOut(normals, { ...place, origin: WORLD.origin }),
});

/**
 * Does a plane part two bodies, but for less wood than counts as an overlap?
 *
 * Between two planes d apart, bodies that reach no farther than r from some corner share at most d · π · r². A face of one of
 * them is such a plane whenever two boards lie on each other. A plane that is not found proves nothing.
 *
 * @param by how far `a` is moved from where its corners are, mm
 */
export function parted(a: Outside, b: Outside, by: readonly [number, number, number] = [0, 0, 0]): boolean {
  const most = OVERLAP_MM3 / 10 / (Math.PI * Math.min(spread(a.corners).most, spread(b.corners).most));
  for (const { normals } of [a, b]) {
    for (let i = 0; i < normals.length; i += 3) {
      const [x, y, z] = [normals[i]!, normals[i + 1]!, normals[i + 2]!];
      const [lowA, highA] = along(a.corners, x, y, z);
      const [lowB, highB] = along(b.corners, x, y, z);
      const moved = by[0] * x + by[1] * y + by[2] * z;
      if (highA + moved - lowB <= most || highB - lowA - moved <= most) return true;
    }
  }
  return false;
}

/** How far corners reach along a direction. */
function along(corners: Float64Array, x: number, y: number, z: number): readonly [low: number, high: number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < corners.length; i += 3) {
    const at = corners[i]! * x + corners[i + 1]! * y + corners[i + 2]! * z;
    if (at < low) low = at;
    if (at > high) high = at;
  }
  return [low, high];
}

/** The square of the farthest way from the first corner, mm². */
const spread = onceForEach((corners: Float64Array) => {
  let most = 0;
  for (let i = 3; i < corners.length; i += 3) {
    const [x, y, z] = [
      corners[i]! - corners[0]!,
      corners[i + 1]! - corners[1]!,
      corners[i + 2]! - corners[2]!,
    ];
    most = Math.max(most, x * x + y * y + z * z);
  }
  return { most };
});

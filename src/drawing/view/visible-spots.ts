import { dot, type Frame, spanOf, type Vec2 } from '../../frame/index.js';
import { BEHIND } from '../../tolerances.js';
import type { Scene } from './scene.js';
import type { SeenPart } from './seen-part.js';
import type { View } from './view.js';

/** Places looked at on each triangle, as shares of its three corners. */
const SHARES: readonly (readonly [number, number, number])[] = [
  [1 / 3, 1 / 3, 1 / 3],
  [0.6, 0.2, 0.2],
  [0.2, 0.6, 0.2],
  [0.2, 0.2, 0.6],
  [0.45, 0.45, 0.1],
  [0.1, 0.45, 0.45],
  [0.45, 0.1, 0.45],
];

/** Triangles looked at in each part: the largest as seen. */
const MOST = 12;

/** A place in the middle of what is seen of each part, in the view's plane; a part that is wholly hidden has none. */
export function visibleSpots(
  { parts, view: frame, corners, occluders }: Scene,
  view: View,
): ReadonlyMap<string, Vec2> {
  const edges = view.lines
    .filter(({ line }) => line === 'visible')
    .flatMap(({ points }) => points.slice(1).map((to, i) => [points[i]!, to] as const));
  const found = new Map<string, Vec2>();
  parts.forEach((part, p) => {
    let best: Vec2 | undefined;
    let clearest = 0;
    for (const [x, y, z] of samples(part, corners[p]!, frame)) {
      if (occluders.covers(x, y, z)) continue;
      const clear = clearance([x, y], edges, clearest);
      if (clear > clearest) [best, clearest] = [[x, y], clear];
    }
    if (best) found.set(part.id, best);
  });
  return found;
}

/** The parts of which anything is seen: their larger faces are looked at in a few places. */
export function seenAtAll({ parts, view, corners, occluders }: Scene): ReadonlySet<string> {
  const clear = ([x, y, z]: readonly [number, number, number]) => !occluders.covers(x, y, z);
  return new Set(parts.flatMap((part, p) => (samples(part, corners[p]!, view).some(clear) ? [part.id] : [])));
}

function samples(
  { solid }: SeenPart,
  at: Float64Array,
  frame: Frame,
): readonly (readonly [number, number, number])[] {
  const { triangles, normals } = solid;
  const faces: { t: number; area: number }[] = [];
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const n = [normals[3 * t]!, normals[3 * t + 1]!, normals[3 * t + 2]!] as const;
    if (dot(n, frame.z) < 0.05) continue;
    const [i, j, k] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
    const area =
      (at[j]! - at[i]!) * (at[k + 1]! - at[i + 1]!) - (at[j + 1]! - at[i + 1]!) * (at[k]! - at[i]!);
    faces.push({ t, area });
  }
  faces.sort((a, b) => b.area - a.area);
  return faces.slice(0, MOST).flatMap(({ t }) => {
    const [i, j, k] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
    return SHARES.map(([a, b, c]) => {
      const mix = (axis: number) => a * at[i + axis]! + b * at[j + axis]! + c * at[k + axis]!;
      // a little above the face, so that rounding does not put it behind the face
      return [mix(0), mix(1), mix(2) + BEHIND] as const;
    });
  });
}

/** How far a place is from the nearest line; 0 as soon as one is nearer than `least`. */
function clearance(p: Vec2, edges: readonly (readonly [Vec2, Vec2])[], least: number): number {
  let clear = Number.POSITIVE_INFINITY;
  const [x, y] = p;
  for (const [a, b] of edges) {
    // most are passed over for the box round them
    if (Math.min(a[0], b[0]) - x > clear || x - Math.max(a[0], b[0]) > clear) continue;
    if (Math.min(a[1], b[1]) - y > clear || y - Math.max(a[1], b[1]) > clear) continue;
    clear = Math.min(clear, distance(p, a, b));
    if (clear <= least) return 0;
  }
  return clear;
}

function distance([x, y]: Vec2, a: Vec2, b: Vec2): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return spanOf(x - a[0] - dx * t, y - a[1] - dy * t);
}

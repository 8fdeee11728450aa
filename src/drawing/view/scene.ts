import { type Frame, pointIn, settled, settledLength } from '../../frame/index.js';
import { type Occluders, occludersOf } from './occluders.js';
import type { SeenPart } from './seen-part.js';

/** Parts as they stand before a viewer, worked out once for all that is drawn of them. */
export interface Scene {
  readonly parts: readonly SeenPart[];
  /** x to the right, y up, z toward the viewer; where its origin lies does not matter. */
  readonly view: Frame;
  /** Of each part, in view coordinates. */
  readonly corners: readonly Float64Array[];
  readonly occluders: Occluders;
}

/** Parts seen along -z of a frame, which is settled: every engine draws the same lines. */
export function sceneOf(parts: readonly SeenPart[], seenFrom: Frame): Scene {
  const view = settled(seenFrom);
  const corners = parts.map((part) => cornersSeen(part, view));
  return { parts, view, corners, occluders: occludersOf(parts, view, corners) };
}

/** The corners of a part in view coordinates. */
export function cornersSeen({ solid, shift }: SeenPart, view: Frame): Float64Array {
  const seen = new Float64Array(solid.positions.length);
  const [x, y, z] = pointIn(view, shift ?? [0, 0, 0]);
  const { x: vx, y: vy, z: vz } = view;
  for (let i = 0; i < seen.length; i += 3) {
    const [px, py, pz] = [solid.positions[i]!, solid.positions[i + 1]!, solid.positions[i + 2]!];
    seen[i] = settledLength(px * vx[0] + py * vx[1] + pz * vx[2] + x);
    seen[i + 1] = settledLength(px * vy[0] + py * vy[1] + pz * vy[2] + y);
    seen[i + 2] = settledLength(px * vz[0] + py * vz[1] + pz * vz[2] + z);
  }
  return seen;
}

import { dot, type Frame, pointIn, spanOf, type Vec2 } from '../../frame/index.js';
import { EDGE_ON, SAME_LINE } from '../../tolerances.js';
import type { Occluders } from './occluders.js';
import type { Scene } from './scene.js';
import type { SeenPart, Wire } from './seen-part.js';

/** A straight piece of a line in a view, mm in the view's plane. */
export interface Piece {
  /** Id of the part it belongs to. */
  readonly part: string;
  readonly from: Vec2;
  readonly to: Vec2;
}

export interface Pieces {
  readonly visible: readonly Piece[];
  readonly hidden: readonly Piece[];
  readonly wires: readonly Piece[];
}

/**
 * The edges and silhouettes of parts, divided into what is seen and what is hidden.
 *
 * Exact: each line is clipped by every triangle in front of it. A line that touches a surface is seen, so boards that
 * touch show their joint. Parts that run into each other get no line where they cross: that is a finding.
 *
 * @param hidden whether hidden pieces are wanted too
 */
export function hiddenLines(
  { parts, view, corners, occluders }: Scene,
  { hidden, wires = [] }: { readonly hidden: boolean; readonly wires?: readonly Wire[] },
): Pieces {
  const found = { visible: [] as Piece[], hidden: [] as Piece[], wires: [] as Piece[] };
  parts.forEach((part, p) => {
    const { edges, sharp } = part.solid;
    const front = frontFaces(part, view);
    const at = corners[p]!;
    for (let e = 0; e < sharp.length; e += 1) {
      const [one, other] = [front[edges[4 * e + 2]!]!, front[edges[4 * e + 3]!]!];
      if (sharp[e] === 0 && one === other) continue;
      // the solid itself hides an edge between two faces turned away
      if (!hidden && one === 0 && other === 0) continue;
      const [a, b] = [3 * edges[4 * e]!, 3 * edges[4 * e + 1]!];
      divide(
        part.id,
        at.subarray(a, a + 3),
        at.subarray(b, b + 3),
        occluders,
        found.visible,
        hidden ? found.hidden : undefined,
      );
    }
  });
  for (const wire of wires) {
    divide(wire.id, pointIn(view, wire.from), pointIn(view, wire.to), occluders, found.wires, undefined);
  }
  return found;
}

/** 1 for each triangle turned toward the viewer. */
function frontFaces({ solid }: SeenPart, view: Frame): Uint8Array {
  const front = new Uint8Array(solid.offsets.length);
  for (let t = 0; t < front.length; t += 1) {
    const n = [solid.normals[3 * t]!, solid.normals[3 * t + 1]!, solid.normals[3 * t + 2]!] as const;
    front[t] = dot(n, view.z) > EDGE_ON ? 1 : 0;
  }
  return front;
}

type Point = ArrayLike<number>;

function divide(
  part: string,
  a: Point,
  b: Point,
  occluders: Occluders,
  seen: Piece[],
  unseen: Piece[] | undefined,
): void {
  const [ax, ay] = [a[0]!, a[1]!];
  const [dx, dy] = [b[0]! - ax, b[1]! - ay];
  const run = spanOf(dx, dy);
  if (run < SAME_LINE / 10) return;
  const spans: number[] = [];
  occluders.hide(ax, ay, a[2]!, dx, dy, b[2]! - a[2]!, spans);
  const least = SAME_LINE / 10 / run;
  const put = (to: Piece[] | undefined, start: number, end: number) => {
    if (to === undefined || end - start < least) return;
    to.push({ part, from: [ax + dx * start, ay + dy * start], to: [ax + dx * end, ay + dy * end] });
  };
  let done = 0;
  for (const [start, end] of united(spans)) {
    put(seen, done, start);
    put(unseen, Math.max(start, done), end);
    done = Math.max(done, end);
  }
  put(seen, done, 1);
}

/** Ranges in order, overlapping ones made one. */
function united(spans: readonly number[]): [number, number][] {
  const ranges: [number, number][] = [];
  for (let i = 0; i < spans.length; i += 2) ranges.push([spans[i]!, spans[i + 1]!]);
  ranges.sort((p, q) => p[0] - q[0]);
  const whole: [number, number][] = [];
  for (const range of ranges) {
    const last = whole.at(-1);
    if (last !== undefined && range[0] <= last[1]) last[1] = Math.max(last[1], range[1]);
    else whole.push(range);
  }
  return whole;
}

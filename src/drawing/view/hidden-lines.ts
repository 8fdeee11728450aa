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
      const one = front[edges[4 * e + 2]!]!;
      const other = front[edges[4 * e + 3]!]!;
      if (sharp[e] === 0 && one === other) continue;
      // the solid itself hides an edge between two faces turned away
      if (!hidden && one === 0 && other === 0) continue;
      const ends = [3 * edges[4 * e]!, 3 * edges[4 * e + 1]!] as const;
      divide(part.id, at, ends, occluders, found.visible, hidden ? found.hidden : undefined);
    }
  });
  for (const wire of wires) {
    const at = [...pointIn(view, wire.from), ...pointIn(view, wire.to)];
    divide(wire.id, at, [0, 3], occluders, found.wires, undefined);
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

/** @param at corners, three numbers each, in which `from` and `to` begin */
function divide(
  part: string,
  at: ArrayLike<number>,
  [from, to]: readonly [from: number, to: number],
  occluders: Occluders,
  seen: Piece[],
  unseen: Piece[] | undefined,
): void {
  const ax = at[from]!;
  const ay = at[from + 1]!;
  const az = at[from + 2]!;
  const dx = at[to]! - ax;
  const dy = at[to + 1]! - ay;
  const run = spanOf(dx, dy);
  if (run < SAME_LINE / 10) return;
  const spans: number[] = [];
  occluders.hide(ax, ay, az, dx, dy, at[to + 2]! - az, spans);
  const least = SAME_LINE / 10 / run;
  const put = (pieces: Piece[] | undefined, start: number, end: number) => {
    if (pieces === undefined || end - start < least) return;
    pieces.push({ part, from: [ax + dx * start, ay + dy * start], to: [ax + dx * end, ay + dy * end] });
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

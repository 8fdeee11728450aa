import type { Frame } from '../../frame/index.js';
import { dot, pointIn, spanOf } from '../../frame/index.js';
import { BEHIND, CLOSED_SIDE, EDGE_ON } from '../../tolerances.js';
import type { SeenPart } from './seen-part.js';

/** Numbers kept of each triangle: plane n and k, three sides (x, y, c), greatest z. */
const PLANE = 0;
const SIDES = 4;
const TOP = 13;
const STRIDE = 14;

/** Cells of the grid along its longer side: about as many cells as triangles, within bounds. */
const cellsFor = (count: number): number => Math.min(96, Math.max(16, Math.ceil(Math.sqrt(count))));

/**
 * The surfaces that can hide something: triangles turned toward the viewer, in view coordinates (z toward the viewer), in
 * a uniform grid over the picture. Every part is a closed solid, so its faces turned away hide nothing more.
 */
export interface Occluders {
  /**
   * Adds to `spans` the ranges of 0..1 in which a straight line is hidden; pairs of numbers, in no order.
   *
   * @param a start in view coordinates, `d` end less start
   */
  hide(ax: number, ay: number, az: number, dx: number, dy: number, dz: number, spans: number[]): void;
  /** Whether a place in view coordinates is hidden. */
  covers(x: number, y: number, z: number): boolean;
}

/** Collects the surfaces of parts, seen along -z of a frame. */
export function occludersOf(
  parts: readonly SeenPart[],
  view: Frame,
  corners: readonly Float64Array[],
): Occluders {
  const store: number[] = [];
  const boxes: number[] = [];
  parts.forEach(({ solid, shift }, p) => {
    const at = corners[p]!;
    const origin = pointIn(view, shift ?? [0, 0, 0]);
    for (let t = 0; t < solid.triangles.length / 3; t += 1) {
      const n = [solid.normals[3 * t]!, solid.normals[3 * t + 1]!, solid.normals[3 * t + 2]!] as const;
      const nz = dot(n, view.z);
      if (nz <= EDGE_ON) continue;
      const i = 3 * solid.triangles[3 * t]!;
      const j = 3 * solid.triangles[3 * t + 1]!;
      const k = 3 * solid.triangles[3 * t + 2]!;
      const area =
        (at[j]! - at[i]!) * (at[k + 1]! - at[i + 1]!) - (at[j + 1]! - at[i + 1]!) * (at[k]! - at[i]!);
      // seen as a line
      if (area < 1e-9) continue;
      const nx = dot(n, view.x);
      const ny = dot(n, view.y);
      store.push(nx, ny, nz, solid.offsets[t]! + nx * origin[0] + ny * origin[1] + nz * origin[2]);
      pushSide(store, at, i, j);
      pushSide(store, at, j, k);
      pushSide(store, at, k, i);
      store.push(Math.max(at[i + 2]!, at[j + 2]!, at[k + 2]!));
      boxes.push(
        Math.min(at[i]!, at[j]!, at[k]!),
        Math.min(at[i + 1]!, at[j + 1]!, at[k + 1]!),
        Math.max(at[i]!, at[j]!, at[k]!),
        Math.max(at[i + 1]!, at[j + 1]!, at[k + 1]!),
      );
    }
  });
  return inGrid(new Float64Array(store), new Float64Array(boxes));
}

/** A line with the inside on its left, as unit normal and offset. */
function pushSide(store: number[], at: Float64Array, from: number, to: number): void {
  const dx = at[to]! - at[from]!;
  const dy = at[to + 1]! - at[from + 1]!;
  const size = spanOf(dx, dy);
  store.push(-dy / size, dx / size, (dy * at[from]! - dx * at[from + 1]!) / size);
}

function inGrid(store: Float64Array, boxes: Float64Array): Occluders {
  const count = store.length / STRIDE;
  let [minX, minY, maxX, maxY] = [0, 0, 1, 1];
  if (count > 0) [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < boxes.length; i += 4) {
    minX = Math.min(minX, boxes[i]!);
    minY = Math.min(minY, boxes[i + 1]!);
    maxX = Math.max(maxX, boxes[i + 2]!);
    maxY = Math.max(maxY, boxes[i + 3]!);
  }
  const cell = Math.max(maxX - minX, maxY - minY, 1e-6) / cellsFor(count);
  const [columns, rows] = [Math.floor((maxX - minX) / cell) + 1, Math.floor((maxY - minY) / cell) + 1];
  const column = (x: number) => Math.min(columns - 1, Math.max(0, Math.floor((x - minX) / cell)));
  const row = (y: number) => Math.min(rows - 1, Math.max(0, Math.floor((y - minY) / cell)));
  const half = (cell / 2) * 1.001;

  /** Calls `use` with each cell a triangle comes into; a cell wholly outside one of its sides is passed over. */
  const eachCell = (t: number, use: (at: number) => void) => {
    const s = STRIDE * t + SIDES;
    const fromRow = row(boxes[4 * t + 1]!);
    const toRow = row(boxes[4 * t + 3]!);
    const from = column(boxes[4 * t]!);
    const to = column(boxes[4 * t + 2]!);
    // most are small: in one cell they are in no other
    if (fromRow === toRow && from === to) {
      use(fromRow * columns + from);
      return;
    }
    for (let r = fromRow; r <= toRow; r += 1) {
      const y = minY + (r + 0.5) * cell;
      for (let c = from; c <= to; c += 1) {
        const x = minX + (c + 0.5) * cell;
        let out = false;
        for (let i = s; i < s + 9; i += 3) {
          const reach = half * (Math.abs(store[i]!) + Math.abs(store[i + 1]!)) + CLOSED_SIDE;
          if (store[i]! * x + store[i + 1]! * y + store[i + 2]! < -reach) out = true;
        }
        if (!out) use(r * columns + c);
      }
    }
  };
  // pairs of a cell and a triangle, in the triangles' order
  const found: number[] = [];
  const starts = new Uint32Array(columns * rows + 1);
  for (let t = 0; t < count; t += 1)
    eachCell(t, (at) => {
      found.push(at, t);
      starts[at + 1]! += 1;
    });
  for (let i = 0; i < columns * rows; i += 1) starts[i + 1]! += starts[i]!;
  const filled = starts.slice();
  const members = new Uint32Array(found.length / 2);
  for (let i = 0; i < found.length; i += 2) {
    const at = found[i]!;
    members[filled[at]!] = found[i + 1]!;
    filled[at]! += 1;
  }

  const asked = new Uint32Array(count);
  let question = 0;
  const behind: number[] = [];
  return {
    covers: (x, y, z) => {
      const here = row(y) * columns + column(x);
      behind.length = 0;
      for (let m = starts[here]!; m < starts[here + 1]! && behind.length === 0; m += 1) {
        const t = STRIDE * members[m]!;
        if (store[t + TOP]! > z + BEHIND / 2) clip(store, t, x, y, z, 0, 0, 0, behind);
      }
      return behind.length > 0;
    },
    hide: (ax, ay, az, dx, dy, dz, spans) => {
      question += 1;
      const lowest = Math.min(az, az + dz);
      const [fromRow, toRow] = [row(Math.min(ay, ay + dy)), row(Math.max(ay, ay + dy))];
      const [from, to] = [column(Math.min(ax, ax + dx)), column(Math.max(ax, ax + dx))];
      const reach = half * (Math.abs(dx) + Math.abs(dy)) + CLOSED_SIDE;
      for (let r = fromRow; r <= toRow; r += 1) {
        const y = minY + (r + 0.5) * cell - ay;
        for (let c = from; c <= to; c += 1) {
          const x = minX + (c + 0.5) * cell - ax;
          if (Math.abs(dx * y - dy * x) > reach) continue;
          const end = starts[r * columns + c + 1]!;
          for (let m = starts[r * columns + c]!; m < end; m += 1) {
            const t = members[m]!;
            if (asked[t] === question) continue;
            asked[t] = question;
            if (store[STRIDE * t + TOP]! > lowest + BEHIND / 2)
              clip(store, STRIDE * t, ax, ay, az, dx, dy, dz, spans);
          }
        }
      }
    },
  };
}

/** The range in which a line is inside a triangle's sides and behind its plane. */
function clip(
  store: Float64Array,
  t: number,
  ax: number,
  ay: number,
  az: number,
  dx: number,
  dy: number,
  dz: number,
  spans: number[],
): void {
  let lo = 0;
  let hi = 1;
  // distance to the plane, not depth along the view: stable on steep faces
  const [nx, ny, nz] = [store[t + PLANE]!, store[t + PLANE + 1]!, store[t + PLANE + 2]!];
  const above = nx * ax + ny * ay + nz * az - store[t + PLANE + 3]! + BEHIND;
  const rise = nx * dx + ny * dy + nz * dz;
  if (Math.abs(rise) < 1e-12) {
    if (above >= 0) return;
  } else if (rise > 0) hi = Math.min(hi, -above / rise);
  else lo = Math.max(lo, -above / rise);
  for (let i = t + SIDES; i < t + SIDES + 9; i += 3) {
    if (hi <= lo) return;
    const inside = store[i]! * ax + store[i + 1]! * ay + store[i + 2]! + CLOSED_SIDE;
    const gain = store[i]! * dx + store[i + 1]! * dy;
    if (Math.abs(gain) < 1e-12) {
      if (inside < 0) return;
    } else if (gain > 0) lo = Math.max(lo, -inside / gain);
    else hi = Math.min(hi, -inside / gain);
  }
  if (hi > lo) spans.push(lo, hi);
}

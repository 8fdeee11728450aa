import { eachAxis } from '../../frame/index.js';
import { SAME_SINGLE } from '../../tolerances.js';
import type { Point } from '../told/index.js';

/**
 * The loops in which a plane cuts a closed surface: counter-clockwise round the wood, seen against the normal; clockwise round air.
 *
 * A corner on the plane counts as lying beyond it, so every triangle is crossed twice or not at all and every loop closes.
 *
 * @param positions corner i at 3i, mm
 * @param triangles numbers of corners, counter-clockwise from outside; an edge is shared by two triangles
 * @param normal unit
 * @param at n·p of the plane, mm
 */
export function sliceLoops(
  positions: Float32Array,
  triangles: ArrayLike<number>,
  normal: Point,
  at: number,
): readonly (readonly Point[])[] {
  const corners = positions.length / 3;
  const over = new Float64Array(corners);
  for (let i = 0; i < corners; i += 1) {
    over[i] =
      normal[0] * positions[3 * i]! +
      normal[1] * positions[3 * i + 1]! +
      normal[2] * positions[3 * i + 2]! -
      at;
  }
  // from the edge a triangle comes back through to the edge it goes out by
  const next = new Map<number, number[]>();
  for (let t = 0; t < triangles.length; t += 3) {
    let [out, back] = [-1, -1];
    for (let side = 0; side < 3; side += 1) {
      const from = triangles[t + side]!;
      const to = triangles[t + ((side + 1) % 3)]!;
      if (over[from]! < 0 === over[to]! < 0) continue;
      const key = Math.min(from, to) * corners + Math.max(from, to);
      if (over[from]! < 0) out = key;
      else back = key;
    }
    if (out < 0) continue;
    const known = next.get(back);
    if (known) known.push(out);
    else next.set(back, [out]);
  }
  const crossing = (key: number): Point => {
    const [a, b] = [Math.floor(key / corners), key % corners];
    const share = over[a]! / (over[a]! - over[b]!);
    return eachAxis((i) => {
      const from = positions[3 * a + i]!;
      return from + share * (positions[3 * b + i]! - from);
    });
  };
  const loops: Point[][] = [];
  for (const start of next.keys()) {
    const loop: Point[] = [];
    let key = start;
    for (;;) {
      const onward = next.get(key)?.pop();
      if (onward === undefined) break;
      loop.push(crossing(key));
      key = onward;
    }
    // a plane through a corner meets several edges there
    const apart = loop.filter((p, i) => !same(p, loop[(i + 1) % loop.length]!));
    if (apart.length > 2) loops.push(apart);
  }
  return loops;
}

const same = (a: Point, b: Point): boolean => a.every((part, i) => Math.abs(part - b[i]!) < SAME_SINGLE);

import { FLAT_CORNERS } from '../tolerances.js';
import { type DoubleMesh, doubleMesh, type Facets } from './facets.js';
import type { Body } from './kernel.js';

const known = new WeakMap<Body, boolean>();

/** Does a body in one piece bulge nowhere inwards? Then none of its sides is a valley. */
export function isConvex(body: Body): boolean {
  const found = known.get(body) ?? (body.genus() === 0 && withoutValleys(doubleMesh(body)));
  known.set(body, found);
  return found;
}

function withoutValleys({ corners, triangles }: DoubleMesh): boolean {
  const at = (corner: number, j: number) => corners[3 * corner + j]!;
  const opposite = new Map<number, number>();
  const count = corners.length / 3;
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k += 1) {
      opposite.set(triangles[t + k]! * count + triangles[t + ((k + 1) % 3)]!, triangles[t + ((k + 2) % 3)]!);
    }
  }
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const u = [0, 1, 2].map((j) => at(b, j) - at(a, j)) as [number, number, number];
    const v = [0, 1, 2].map((j) => at(c, j) - at(a, j)) as [number, number, number];
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
    const size = Math.hypot(...n);
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const beyond = opposite.get(to * count + from);
      if (beyond === undefined) return false;
      const over =
        n[0] * (at(beyond, 0) - at(a, 0)) +
        n[1] * (at(beyond, 1) - at(a, 1)) +
        n[2] * (at(beyond, 2) - at(a, 2));
      if (over > FLAT_CORNERS * size) return false;
    }
  }
  return true;
}

type Corner = [number, number, number];

/**
 * What of a convex body lies on one side of the plane where the axis `axis` (0, 1, 2 for x, y, z) reads `at`, closed there.
 *
 * @param side 1 keeps what lies below, -1 what lies above
 */
export function cutConvex(facets: Facets, axis: 0 | 1 | 2, at: number, side: 1 | -1): Facets {
  const kept: number[] = [];
  const rim: Corner[] = [];
  for (let i = 0; i < facets.length; i += 9) {
    const cut: Corner[] = [];
    for (let k = 0; k < 3; k += 1) {
      const [from, to] = [i + 3 * k, i + 3 * ((k + 1) % 3)];
      const [here, there] = [side * (facets[from + axis]! - at), side * (facets[to + axis]! - at)];
      if (here <= 0) cut.push([facets[from]!, facets[from + 1]!, facets[from + 2]!]);
      if ((here < 0 && there > 0) || (here > 0 && there < 0)) {
        const share = here / (here - there);
        const on = [0, 1, 2].map((j) => facets[from + j]! + share * (facets[to + j]! - facets[from + j]!));
        on[axis] = at;
        cut.push(on as Corner);
        rim.push(on as Corner);
      }
    }
    for (let k = 1; k + 1 < cut.length; k += 1) kept.push(...cut[0]!, ...cut[k]!, ...cut[k + 1]!);
  }
  kept.push(...lid(rim, axis));
  return Float64Array.from(kept);
}

/** Closes a convex rim in its plane; which way round does not matter to what is near. */
function lid(rim: readonly Corner[], axis: 0 | 1 | 2): number[] {
  const [u, v] = axis === 0 ? [1, 2] : axis === 1 ? [2, 0] : [0, 1];
  const middle = [0, 1, 2].map((j) => rim.reduce((sum, point) => sum + point[j]!, 0) / rim.length);
  const order = rim
    .map((point) => ({ point, turn: Math.atan2(point[v]! - middle[v]!, point[u]! - middle[u]!) }))
    .sort((a, b) => a.turn - b.turn)
    .map(({ point }) => point);
  // two triangles share each side that was cut
  const around = order.filter((point, i) => i === 0 || !same(point, order[i - 1]!));
  // from one end to the other, so that every triangle lies across and its box holds little else
  const reach = (axis: number) => Math.max(...around.map((point) => Math.abs(point[axis]! - middle[axis]!)));
  const along = reach(u) > reach(v) ? u : v;
  const start = around.reduce((best, point, i) => (point[along]! < around[best]![along]! ? i : best), 0);
  const at = (i: number) => around[(start + i) % around.length]!;
  const facets: number[] = [];
  for (let low = 0, high = around.length - 1; low + 1 < high; ) {
    facets.push(...at(low), ...at(low + 1), ...at(high));
    low += 1;
    if (low + 1 < high) facets.push(...at(low), ...at(high - 1), ...at(high));
    high -= 1;
  }
  return facets;
}

const same = (a: Corner, b: Corner): boolean => a.every((at, j) => Math.abs(at - b[j]!) < FLAT_CORNERS);

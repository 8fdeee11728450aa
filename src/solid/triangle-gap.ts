/**
 * The square of the least distance between two triangles, mm²; 0 when they cross or touch; `most` when they are no nearer.
 *
 * Two triangles that do not cross come nearest along two of their sides, or at a corner of one over the inside of the other.
 * This is what all measuring spends its time in: plain numbers, nothing made on the way.
 *
 * @param p triangles, nine numbers each, the first from `i`, the second of `q` from `j`
 */
export function triangleGapSq(p: Float64Array, i: number, q: Float64Array, j: number, most: number): number {
  const over = cornersOver(p, i, q, j, most);
  if (over === FAR || over === 0) return over === 0 ? 0 : most;
  const under = cornersOver(q, j, p, i, most);
  if (under === FAR || under === 0) return under === 0 ? 0 : most;
  let least = Math.min(most, over, under);
  for (let k = 0; k < 9; k += 3) {
    const k2 = k === 6 ? 0 : k + 3;
    for (let m = 0; m < 9; m += 3) {
      const apart = sidesGapSq(p, i + k, i + k2, q, j + m, j + (m === 6 ? 0 : m + 3));
      if (apart < least) least = apart;
    }
  }
  return least;
}

/** All of one triangle lies on one side of the other's plane, too far off. */
const FAR = -1;

/**
 * The least square distance of the corners of q over the inside of p; 0 when a side of q passes through p.
 */
function cornersOver(p: Float64Array, i: number, q: Float64Array, j: number, most: number): number {
  const ax = p[i]!;
  const ay = p[i + 1]!;
  const az = p[i + 2]!;
  const ux = p[i + 3]! - ax;
  const uy = p[i + 4]! - ay;
  const uz = p[i + 5]! - az;
  const vx = p[i + 6]! - ax;
  const vy = p[i + 7]! - ay;
  const vz = p[i + 8]! - az;
  let nx = uy * vz - uz * vy;
  let ny = uz * vx - ux * vz;
  let nz = ux * vy - uy * vx;
  const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
  // a sliver has no inside
  if (size === 0) return Number.POSITIVE_INFINITY;
  nx /= size;
  ny /= size;
  nz /= size;
  const h0 = (q[j]! - ax) * nx + (q[j + 1]! - ay) * ny + (q[j + 2]! - az) * nz;
  const h1 = (q[j + 3]! - ax) * nx + (q[j + 4]! - ay) * ny + (q[j + 5]! - az) * nz;
  const h2 = (q[j + 6]! - ax) * nx + (q[j + 7]! - ay) * ny + (q[j + 8]! - az) * nz;
  const low = Math.min(h0, h1, h2);
  const high = Math.max(h0, h1, h2);
  if (low > 0 ? low * low >= most : high < 0 && high * high >= most) return FAR;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 3; k += 1) {
    const c = j + 3 * k;
    const d = k === 2 ? j : c + 3;
    const h = k === 0 ? h0 : k === 1 ? h1 : h2;
    const next = k === 0 ? h1 : k === 1 ? h2 : h0;
    const crosses = h > 0 !== next > 0;
    if (!crosses && !(h * h < least && h * h < most)) continue;
    // the corner, and the spot where the side from it passes the plane, by the shares of p's corners in them
    for (let t = crosses ? h / (h - next) : 0; ; t = 0) {
      const wx = q[c]! + t * (q[d]! - q[c]!) - ax;
      const wy = q[c + 1]! + t * (q[d + 1]! - q[c + 1]!) - ay;
      const wz = q[c + 2]! + t * (q[d + 2]! - q[c + 2]!) - az;
      const s = (uy * wz - uz * wy) * nx + (uz * wx - ux * wz) * ny + (ux * wy - uy * wx) * nz;
      const r = (wy * vz - wz * vy) * nx + (wz * vx - wx * vz) * ny + (wx * vy - wy * vx) * nz;
      if (s >= 0 && r >= 0 && s + r <= size) {
        if (crosses && t > 0) return 0;
        if (h * h < least) least = h * h;
      }
      if (t === 0) break;
    }
  }
  return least;
}

/** The square of the least distance between the sides p1 p2 and q1 q2. */
function sidesGapSq(
  p: Float64Array,
  p1: number,
  p2: number,
  q: Float64Array,
  q1: number,
  q2: number,
): number {
  const ux = p[p2]! - p[p1]!;
  const uy = p[p2 + 1]! - p[p1 + 1]!;
  const uz = p[p2 + 2]! - p[p1 + 2]!;
  const vx = q[q2]! - q[q1]!;
  const vy = q[q2 + 1]! - q[q1 + 1]!;
  const vz = q[q2 + 2]! - q[q1 + 2]!;
  const rx = p[p1]! - q[q1]!;
  const ry = p[p1 + 1]! - q[q1 + 1]!;
  const rz = p[p1 + 2]! - q[q1 + 2]!;
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const ur = ux * rx + uy * ry + uz * rz;
  const vr = vx * rx + vy * ry + vz * rz;
  const across = uu * vv - uv * uv;
  // on the first side the spot nearest to the second's line, then on the second the spot nearest to that, and back
  const first = across > 1e-12 * uu * vv ? share((uv * vr - ur * vv) / across) : 0;
  const t = vv > 0 ? share((uv * first + vr) / vv) : 0;
  const s = uu > 0 ? share((uv * t - ur) / uu) : 0;
  const dx = rx + s * ux - t * vx;
  const dy = ry + s * uy - t * vy;
  const dz = rz + s * uz - t * vz;
  return dx * dx + dy * dy + dz * dz;
}

const share = (part: number): number => Math.max(0, Math.min(part, 1));

import { spanOf } from '../../frame/index.js';

/** Facets that meet at less than this belong to one curved surface: cos 20°. */
const CREASE = Math.cos((20 * Math.PI) / 180);

/**
 * A normal for each corner of each triangle: facets of one curved surface are shaded as one, edges stay sharp.
 *
 * @returns nine numbers for each triangle, unit vectors
 */
export function smoothNormals(positions: Float32Array, triangles: ArrayLike<number>): Float32Array {
  const own = new Float64Array(triangles.length);
  const round = new Map<number, number[]>();
  for (let t = 0; t < triangles.length; t += 3) {
    const at = (corner: number, axis: number) => positions[3 * triangles[t + corner]! + axis]!;
    const side = (corner: number) => [0, 1, 2].map((axis) => at(corner, axis) - at(0, axis)) as Three;
    // as long as the facet is large: small facets bend a large one but little
    own.set(cross(side(1), side(2)), t);
    for (let corner = 0; corner < 3; corner += 1) {
      const known = round.get(triangles[t + corner]!);
      if (known) known.push(t);
      else round.set(triangles[t + corner]!, [t]);
    }
  }
  const sizes = new Float64Array(triangles.length / 3);
  for (let t = 0; t < triangles.length; t += 3) sizes[t / 3] = spanOf(own[t]!, own[t + 1]!, own[t + 2]!);
  const out = new Float32Array(3 * triangles.length);
  // a size that is dragged has all of it done anew for each picture: no arrays in here
  for (let t = 0; t < triangles.length; t += 3) {
    const least = CREASE * sizes[t / 3]!;
    for (let corner = t; corner < t + 3; corner += 1) {
      let [x, y, z] = [0, 0, 0];
      for (const other of round.get(triangles[corner]!)!) {
        const cos = own[t]! * own[other]! + own[t + 1]! * own[other + 1]! + own[t + 2]! * own[other + 2]!;
        if (other !== t && cos < least * sizes[other / 3]!) continue;
        x += own[other]!;
        y += own[other + 1]!;
        z += own[other + 2]!;
      }
      const length = spanOf(x, y, z) || 1;
      out[3 * corner] = x / length;
      out[3 * corner + 1] = y / length;
      out[3 * corner + 2] = z / length;
    }
  }
  return out;
}

type Three = [number, number, number];

const cross = ([ax, ay, az]: Three, [bx, by, bz]: Three): Three => [
  ay * bz - az * by,
  az * bx - ax * bz,
  ax * by - ay * bx,
];

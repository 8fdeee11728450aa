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
  const out = new Float32Array(3 * triangles.length);
  for (let t = 0; t < triangles.length; t += 3) {
    const mine = own.subarray(t, t + 3);
    const size = Math.hypot(...mine);
    for (let corner = 0; corner < 3; corner += 1) {
      const sum: Three = [0, 0, 0];
      for (const other of round.get(triangles[t + corner]!)!) {
        const its = own.subarray(other, other + 3);
        const cos = mine[0]! * its[0]! + mine[1]! * its[1]! + mine[2]! * its[2]!;
        if (other !== t && cos < CREASE * size * Math.hypot(...its)) continue;
        for (let axis = 0; axis < 3; axis += 1) sum[axis]! += its[axis]!;
      }
      const length = Math.hypot(...sum) || 1;
      out.set(
        sum.map((part) => part / length),
        3 * (t + corner),
      );
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

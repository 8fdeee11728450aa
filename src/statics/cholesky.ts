/** A symmetric positive definite matrix taken apart once, for any number of right sides. */
export interface Factored {
  readonly solve: (right: Float64Array) => Float64Array;
}

/** A pivot below this share of its diagonal is nothing but rounding: the matrix has no one answer. */
const NO_PIVOT = 1e-13;

/**
 * Cholesky: `A = L·Lᵀ`, row by row.
 *
 * @param matrix rows one after another, `size` × `size`; its lower half is read and overwritten with L
 * @returns undefined when it is not positive definite: a frame that can move without bending
 */
export function cholesky(matrix: Float64Array, size: number): Factored | undefined {
  const l = matrix;
  // left of its first entry a row of L is empty too
  const first = new Int32Array(size);
  for (let i = 0; i < size; i += 1) {
    const row = i * size;
    while (l[row + first[i]!] === 0 && first[i]! < i) first[i]! += 1;
    for (let j = first[i]!; j <= i; j += 1) {
      const other = j * size;
      const whole = l[row + j]!;
      let rest = whole;
      for (let k = Math.max(first[i]!, first[j]!); k < j; k += 1) rest -= l[row + k]! * l[other + k]!;
      if (j < i) l[row + j] = rest / l[other + j]!;
      else if (rest > whole * NO_PIVOT) l[row + i] = Math.sqrt(rest);
      else return undefined;
    }
  }
  return {
    solve(right) {
      const x = right.slice();
      for (let i = 0; i < size; i += 1) {
        for (let k = first[i]!; k < i; k += 1) x[i]! -= l[i * size + k]! * x[k]!;
        x[i]! /= l[i * size + i]!;
      }
      for (let i = size - 1; i >= 0; i -= 1) {
        x[i]! /= l[i * size + i]!;
        for (let k = first[i]!; k < i; k += 1) x[k]! -= l[i * size + k]! * x[i]!;
      }
      return x;
    },
  };
}

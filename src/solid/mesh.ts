/**
 * A closed surface as triangles over shared corners.
 *
 * Corner i is at `positions[3i], [3i+1], [3i+2]`, mm; triangle j joins the corners `triangles[3j], [3j+1], [3j+2]`,
 * counter-clockwise seen from outside the wood.
 */
export interface Mesh {
  readonly positions: Float32Array | Float64Array;
  readonly triangles: Uint32Array;
}

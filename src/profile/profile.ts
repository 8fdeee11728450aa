/**
 * A closed outline of lines and arcs, mm.
 *
 * Each vertex begins the segment that runs to the next one (the last runs back to the first). `bulge` = tan(θ/4) of that
 * segment's included angle: 0 is a line, 1 a half circle, positive turns counter-clockwise.
 */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** Counter-clockwise loops enclose wood; no vertex is repeated at the end. */
export type Profile = readonly Vertex[];

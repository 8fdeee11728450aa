/**
 * The usual proportions of loose-tenon joints, each overridable. Common practice, no source, unless a source is named.
 */
export const PRACTICE = {
  /** Tenon thickness as a share of the thinner board. Fairham, Woodwork Joints, general rule after fig. 177. */
  tenonShare: 1 / 3,
  /** Deepest mortise in a wide face, as a share of the thickness there. */
  faceDepthShare: 1 / 2,
  /** Deepest mortise in an edge or end, in tenon thicknesses. */
  edgeDepthThicknesses: 4,
  /** Least wood between a mortise's end and the edge of the board, mm (half an inch). */
  endInset: 12.7,
  /** Least wall beside a mortise and behind its bottom, mm. */
  wall: 6,
  /** Least wood between two mortises in a row, mm. */
  web: 12.7,
  /** Of long edges glued together: from one alignment tenon to the next, mm; 150 to 250 is usual. */
  seamSpacing: 200,
  /** A tenon shortened for another goes in this many of its thicknesses at least, or another way is looked for. */
  leastEntryThicknesses: 1.5,
  /** Two tenons are mitred when their boards stand at an angle from this to 180° less it, degrees. */
  leastMitre: 60,
  /** A usual tenon width, from which the number of tenons follows, mm. */
  tenonWidth: 60,
  /** Air on each cheek, mm. */
  cheekClearance: 0.1,
  /** Mortise length less tenon width, so that glue and air can pass, mm. */
  edgeClearance: 1,
  /** Air at each end of the tenon, mm. */
  endGap: 1,
} as const;

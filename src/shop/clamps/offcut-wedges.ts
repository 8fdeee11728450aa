import type { Board } from '../../board/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';

/** A wedge that falls off when a board is cut to shape. mm, degrees. */
export interface OffcutWedge {
  readonly board: string;
  /** The bevel or edge whose cut leaves it. */
  readonly cut: string;
  readonly angleDeg: number;
  /** Along its slope, from the sharp edge to the thick end. */
  readonly slope: number;
  readonly breadth: number;
  readonly thickEnd: number;
  /** Whether it is large enough to serve as a clamp pad once its sharp end is sawn off where it is as thick as a pad's thin end. */
  readonly serves: boolean;
}

/** Above this a cut leaves a corner, not a wedge; below, a strip; degrees. */
const [LEAST_DEG, MOST_DEG] = [0.1, 45];

/**
 * The wedges that the cutting of a board leaves over: at each bevelled end or edge that leans one way only, and at each
 * tapered side or slanted end of its outline.
 */
export function offcutWedges(board: Board): readonly OffcutWedge[] {
  const { length, width, thickness } = board.blank;
  const wedge = (cut: string, angleDeg: number, slope: number, breadth: number): OffcutWedge[] =>
    angleDeg < LEAST_DEG || angleDeg > MOST_DEG
      ? []
      : [
          {
            board: board.id,
            cut,
            angleDeg,
            slope,
            breadth,
            thickEnd: slope * Math.sin((angleDeg * Math.PI) / 180),
            serves:
              slope - PRACTICE.padThickness / Math.tan((angleDeg * Math.PI) / 180) >= PRACTICE.offcutLength &&
              breadth >= PRACTICE.offcutBreadth,
          },
        ];
  const fromBevels = board.bevels.flatMap(({ id, normal: [x, y, z], within }) => {
    // leaning through the thickness over an end or edge; one that leans two ways leaves no plain wedge
    const [over, other, breadth] = Math.abs(x) > Math.abs(y) ? [x, y, width] : [y, x, length];
    if (within || Math.abs(other) > 1e-6) return [];
    const angle = Math.atan2(Math.abs(z), Math.abs(over));
    return wedge(id, (angle * 180) / Math.PI, thickness / Math.cos(angle), breadth);
  });
  const fromOutline = board.outline.flatMap((from, i) => {
    const to = board.outline[(i + 1) % board.outline.length]!;
    const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
    if (from.bulge !== 0) return [];
    const angle = (Math.atan2(Math.min(dx, dy), Math.max(dx, dy)) * 180) / Math.PI;
    return wedge(`edge-${i + 1}`, angle, Math.hypot(dx, dy), thickness);
  });
  return [...fromBevels, ...fromOutline];
}

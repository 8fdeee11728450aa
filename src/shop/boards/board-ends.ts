import { type Board, columnRegion, faceFrame, planeRegion } from '../../board/index.js';
import { angleDeg, type Frame, pointOut, scale, type Vec3 } from '../../frame/index.js';
import { type Region, regionArea } from '../../profile/index.js';
import { COPLANAR, PARALLEL_DEG, PATCH_MM2, SAME_POINT } from '../../tolerances.js';

/** How the two ends of a board lean: a parallelogram, a trapezoid, or neither. */
export type EndsWord = 'square' | 'parallel' | 'mirrored' | 'one end angled' | 'different angles' | 'curved';

/** The ends of a board and its lengths between them, mm. */
export interface BoardEnds {
  readonly ends: EndsWord;
  /** Out of square, degrees, reference end first; 0 is square. */
  readonly anglesDeg: readonly [number, number];
  /** Overall, from the farthest point of one end to that of the other. */
  readonly longPoint: number;
  /** From the nearest point of one end to that of the other. */
  readonly shortPoint: number;
  /** Between the middles of both ends. */
  readonly centreLine: number;
  /** What to measure when the stop is set. */
  readonly stopTo: string;
}

/**
 * Reads the ends off the board's faces: of the faces across the grain that look towards an end, the one that reaches
 * farthest (the larger of two that reach as far).
 */
export function boardEnds(board: Board): BoardEnds {
  const across = endFaces(board);
  const first = endFace(across, -1);
  const last = endFace(across, 1);
  if (!first || !last) {
    const { length } = board.blank;
    return {
      ends: 'curved',
      anglesDeg: [0, 0],
      longPoint: length,
      shortPoint: length,
      centreLine: length,
      stopTo: 'overall',
    };
  }
  const a = reachOf(first);
  const b = reachOf(last);
  const ends = wordFor(first.frame.z, last.frame.z);
  const longPoint = b.most - a.least;
  const shortPoint = b.least - a.most;
  return {
    ends,
    anglesDeg: [angleDeg(first.frame.z, [-1, 0, 0]), angleDeg(last.frame.z, [1, 0, 0])],
    longPoint,
    shortPoint,
    centreLine: (longPoint + shortPoint) / 2,
    stopTo: STOPS[ends],
  };
}

const STOPS: Readonly<Record<EndsWord, string>> = {
  square: 'either edge: the ends are square',
  parallel:
    'centre line: every edge measures the same, from the long point of one end to the short point of the other',
  mirrored: 'long point to long point, along the longer side',
  'one end angled': 'long point, from the square end',
  'different angles': 'long point to long point',
  curved: 'overall',
};

interface EndFace {
  readonly frame: Frame;
  readonly region: Region;
}

/** Cosine of 60°, the steepest mitre that still counts as an end: that of a triangle's corners. */
const STEEPEST_END = 0.5 - SAME_POINT;

/** The flat faces across the grain; the others are not worked out, which is most of the work on a board with a curved outline. */
function endFaces(board: Board): readonly EndFace[] {
  const ids = [
    'reference-end',
    'opposite-end',
    ...board.outline.map((_, i) => `edge-${i + 1}`),
    ...board.bevels.map(({ id }) => id),
  ];
  const column = columnRegion(board);
  return ids
    .flatMap((id) => faceFrame(board, id) ?? [])
    .filter(({ z }) => Math.abs(z[0]) > STEEPEST_END)
    .map((frame): EndFace => ({ frame, region: planeRegion(board, frame, column) }))
    .filter(({ region }) => regionArea(region) > PATCH_MM2);
}

function endFace(across: readonly EndFace[], towards: 1 | -1): EndFace | undefined {
  const looking = across.filter((face) => face.frame.z[0] * towards > 0);
  return looking.toSorted((p, q) => {
    const reach = (face: EndFace) => (towards > 0 ? reachOf(face).most : -reachOf(face).least);
    const farther = reach(q) - reach(p);
    return Math.abs(farther) > COPLANAR ? farther : regionArea(q.region) - regionArea(p.region);
  })[0];
}

/** Where along the grain a face lies. */
function reachOf({ frame, region }: EndFace): { least: number; most: number } {
  const along = region.flatMap((loop) => loop.map(([x, y]) => pointOut(frame, [x, y, 0])[0]));
  return { least: Math.min(...along), most: Math.max(...along) };
}

function wordFor(a: Vec3, b: Vec3): EndsWord {
  const square = [angleDeg(a, [-1, 0, 0]), angleDeg(b, [1, 0, 0])].map((angle) => angle < PARALLEL_DEG);
  if (square[0] && square[1]) return 'square';
  if (square[0] || square[1]) return 'one end angled';
  if (angleDeg(a, scale(b, -1)) < PARALLEL_DEG) return 'parallel';
  if (angleDeg([-a[0], a[1], a[2]], b) < PARALLEL_DEG) return 'mirrored';
  return 'different angles';
}

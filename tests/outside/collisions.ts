import type { DrawnLine, FilledArea, PageMark, WrittenText } from './read-marks.js';

type Point = readonly [x: number, y: number];

/** Words that cannot be read without doubt, and what is in their way. */
export interface Collision {
  readonly text: string;
  readonly with: string;
  /** Where, mm from the upper left corner of the page. */
  readonly at: Point;
}

/** Boxes are taken this much smaller on every side: letters seldom fill them. mm */
const SPARE = 0.1;

/** No wider are the strokes of the grain, which tone a face and are no lines, mm. */
const GRAIN = 0.12;

/** How finely a line is looked at where something may hide it, mm. */
const STEP = 0.1;

/** Every place of a page where words meet words or a line, or lie under what is drawn after them. */
export function collisionsOn(marks: readonly PageMark[]): readonly Collision[] {
  const texts = marks.flatMap((mark, order) => (mark.kind === 'text' ? [{ mark, order }] : []));
  const lines = marks.flatMap((mark, order) =>
    mark.kind === 'line' && mark.lineWidth > GRAIN ? [{ mark, order, box: boxOf([mark.from, mark.to]) }] : [],
  );
  const areas = marks.flatMap((mark, order) =>
    mark.kind === 'area' ? [{ mark, order, box: boxOf(mark.loops.flat()) }] : [],
  );
  const hiddenAt = (p: Point, order: number) =>
    areas.some(({ mark, order: later, box }) => later > order && inBox(p, box) && isInside(p, mark));
  const seen = texts.filter(({ mark, order }) => !hiddenAt(middleOf(mark), order));
  const boxes = new Map(seen.map(({ mark }) => [mark, boxOf(cornersOf(mark))]));
  return texts.flatMap(({ mark, order }): readonly Collision[] => {
    const box = boxes.get(mark);
    if (!box) return [{ text: mark.text, with: 'what is drawn over it', at: mark.from }];
    const others = seen
      .filter(
        ({ mark: other, order: later }) =>
          later > order && boxesMeet(box, boxes.get(other)!, 0) && overlap(mark, other),
      )
      .map(({ mark: other }) => ({ text: mark.text, with: `"${other.text}"`, at: mark.from }));
    const through = lines.find(({ mark: line, order: drawn, box: around }) => {
      if (!boxesMeet(box, around, line.lineWidth)) return false;
      const inside = within(mark, line);
      if (!inside) return false;
      const [[x, y], [u, v]] = inside;
      const steps = Math.max(1, Math.ceil(Math.hypot(u - x, v - y) / STEP));
      return Array.from(
        { length: steps + 1 },
        (_, k): Point => [x + ((u - x) * k) / steps, y + ((v - y) * k) / steps],
      ).some((p) => !hiddenAt(p, drawn));
    });
    const at = through?.mark.from;
    return [
      ...others,
      ...(at
        ? [{ text: mark.text, with: `a line of ${through.mark.lineWidth.toFixed(2)} mm`, at: mark.from }]
        : []),
    ];
  });
}

/** A point in a text's own coordinates: along its baseline, and up from it. */
const own = ({ from, along: [c, s] }: WrittenText, [x, y]: Point): Point => [
  (x - from[0]) * c + (y - from[1]) * s,
  (x - from[0]) * s - (y - from[1]) * c,
];

const back = ({ from, along: [c, s] }: WrittenText, [u, v]: Point): Point => [
  from[0] + u * c + v * s,
  from[1] + u * s - v * c,
];

const middleOf = (text: WrittenText): Point => back(text, [text.width / 2, text.above / 2]);

const cornersOf = (text: WrittenText): readonly Point[] =>
  [
    [SPARE, SPARE - text.below],
    [text.width - SPARE, SPARE - text.below],
    [text.width - SPARE, text.above - SPARE],
    [SPARE, text.above - SPARE],
  ].map(([u, v]) => back(text, [u!, v!]));

/** The piece of a line within a text's box. */
function within(text: WrittenText, { from, to, lineWidth }: DrawnLine): readonly [Point, Point] | undefined {
  const [p, q] = [own(text, from), own(text, to)];
  const less = SPARE - lineWidth / 2;
  let [lo, hi] = [0, 1];
  for (const [axis, min, max] of [
    [0, less, text.width - less],
    [1, less - text.below, text.above - less],
  ] as const) {
    const run = q[axis] - p[axis];
    if (Math.abs(run) < 1e-9) {
      if (p[axis] <= min || p[axis] >= max) return undefined;
      continue;
    }
    const [a, b] = [(min - p[axis]) / run, (max - p[axis]) / run];
    lo = Math.max(lo, Math.min(a, b));
    hi = Math.min(hi, Math.max(a, b));
  }
  if (lo >= hi) return undefined;
  const at = (t: number): Point => [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
  return [at(lo), at(hi)];
}

/** Two boxes, turned or not, share something unless a side of one parts them. */
function overlap(a: WrittenText, b: WrittenText): boolean {
  const parted = (one: WrittenText, other: WrittenText) => {
    const corners = cornersOf(other).map((p) => own(one, p));
    const [us, vs] = [corners.map(([u]) => u), corners.map(([, v]) => v)];
    return (
      Math.min(...us) >= one.width - SPARE ||
      Math.max(...us) <= SPARE ||
      Math.min(...vs) >= one.above - SPARE ||
      Math.max(...vs) <= SPARE - one.below
    );
  };
  return !parted(a, b) && !parted(b, a);
}

interface Box {
  readonly min: Point;
  readonly max: Point;
}

const boxOf = (points: readonly Point[]): Box => ({
  min: [Math.min(...points.map(([x]) => x)), Math.min(...points.map(([, y]) => y))],
  max: [Math.max(...points.map(([x]) => x)), Math.max(...points.map(([, y]) => y))],
});

/** Whether two boxes come as near to each other as this, mm: what is farther away cannot meet. */
const boxesMeet = (a: Box, b: Box, near: number): boolean =>
  a.min[0] <= b.max[0] + near &&
  b.min[0] <= a.max[0] + near &&
  a.min[1] <= b.max[1] + near &&
  b.min[1] <= a.max[1] + near;

const inBox = ([x, y]: Point, { min, max }: Box): boolean =>
  x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1];

/** Even number of crossings to one side: outside. */
function isInside([x, y]: Point, { loops }: FilledArea): boolean {
  let inside = false;
  for (const loop of loops)
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length]!;
      if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
    });
  return inside;
}

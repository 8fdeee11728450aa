import type { Vec2 } from '../../frame/index.js';
import type { ArcStroke, CircleStroke, PolylineStroke, Stroke, Tone } from './sheet.js';
import { type Box, boxInside, textBox } from './text-width.js';

/**
 * What of some strokes lies in a box. Arcs stay arcs; letters are shown whole or not at all.
 *
 * @returns strokes that end on the border of the box; a filled shape keeps its filled part
 */
export const clipped = (strokes: readonly Stroke[], box: Box): readonly Stroke[] =>
  strokes.flatMap((stroke) => oneClipped(stroke, box));

function oneClipped(stroke: Stroke, box: Box): readonly Stroke[] {
  switch (stroke.kind) {
    case 'text':
      return boxInside(textBox(stroke), box) ? [stroke] : [];
    case 'line': {
      const piece = pieceInside(stroke.from, stroke.to, box);
      return piece ? [{ ...stroke, from: piece[0], to: piece[1] }] : [];
    }
    case 'polyline':
      return stroke.fill && stroke.closed ? filled(stroke, box) : runs(stroke, box);
    case 'tone':
      return toned(stroke, box);
    case 'circle':
      return round({ ...stroke, startDeg: 0, sweepDeg: 360 }, stroke, box);
    case 'arc':
      return round(stroke, stroke, box);
  }
}

/** The piece of a straight line in a box (clipping of Liang and Barsky, 1984). */
export function pieceInside(from: Vec2, to: Vec2, box: Box): readonly [Vec2, Vec2] | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let [lo, hi] = [0, 1];
  for (const [run, room] of [
    [-dx, from[0] - box.minX],
    [dx, box.maxX - from[0]],
    [-dy, from[1] - box.minY],
    [dy, box.maxY - from[1]],
  ] as const) {
    if (run === 0) {
      if (room < 0) return undefined;
    } else if (run < 0) lo = Math.max(lo, room / run);
    else hi = Math.min(hi, room / run);
  }
  if (lo >= hi) return undefined;
  const at = (t: number): Vec2 => (t === 0 ? from : t === 1 ? to : [from[0] + dx * t, from[1] + dy * t]);
  return [at(lo), at(hi)];
}

/** A row of straight pieces, broken where it leaves the box. */
function runs(stroke: PolylineStroke, box: Box): readonly PolylineStroke[] {
  const points = stroke.closed ? [...stroke.points, stroke.points[0]!] : stroke.points;
  const found: Vec2[][] = [];
  points.slice(1).forEach((to, i) => {
    const piece = pieceInside(points[i]!, to, box);
    if (!piece) return;
    const last = found.at(-1);
    if (last && last.at(-1) === piece[0]) last.push(piece[1]);
    else found.push([...piece]);
  });
  if (found.length === 1 && found[0]!.length === points.length && found[0]!.every((p, i) => p === points[i]))
    return [stroke];
  return found.map((run) => ({ ...stroke, closed: false, points: run }));
}

/** A toned surface: its loops as filled shapes, its grain as rows of pieces. */
function toned(tone: Tone, box: Box): readonly Tone[] {
  const outline = { kind: 'polyline', line: 'table', closed: true } as const;
  const loops = tone.loops.flatMap((points) => filled({ ...outline, points }, box).map((one) => one.points));
  const marks = tone.marks.flatMap((points) =>
    runs({ ...outline, closed: false, points }, box).map((one) => one.points),
  );
  return loops.length === 0 ? [] : [{ ...tone, loops, marks }];
}

/** A filled shape cut side by side (Sutherland and Hodgman, 1974). */
function filled(stroke: PolylineStroke, { minX, minY, maxX, maxY }: Box): readonly PolylineStroke[] {
  const sides: readonly (readonly [axis: 0 | 1, sign: 1 | -1, limit: number])[] = [
    [0, 1, minX],
    [0, -1, -maxX],
    [1, 1, minY],
    [1, -1, -maxY],
  ];
  const points = sides.reduce<readonly Vec2[]>((loop, [axis, sign, limit]) => {
    const over = (p: Vec2) => sign * p[axis] - limit;
    return loop.flatMap((p, i) => {
      const q = loop[(i + 1) % loop.length]!;
      const [a, b] = [over(p), over(q)];
      const kept: Vec2[] = a >= 0 ? [p] : [];
      if (a >= 0 === b >= 0) return kept;
      const t = a / (a - b);
      return [...kept, [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t] as const];
    });
  }, stroke.points);
  return points.length < 3 ? [] : [{ ...stroke, points }];
}

/** Arcs of a circle in a box: it is split where it crosses the sides, and the pieces whose middle is inside stay. */
function round(
  {
    centre,
    radius,
    startDeg,
    sweepDeg,
    line,
  }: Pick<ArcStroke, 'centre' | 'radius' | 'startDeg' | 'sweepDeg' | 'line'>,
  whole: ArcStroke | CircleStroke,
  box: Box,
): readonly Stroke[] {
  const at = (deg: number): Vec2 => [
    centre[0] + radius * Math.cos((deg * Math.PI) / 180),
    centre[1] + radius * Math.sin((deg * Math.PI) / 180),
  ];
  const turns = [
    ...[box.minX, box.maxX].flatMap((x) => anglesFor((x - centre[0]) / radius, Math.acos, (a) => -a)),
    ...[box.minY, box.maxY].flatMap((y) =>
      anglesFor((y - centre[1]) / radius, Math.asin, (a) => Math.PI - a),
    ),
  ]
    .map((deg) => (((deg - startDeg) % 360) + 360) % 360)
    .filter((deg) => deg > 0 && deg < sweepDeg)
    .sort((a, b) => a - b);
  const stops = [0, ...turns, sweepDeg];
  const inside = stops.slice(1).map((end, i) => {
    const [x, y] = at(startDeg + (stops[i]! + end) / 2);
    return x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
  });
  if (inside.every((one) => one)) return [whole];
  const part = whole.part === undefined ? {} : { part: whole.part };
  return inside.flatMap((is, i): ArcStroke[] =>
    is && stops[i + 1]! - stops[i]! > 1e-9
      ? [
          {
            kind: 'arc',
            line,
            ...part,
            centre,
            radius,
            startDeg: startDeg + stops[i]!,
            sweepDeg: stops[i + 1]! - stops[i]!,
          },
        ]
      : [],
  );
}

const anglesFor = (
  ratio: number,
  inverse: (ratio: number) => number,
  other: (angle: number) => number,
): readonly number[] =>
  Math.abs(ratio) >= 1 ? [] : [inverse(ratio), other(inverse(ratio))].map((angle) => (angle * 180) / Math.PI);

import type { Vec2 } from '../../frame/index.js';
import type { Say } from '../../length/index.js';
import { type Alone, type MapOf, valueWords } from '../../range/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { hatchOf, letters, path, type SheetEntity, SMALL } from '../sheet/index.js';

/** Width of the names, of the stated ends beside a bar, and of the bar, mm. */
const NAMES = 44;
const ENDS = 22;
const BAR = 52;
/** Width of the sound values beside it, mm. */
const FOUND = 40;
const ROW = 7.5;

/**
 * A bar for each dimension: its stated range as a thin line with the ends beside it, the sound values round the planned one as a
 * hatched bar with its ends in the last column where they are not the stated ones, a mark at the planned value.
 */
export function rangeBars(alone: readonly Alone[], say: Say): DrawnFigure {
  const height = alone.length * ROW + 3;
  return {
    kind: 'drawn',
    said: 'Bars of the ranges: for each dimension its stated ends, the sound values and the planned one; the table below holds the figures.',
    width: NAMES + 2 * ENDS + BAR + FOUND,
    height,
    draw: ([x, y]) => alone.flatMap((one, i) => bar(one, [x, y + height - (i + 1) * ROW], say)),
  };
}

function bar({ dimension, span, again }: Alone, [x, y]: Vec2, say: Say): readonly SheetEntity[] {
  const { least: min, most: max } = dimension;
  const left = x + NAMES + ENDS;
  const place = (value: number): number => left + (max > min ? ((value - min) / (max - min)) * BAR : 0);
  const box = (from: number, to: number, low: number, high: number): readonly Vec2[] => [
    [place(from), y + low],
    [place(to), y + low],
    [place(to), y + high],
    [place(from), y + high],
  ];
  const at = place(dimension.value);
  return [
    letters([x, y], dimension.label),
    letters([left - 2, y], valueWords(dimension, min, say), { anchor: 'end' }),
    letters([left + BAR + 2, y], valueWords(dimension, max, say)),
    ...(span.from > min || span.to < max
      ? [
          letters(
            [left + BAR + ENDS, y],
            `${valueWords(dimension, span.from, say)} to ${valueWords(dimension, span.to, say)}`,
          ),
        ]
      : []),
    path('table', [
      [left, y + 1.25],
      [left + BAR, y + 1.25],
    ]),
    hatchOf(dimension.name, [box(span.from, span.to, 0, 2.5)], 45, 1),
    path('visible', box(span.from, span.to, 0, 2.5), true),
    ...again.map(({ from, to }) => path('hidden', box(from, to, 0.4, 2.1), true)),
    {
      ...path(
        'visible',
        [
          [at - 1, y + 4.3],
          [at + 1, y + 4.3],
          [at, y + 2.7],
        ],
        true,
      ),
      fill: 'ink' as const,
    },
  ];
}

/** Longest side of a map, mm. */
const MAP = 120;

/** The map of two dimensions: what was tried and is not sound is filled; where neighbours were taken for tried, smaller. */
export function rangeMap({ across, up, columns, rows, cells }: MapOf, say: Say): DrawnFigure {
  const [w, h] = [MAP / columns.length, MAP / rows.length];
  const [axis, below] = [26, 12];
  return {
    kind: 'drawn',
    said: `A map of ${across.label} against ${up.label}: what was tried and is not sound is filled, the planned values are ringed.`,
    width: axis + MAP + 20,
    height: below + MAP + 4,
    draw: ([x, y]) => {
      const [left, bottom] = [x + axis, y + below];
      const square = (column: number, row: number, share: number): readonly Vec2[] => {
        const [cx, cy] = [left + (column + 0.5) * w, bottom + (row + 0.5) * h];
        const [dx, dy] = [(w * share) / 2, (h * share) / 2];
        return [
          [cx - dx, cy - dy],
          [cx + dx, cy - dy],
          [cx + dx, cy + dy],
          [cx - dx, cy + dy],
        ];
      };
      const planned: Vec2 = [
        left + (nearest(columns, across.value) + 0.5) * w,
        bottom + (nearest(rows, up.value) + 0.5) * h,
      ];
      const filled = cells.flatMap((row, j) =>
        row.flatMap(({ answer, tried }, i): readonly SheetEntity[] =>
          answer.sound
            ? []
            : [{ ...path('table', square(i, j, tried ? 0.9 : 0.35), true), fill: 'ink' as const }],
        ),
      );
      const end = (values: readonly number[], k: number) => values.at(k)!;
      return [
        ...filled,
        path(
          'visible',
          [
            [left, bottom],
            [left + MAP, bottom],
            [left + MAP, bottom + MAP],
            [left, bottom + MAP],
          ],
          true,
        ),
        { kind: 'circle', line: 'visible', centre: planned, radius: 1.6, fill: 'paper' },
        { kind: 'circle', line: 'visible', centre: planned, radius: 0.6, fill: 'ink' },
        letters([left, bottom - SMALL - 1.5], valueWords(across, end(columns, 0), say), { anchor: 'middle' }),
        letters([left + MAP, bottom - SMALL - 1.5], valueWords(across, end(columns, -1), say), {
          anchor: 'middle',
        }),
        letters([left + MAP / 2, bottom - SMALL - 1.5], across.label, { anchor: 'middle' }),
        letters([left - 2, bottom], valueWords(up, end(rows, 0), say), { anchor: 'end' }),
        letters([left - 2, bottom + MAP - SMALL], valueWords(up, end(rows, -1), say), { anchor: 'end' }),
        letters([left - 2, bottom + MAP / 2], up.label, { anchor: 'end' }),
      ];
    },
  };
}

const nearest = (values: readonly number[], to: number): number =>
  values.reduce((best, value, i) => (Math.abs(value - to) < Math.abs(values[best]! - to) ? i : best), 0);

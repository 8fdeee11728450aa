import type { Vec2 } from '../../frame/index.js';
import {
  type Dimension,
  type DrawingUnits,
  dimensionRows,
  inOrder,
  letters,
  runningSteps,
  SMALL,
  type Stop,
  type Stroke,
  stroke,
  textWidth,
} from '../sheet/index.js';
import type { RowPlace } from './row-side.js';
import { type DimensionRow, tick } from './running-row.js';

/** Height of one row of letters with its air, mm. */
const ROW = SMALL + 1.5;

/**
 * A chain of dimensions from stop to stop, first to last; its printed figures add up to the printed whole. A figure that is
 * wider than its part stands farther out, with a line to it.
 *
 * @param out where the line lies, mm out of the view's border
 */
export function chainRow(
  place: RowPlace,
  out: number,
  stops: readonly Stop[],
  units: DrawingUnits,
): DimensionRow {
  const ordered = inOrder(stops, place.outOf);
  const values = ordered.map((stop) => stop.value);
  const steps = { mm: runningSteps(values, 'mm').parts, in: runningSteps(values, 'in').parts };
  const labels = ordered.slice(1).map((to, i) => {
    const from = ordered[i]!;
    const [a, b] = [place.alongOf(from.point), place.alongOf(to.point)];
    const rows = dimensionRows({ mm: steps.mm[i]!, in: steps.in[i]! }, units);
    const width = Math.max(...rows.map((row) => textWidth(row, SMALL))) + 1.2;
    return { from, to, a, b, rows, width, middle: (a + b) / 2, level: 0 };
  });
  const high = units === 'dual' ? 2 * ROW : ROW;
  const first = (row: number, count: number) =>
    place.side === 'above' || place.side === 'left' ? count - 1 - row : row;
  const levels: { from: number; to: number }[][] = [];
  const placed = labels.map((label) => {
    if (label.width <= Math.abs(label.b - label.a)) return label;
    const range = { from: label.middle - label.width / 2, to: label.middle + label.width / 2 };
    let level = 1;
    while (levels[level]?.some((other) => range.from < other.to && other.from < range.to)) level += 1;
    levels[level] = [...(levels[level] ?? []), range];
    return { ...label, level };
  });
  const dimensions = placed.map(({ from, to, a, b, rows, middle, level }): Dimension => {
    const base = out + 1 + level * high;
    const parts: Stroke[] = [
      stroke('dimension', place.at(a, out), place.at(b, out)),
      ...[from, to].flatMap((stop): Stroke[] => {
        const along = place.alongOf(stop.point);
        const start = Math.max(place.outOf(stop.point), 0) + 0.6;
        return [
          stroke('dimension', place.at(along, start), place.at(along, out + 1)),
          tick(place.at(along, out)),
        ];
      }),
      ...(level === 0 ? [] : [stroke('dimension', place.at(middle, out), place.at(middle, base - 0.4))]),
      // read from below or from the right, mm stand over inches
      ...rows.map((row, i) => figure(place, middle, base + first(i, rows.length) * ROW, row)),
    ];
    return {
      kind: 'dimension',
      what: `${from.what} to ${to.what}`,
      value: to.value - from.value,
      unit: 'mm',
      parts,
    };
  });
  const top = Math.max(0, ...placed.map(({ level }) => level));
  return { dimensions, depth: dimensions.length === 0 ? 0 : out + 1 + (top + 1) * high };
}

/** A figure along the row, its foot `out` from the border, readable from below or from the right. */
function figure(place: RowPlace, along: number, out: number, text: string): Stroke {
  const level = place.side === 'above' || place.side === 'below';
  // letters of the right row stand with their feet towards the right
  const foot = place.side === 'right' || place.side === 'below' ? out + SMALL : out;
  const at: Vec2 = place.at(along, foot);
  return letters(at, text, { anchor: 'middle', rotationDeg: level ? 0 : 90 });
}

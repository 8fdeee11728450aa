import type { Vec2 } from '../../frame/index.js';
import { type Rule, rulesOf, stepOf } from '../../length/index.js';
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
  spread,
  stroke,
  textWidth,
} from '../sheet/index.js';
import type { RowPlace } from './row-side.js';
import { type DimensionRow, tick } from './running-row.js';

/** Height of one row of letters with its air, mm. */
const ROW = SMALL + 1.5;

/** How far a line to a figure that was moved along runs askew, mm outwards. */
const LED = 2.2;

/**
 * A chain of dimensions from stop to stop, first to last; its printed figures add up to the printed whole. A figure that is
 * wider than its part stands farther out, clear of its neighbours, with a line to it.
 *
 * @param out where the line lies, mm out of the view's border
 * @param rounded each by itself: parts that are set one by one, and read as on their card
 */
export function chainRow(
  place: RowPlace,
  out: number,
  stops: readonly Stop[],
  units: DrawingUnits,
  rounded: 'as one chain' | 'each by itself' = 'as one chain',
): DimensionRow {
  const ordered = inOrder(stops, place.outOf);
  const values = ordered.map((stop) => stop.value);
  const partsIn = (rule: Rule) =>
    rounded === 'as one chain'
      ? runningSteps(values, rule).parts
      : values.slice(1).map((value, i) => Math.round((value - values[i]!) / stepOf(rule)));
  const steps = rulesOf(units).map(partsIn);
  const labels = ordered.slice(1).map((to, i) => {
    const from = ordered[i]!;
    const [a, b] = [place.alongOf(from.point), place.alongOf(to.point)];
    const rows = to.rows
      ? to.rows(to.value - from.value, units)
      : dimensionRows(
          steps.map((parts) => parts[i]!),
          units,
        );
    const width = Math.max(...rows.map((row) => textWidth(row, SMALL))) + 1.2;
    return { from, to, a, b, rows, width, middle: (a + b) / 2, level: 0 };
  });
  const high = ROW * steps.length;
  const first = (row: number, count: number) =>
    place.side === 'above' || place.side === 'left' ? count - 1 - row : row;
  // what is wider than its part stands farther out, moved along until it clears its neighbours
  const wide = labels.filter(({ width, a, b }) => width > Math.abs(b - a));
  const outer = [...wide].sort((one, other) => one.middle - other.middle);
  const room = outer.map((_, i) =>
    outer.slice(0, i).reduce((sum, { width }, k) => sum + (width + outer[k + 1]!.width) / 2, 0),
  );
  const ends = ordered.map(({ point }) => place.alongOf(point));
  const spots = inside(
    spread(
      outer.map(({ middle }, i) => middle - room[i]!),
      0,
    ).map((spot, i) => spot + room[i]!),
    outer.map(({ width }) => width),
    [Math.min(...ends), Math.max(...ends)],
  );
  const placed = labels.map((label) => {
    const at = outer.indexOf(label);
    return at < 0 ? { ...label, spot: label.middle } : { ...label, level: 1, spot: spots[at]! };
  });
  // under figures that stand in their part a line to an outer one first goes straight
  const straight = placed.some(({ level }) => level === 0) ? high : 0;
  const led = outer.some(({ middle }, i) => Math.abs(middle - spots[i]!) > 0.1) ? LED : 0;
  const outermost = straight + led + (straight + led === 0 ? 2 : 1);
  const dimensions = placed.map(({ from, to, a, b, rows, middle, level, spot }): Dimension => {
    const base = out + (level === 0 ? 1 : outermost);
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
      ...(level === 0
        ? []
        : [
            ...(straight > 0
              ? [stroke('dimension', place.at(middle, out), place.at(middle, out + straight))]
              : []),
            stroke('dimension', place.at(middle, out + straight), place.at(spot, base - 0.4)),
          ]),
      // read from below or from the right, mm stand over inches
      ...rows.map((row, i) => figure(place, spot, base + first(i, rows.length) * ROW, row)),
    ];
    return {
      kind: 'dimension',
      what: `${from.what} to ${to.what}`,
      value: to.value - from.value,
      unit: 'mm',
      parts,
    };
  });
  const base = outer.length > 0 ? outermost : 1;
  return { dimensions, depth: dimensions.length === 0 ? 0 : out + base + high };
}

/** Places of figures kept between the ends of their chain, where other rows have their lines; as they are when there is no room. */
function inside(
  spots: readonly number[],
  widths: readonly number[],
  [low, high]: readonly [number, number],
): readonly number[] {
  if (widths.reduce((sum, one) => sum + one, 0) > high - low) return spots;
  const moved = [...spots];
  moved.forEach((spot, i) => {
    const least = i === 0 ? low + widths[0]! / 2 : moved[i - 1]! + (widths[i - 1]! + widths[i]!) / 2;
    moved[i] = Math.max(spot, least);
  });
  for (let i = moved.length - 1; i >= 0; i -= 1) {
    const most =
      i === moved.length - 1 ? high - widths[i]! / 2 : moved[i + 1]! - (widths[i]! + widths[i + 1]!) / 2;
    moved[i] = Math.min(moved[i]!, most);
  }
  return moved;
}

/** A figure along the row, its foot `out` from the border, readable from below or from the right. */
function figure(place: RowPlace, along: number, out: number, text: string): Stroke {
  const level = place.side === 'above' || place.side === 'below';
  // letters of the right row stand with their feet towards the right
  const foot = place.side === 'right' || place.side === 'below' ? out + SMALL : out;
  const at: Vec2 = place.at(along, foot);
  return letters(at, text, { anchor: 'middle', rotationDeg: level ? 0 : 90 });
}

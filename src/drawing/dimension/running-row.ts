import type { Vec2 } from '../../frame/index.js';
import { rulesOf } from '../../length/index.js';
import {
  type Dimension,
  type DrawingUnits,
  dimensionRows,
  disc,
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

/** Between the view's border and the line, the line and the words, mm. */
const LINE_OUT = 4;
const WORDS_OUT = 8;

/** Rows of letters side by side, mm. */
const APART = SMALL + 1.6;

/** A row as drawn, and how far out it reaches. */
export interface DimensionRow {
  readonly dimensions: readonly Dimension[];
  readonly depth: number;
}

/**
 * Running dimensions (ISO 129-1): one line from the reference, with a figure for each stop that reads along its extension
 * line. Crowded figures are spread and led to their stops.
 *
 * @param origin where the reference lies: value 0
 * @param reference in words, for what each dimension measures: `the reference end`
 */
export function runningRow(
  place: RowPlace,
  origin: Vec2,
  stops: readonly Stop[],
  reference: string,
  units: DrawingUnits,
): DimensionRow {
  const ordered = inOrder(
    stops.filter((stop) => stop.value > 0.05),
    place.outOf,
  );
  if (ordered.length === 0) return { dimensions: [], depth: 0 };
  const start = place.alongOf(origin);
  // ascending on the paper, whichever way the reference lies
  const onPaper = [...ordered].sort((a, b) => place.alongOf(a.point) - place.alongOf(b.point));
  const spots = spread(
    onPaper.map((stop) => place.alongOf(stop.point)),
    APART,
  );
  const values = ordered.map((stop) => stop.value);
  const steps = rulesOf(units).map((rule) => runningSteps([0, ...values], rule).running);
  let widest = 0;
  const dimensions = onPaper.map((stop, i): Dimension => {
    const n = ordered.indexOf(stop) + 1;
    const text = dimensionRows(
      steps.map((one) => one[n]!),
      units,
    ).join(' ');
    widest = Math.max(widest, textWidth(text, SMALL));
    const along = place.alongOf(stop.point);
    const spot = spots[i]!;
    return {
      kind: 'dimension',
      what: `${stop.what} from ${reference}`,
      value: stop.value,
      unit: 'mm',
      parts: [
        stroke('dimension', place.at(along, place.outOf(stop.point) + 0.6), place.at(along, LINE_OUT + 1)),
        stroke('dimension', place.at(along, LINE_OUT + 1), place.at(spot, WORDS_OUT - 0.8)),
        tick(place.at(along, LINE_OUT)),
        figure(place, spot, text),
      ],
    };
  });
  const far = onPaper.map((stop) => place.alongOf(stop.point));
  const baseline: Stroke[] = [
    stroke('dimension', place.at(start, LINE_OUT), place.at(Math.min(start, ...far), LINE_OUT)),
    stroke('dimension', place.at(start, LINE_OUT), place.at(Math.max(start, ...far), LINE_OUT)),
    stroke('dimension', place.at(start, place.outOf(origin) + 0.6), place.at(start, LINE_OUT + 1)),
    disc('dimension', place.at(start, LINE_OUT), 0.9),
  ];
  return {
    dimensions: dimensions.map((one, i) => (i === 0 ? { ...one, parts: [...baseline, ...one.parts] } : one)),
    depth: WORDS_OUT + widest + 1,
  };
}

/** An oblique stroke where a dimension line meets an extension line (ISO 129-1). */
export const tick = ([x, y]: Vec2): Stroke => stroke('visible', [x - 0.8, y - 0.8], [x + 0.8, y + 0.8]);

/** A figure that reads outward from the row, or towards it, never upside down. */
function figure(place: RowPlace, along: number, text: string): Stroke {
  const [x, y] = place.at(along, WORDS_OUT);
  switch (place.side) {
    case 'below':
      return letters([x + SMALL / 2, y], text, { anchor: 'end', rotationDeg: 90 });
    case 'above':
      return letters([x + SMALL / 2, y], text, { rotationDeg: 90 });
    case 'left':
      return letters([x, y - SMALL / 2], text, { anchor: 'end' });
    case 'right':
      return letters([x, y - SMALL / 2], text);
  }
}

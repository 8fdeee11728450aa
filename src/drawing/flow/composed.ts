import { BODY, letters, wrappedText } from '../sheet/index.js';
import type { DrawnFigure } from './drawn-figure.js';
import { LEADING } from './set-text.js';

/** A drawing with words above it: a strong row, and others. */
export function withCaption(figure: DrawnFigure, strong: string, rows: readonly string[]): DrawnFigure {
  const width = Math.max(figure.width, 74);
  const lines = rows.flatMap((row) => wrappedText(row, width));
  const height = figure.height + (lines.length + 1) * LEADING + 2;
  return {
    kind: 'drawn',
    said: `${[strong, ...rows].join('; ')}. ${figure.said}`,
    width,
    height,
    draw: ([x, y]) => [
      letters([x, y + height - BODY - 0.5], strong, { height: BODY, bold: true }),
      ...lines.map((line, i) =>
        letters([x, y + height - BODY - 0.5 - (i + 1) * LEADING], line, { height: BODY }),
      ),
      ...figure.draw([x + (width - figure.width) / 2, y]),
    ],
  };
}

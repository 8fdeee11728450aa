import { settledFigure, type Vec2 } from '../../frame/index.js';
import type { TextHeight, TextStroke } from './sheet.js';

/** Advance widths of DejaVu Sans for the characters from space to ~, thousandths of its size (the font's own table). */
const ADVANCES: readonly number[] = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636,
  636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295,
  295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838,
  500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521,
  392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];

/** Any other character: no wider than an ellipsis. */
const WIDEST = 1000;

/** Some that drawings use often. */
const OTHERS: Readonly<Record<string, number>> = { '°': 500, Ø: 787, '×': 838, '±': 838, '·': 318, '–': 500 };

/** Height of a capital of that font for each unit of its size. */
const CAPITAL = 0.729;

/** Bold letters are at most this much wider. */
const BOLD = 1.27;

/** What hangs below the baseline, and what rises above a capital (brackets, marks), for each mm of a capital. */
const BELOW = 0.33;
const ABOVE = 1.1;

/**
 * How wide a row of letters comes out, mm; never less than a reader with the sheet's first font draws.
 *
 * @param height of a capital, mm
 */
export function textWidth(text: string, height: number, bold = false): number {
  let thousandths = 0;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    // a letter told in two halves counts once
    if (code >= 0xdc00 && code < 0xe000) continue;
    thousandths += ADVANCES[code - 32] ?? OTHERS[text.charAt(i)] ?? WIDEST;
  }
  return ((thousandths / 1000) * height * (bold ? BOLD : 1)) / CAPITAL;
}

/** A box on the sheet, mm. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The box round a text as it will be drawn. */
export function textBox({
  at,
  text,
  height,
  anchor,
  rotationDeg,
  bold,
}: Omit<TextStroke, 'kind' | 'height'> & { readonly height: number }): Box {
  const width = textWidth(text, height, bold);
  const start = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  const turn = (rotationDeg * Math.PI) / 180;
  const [c, s] = [settledFigure(Math.cos(turn)), settledFigure(Math.sin(turn))];
  const [end, low, high] = [start + width, -BELOW * height, ABOVE * height];
  const x = (along: number, up: number) => at[0] + along * c - up * s;
  const y = (along: number, up: number) => at[1] + along * s + up * c;
  const [x1, x2, x3, x4] = [x(start, low), x(start, high), x(end, low), x(end, high)];
  const [y1, y2, y3, y4] = [y(start, low), y(start, high), y(end, low), y(end, high)];
  return {
    minX: Math.min(x1, x2, x3, x4),
    minY: Math.min(y1, y2, y3, y4),
    maxX: Math.max(x1, x2, x3, x4),
    maxY: Math.max(y1, y2, y3, y4),
  };
}

/** Whether two boxes share more than their border. */
export const boxesOverlap = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

/** The text in the largest of some heights that fits a width, cut with an ellipsis when none does. */
export function fittedText(
  text: string,
  width: number,
  heights: readonly TextHeight[],
): { readonly text: string; readonly height: TextHeight } {
  const height = heights.find((one) => textWidth(text, one) <= width);
  if (height !== undefined) return { text, height };
  const least = heights.at(-1)!;
  let kept = text;
  while (kept.length > 0 && textWidth(`${kept}…`, least) > width) kept = kept.slice(0, -1);
  return { text: `${kept.trimEnd()}…`, height: least };
}

/** Whether a box lies wholly in another. */
export const boxInside = (box: Box, other: Box): boolean =>
  box.minX >= other.minX && box.minY >= other.minY && box.maxX <= other.maxX && box.maxY <= other.maxY;

/** The corners of a box, counter-clockwise from its lower left corner. */
export const boxLoop = ({ minX, minY, maxX, maxY }: Box): readonly Vec2[] => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];

import type { Point, PreviewStanding } from '../told/index.js';
import { add, type Pixel, write } from './over-sheet.js';

/** A straight way from one spot to another, and what is said of it. */
export interface Span {
  readonly from: Point;
  readonly to: Point;
  readonly text: string;
}

const pointsOf = (all: readonly Pixel[]): string => all.map((one) => one.join(',')).join(' ');

/** Rings round a place; one round what is measured there. */
export function ring(sheet: SVGSVGElement, [cx, cy]: Pixel, measured: boolean): void {
  for (const r of measured ? [26] : [4, 14]) add(sheet, 'circle', { cx, cy, r, class: 'mark' });
}

/** A small ring, for a corner or an edge that is meant. */
export function spot(sheet: SVGSVGElement, [cx, cy]: Pixel): void {
  add(sheet, 'circle', { cx, cy, r: 6, class: 'mark' });
}

export function crossAt(sheet: SVGSVGElement, [x, y]: Pixel): void {
  add(sheet, 'line', { x1: x - 14, y1: y, x2: x + 14, y2: y, class: 'span' });
  add(sheet, 'line', { x1: x, y1: y - 14, x2: x, y2: y + 14, class: 'span' });
}

/** A line from spot to spot, its ends dotted, its length beside it. */
export function span(sheet: SVGSVGElement, { from, to, text }: Span, pixel: (at: Point) => Pixel): void {
  const [a, b] = [pixel(from), pixel(to)];
  add(sheet, 'line', { x1: a[0], y1: a[1], x2: b[0], y2: b[1], class: 'span' });
  for (const [cx, cy] of [a, b]) add(sheet, 'circle', { cx, cy, r: 3, class: 'spot' });
  // beside the line, square to it
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = Math.hypot(dx, dy);
  const [x, y] = long > 1 ? [-dy / long, dx / long] : [0, -1];
  const up = y < 0 || (y === 0 && x > 0) ? 1 : -1;
  const anchor = Math.abs(x) < 0.4 ? 'middle' : up * x > 0 ? 'start' : 'end';
  const beside = { x: (a[0] + b[0]) / 2 + 14 * up * x, y: (a[1] + b[1]) / 2 + 14 * up * y + 4, anchor };
  write(sheet, beside, [text]);
}

/** The line round the feet; a ring where it tips first, and an arrow the way it goes over. */
export function standing(
  sheet: SVGSVGElement,
  { feet, first }: PreviewStanding,
  pixel: (at: Point) => Pixel,
): void {
  add(sheet, 'polygon', { points: pointsOf(feet.map(pixel)), class: 'mark' });
  if (!first) return;
  const [at, tip] = [pixel(first.at), pixel(first.to)];
  const long = Math.hypot(tip[0] - at[0], tip[1] - at[1]) || 1;
  const [x, y] = [(tip[0] - at[0]) / long, (tip[1] - at[1]) / long];
  const barb = (side: 1 | -1): Pixel => [tip[0] - 9 * x - side * 5 * y, tip[1] - 9 * y + side * 5 * x];
  add(sheet, 'circle', { cx: at[0], cy: at[1], r: 6, class: 'mark' });
  add(sheet, 'polyline', { points: pointsOf([at, tip, barb(1), tip, barb(-1)]), class: 'mark' });
  const anchor = x < -0.35 ? 'end' : x > 0.35 ? 'start' : 'middle';
  write(sheet, { x: tip[0] + 8 * x, y: tip[1] + 16 * y, anchor }, [first.text]);
}

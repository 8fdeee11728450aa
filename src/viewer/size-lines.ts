import { scale, add as sum } from '../frame/index.js';
import type { Point, PreviewBox, PreviewStanding } from './preview-data.js';

type Pixel = readonly [x: number, y: number];

/** What is written over the picture. */
export interface Written {
  /** Its sides are dimensioned where they are seen outermost. */
  readonly box: PreviewBox | undefined;
  readonly offset: Point;
  /** A place that is pointed at. */
  readonly mark: Point | undefined;
  readonly stands: PreviewStanding | undefined;
}

/** From a side to its dimension line, and from that to its text, in pixels. */
const [OUT, BEYOND] = [16, 8];

/** A side seen shorter than this is not dimensioned, in pixels. */
const SHORTEST = 18;

/** Between a text and the edge of the picture, in pixels. */
const EDGE = 6;

/** Writes dimension lines and a mark over the picture. */
export function writeOver(
  sheet: SVGSVGElement,
  { box, offset, mark, stands }: Written,
  pixel: (at: Point) => Pixel,
): void {
  sheet.replaceChildren();
  if (box) for (const side of [0, 1, 2] as const) dimension(sheet, box, side, offset, pixel);
  if (stands) standing(sheet, stands, pixel);
  if (!mark) return;
  const [cx, cy] = pixel(mark);
  for (const r of [4, 14]) add(sheet, 'circle', { cx, cy, r, class: 'mark' });
}

/** The line round the feet; a ring where it tips first, and an arrow the way it goes over. */
function standing(sheet: SVGSVGElement, { feet, first }: PreviewStanding, pixel: (at: Point) => Pixel): void {
  const points = (all: readonly Pixel[]): string => all.map((one) => one.join(',')).join(' ');
  add(sheet, 'polygon', { points: points(feet.map(pixel)), class: 'mark' });
  if (!first) return;
  const [at, tip] = [pixel(first.at), pixel(first.to)];
  const long = Math.hypot(tip[0] - at[0], tip[1] - at[1]) || 1;
  const [x, y] = [(tip[0] - at[0]) / long, (tip[1] - at[1]) / long];
  const barb = (side: 1 | -1): Pixel => [tip[0] - 9 * x - side * 5 * y, tip[1] - 9 * y + side * 5 * x];
  add(sheet, 'circle', { cx: at[0], cy: at[1], r: 6, class: 'mark' });
  add(sheet, 'polyline', { points: points([at, tip, barb(1), tip, barb(-1)]), class: 'mark' });
  const anchor = x < -0.35 ? 'end' : x > 0.35 ? 'start' : 'middle';
  const text = add(sheet, 'text', { x: tip[0] + 8 * x, y: tip[1] + 16 * y, 'text-anchor': anchor });
  text.textContent = first.text;
  keepInside(sheet, text);
}

function dimension(
  sheet: SVGSVGElement,
  { corner, sides }: PreviewBox,
  which: 0 | 1 | 2,
  offset: Point,
  pixel: (at: Point) => Pixel,
): void {
  const others = sides.filter((_, i) => i !== which) as unknown as [
    PreviewBox['sides'][0],
    PreviewBox['sides'][0],
  ];
  const at = (...shares: readonly [mm: number, along: Point][]): Point =>
    shares.reduce((from, [mm, along]) => sum(from, scale(along, mm)), sum(corner, offset));
  const half = sides.map(({ mm, along }): [number, Point] => [mm / 2, along]);
  const middle = pixel(at(...half));
  const { mm, along, mmText, inchText } = sides[which];
  const edges = [0, 1, 2, 3].map((i) => {
    const stays: [number, Point][] = [
      [i & 1 ? others[0].mm : 0, others[0].along],
      [i & 2 ? others[1].mm : 0, others[1].along],
    ];
    const [from, to] = [pixel(at(...stays)), pixel(at([mm, along], ...stays))];
    return { from, to, out: outward(from, to, middle) };
  });
  const { from, to, out } = edges.reduce((one, other) => (other.out.far > one.out.far ? other : one));
  if (Math.hypot(to[0] - from[0], to[1] - from[1]) < SHORTEST) return;
  const moved = ([x, y]: Pixel, by: number): Pixel => [x + by * out.x, y + by * out.y];
  const line = (a: Pixel, b: Pixel): void => {
    add(sheet, 'line', { x1: a[0], y1: a[1], x2: b[0], y2: b[1], class: 'size' });
  };
  for (const end of [from, to]) line(moved(end, 3), moved(end, OUT + 4));
  line(moved(from, OUT), moved(to, OUT));
  for (const [x, y] of [moved(from, OUT), moved(to, OUT)])
    add(sheet, 'circle', { cx: x, cy: y, r: 2.2, class: 'end' });
  const [x, y] = moved([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], OUT + BEYOND);
  const anchor = out.x > 0.35 ? 'start' : out.x < -0.35 ? 'end' : 'middle';
  const text = add(sheet, 'text', { x, y: y - 3 + 14 * out.y, 'text-anchor': anchor, class: 'size' });
  for (const [i, words] of [mmText, inchText].entries()) {
    add(text, 'tspan', { x, dy: 15 * i }).textContent = words;
  }
  keepInside(sheet, text);
}

/** Square to a line in the picture, away from the middle, and how far from it the line passes. */
function outward(from: Pixel, to: Pixel, middle: Pixel): { x: number; y: number; far: number } {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(dx, dy) || 1;
  const far = ((from[0] - middle[0]) * -dy + (from[1] - middle[1]) * dx) / size;
  const side = far < 0 ? -1 : 1;
  return { x: (side * -dy) / size, y: (side * dx) / size, far: Math.abs(far) };
}

/** Moves a text that would be cut off by the edge of the picture. */
function keepInside(sheet: SVGSVGElement, text: SVGElement): void {
  const box = (text as SVGTextElement).getBBox();
  const [right, bottom] = [sheet.clientWidth - EDGE, sheet.clientHeight - EDGE];
  const x = Math.max(EDGE - box.x, Math.min(0, right - box.x - box.width));
  const y = Math.max(EDGE - box.y, Math.min(0, bottom - box.y - box.height));
  if (x !== 0 || y !== 0) text.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
}

function add(sheet: SVGElement, name: string, looks: Readonly<Record<string, string | number>>): SVGElement {
  const one = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(looks)) {
    one.setAttribute(key, typeof value === 'number' ? value.toFixed(1) : value);
  }
  sheet.append(one);
  return one;
}

import { scale, add as sum } from '../../frame/index.js';
import type { Point, PreviewSide } from '../told/index.js';
import type { BoxTold } from './boxes-told.js';
import { add, type Pixel, write } from './over-sheet.js';

/** From a side to its dimension line, and from that to its text, in pixels. */
const [OUT, BEYOND] = [16, 8];

/** A side seen shorter than this is not dimensioned, in pixels. */
const SHORTEST = 18;

/** Air round a text, in pixels. */
const AIR = 2;

/**
 * Dimensions the sides of boxes, each at the edge where it is seen outermost and its text meets no other; the longest first,
 * and a side that finds no room is left out.
 */
export function sizeLines(
  sheet: SVGSVGElement,
  boxes: readonly BoxTold[],
  pixel: (at: Point) => Pixel,
): void {
  const placed: DOMRect[] = [];
  const sides = boxes.flatMap((box) => ([0, 1, 2] as const).map((which) => edgesOf(box, which, pixel)));
  for (const { side, edges } of sides.toSorted((a, b) => b.long - a.long)) {
    for (const edge of edges) {
      const [line, text] = dimension(sheet, side, edge);
      if (placed.every((one) => isApart(one, text))) {
        placed.push(text);
        break;
      }
      line.remove();
    }
  }
}

/** An edge of a box along the side that is told, in the picture, and the way out from the box's middle. */
interface Edge {
  readonly from: Pixel;
  readonly to: Pixel;
  readonly out: { readonly x: number; readonly y: number; readonly far: number };
}

/** The edges along a side, the outermost first. */
function edgesOf(
  { box: { corner, sides }, offset }: BoxTold,
  which: 0 | 1 | 2,
  pixel: (at: Point) => Pixel,
): { readonly side: PreviewSide; readonly edges: readonly Edge[]; readonly long: number } {
  const side = sides[which];
  const [one, other] = [sides[(which + 1) % 3]!, sides[(which + 2) % 3]!];
  const at = (...ways: readonly [mm: number, along: Point][]): Point =>
    ways.reduce((from, [mm, along]) => sum(from, scale(along, mm)), sum(corner, offset));
  const middle = pixel(at(...sides.map(({ mm, along }): [number, Point] => [mm / 2, along])));
  const edges = [0, 1, 2, 3]
    .map((i): Edge => {
      const stays: [number, Point][] = [
        [i & 1 ? one.mm : 0, one.along],
        [i & 2 ? other.mm : 0, other.along],
      ];
      const [from, to] = [pixel(at(...stays)), pixel(at([side.mm, side.along], ...stays))];
      return { from, to, out: outward(from, to, middle) };
    })
    .filter(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) >= SHORTEST)
    .sort((a, b) => b.out.far - a.out.far);
  return { side, edges, long: side.mm };
}

/** Draws a dimension. Returns it, and where its text stands. */
function dimension(
  sheet: SVGSVGElement,
  { mmText, inchText }: PreviewSide,
  { from, to, out }: Edge,
): readonly [drawn: SVGElement, text: DOMRect] {
  const drawn = add(sheet, 'g', {});
  const moved = ([x, y]: Pixel, by: number): Pixel => [x + by * out.x, y + by * out.y];
  const line = (a: Pixel, b: Pixel): void => {
    add(drawn, 'line', { x1: a[0], y1: a[1], x2: b[0], y2: b[1] });
  };
  for (const end of [from, to]) line(moved(end, 3), moved(end, OUT + 4));
  line(moved(from, OUT), moved(to, OUT));
  for (const [cx, cy] of [moved(from, OUT), moved(to, OUT)])
    add(drawn, 'circle', { cx, cy, r: 2.2, class: 'end' });
  const [x, y] = moved([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], OUT + BEYOND);
  const anchor = out.x > 0.35 ? 'start' : out.x < -0.35 ? 'end' : 'middle';
  return [drawn, write(sheet, { x, y: y - 3 + 14 * out.y, anchor }, [mmText, inchText], drawn)];
}

const isApart = (a: DOMRect, b: DOMRect): boolean =>
  a.right + AIR <= b.left || b.right + AIR <= a.left || a.bottom + AIR <= b.top || b.bottom + AIR <= a.top;

/** Square to a line in the picture, away from the middle, and how far from it the line passes. */
function outward(from: Pixel, to: Pixel, middle: Pixel): Edge['out'] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(dx, dy) || 1;
  const far = ((from[0] - middle[0]) * -dy + (from[1] - middle[1]) * dx) / size;
  const side = far < 0 ? -1 : 1;
  return { x: (side * -dy) / size, y: (side * dx) / size, far: Math.abs(far) };
}

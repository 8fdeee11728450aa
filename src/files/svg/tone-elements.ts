import type { Tone } from '../../drawing/index.js';
import { svgNumber } from './svg.js';

/** Where a tone comes to lie: y of the picture runs down from `up`; `grain` is the width of its strokes. */
interface Place {
  readonly up: number;
  readonly grain: number;
}

/** A toned surface as SVG: its ground, hemmed in its own colour so that no seam shows beside the next one, and its grain. */
export function toneElements({ loops, colour, marks, ink }: Tone, { up, grain }: Place): string {
  const run = (points: readonly (readonly [number, number])[]) =>
    relative(points.map(([x, y]) => [x, up - y]));
  const ground = `<path d="${loops.map((loop) => `${run(loop)}z`).join('')}" fill="${colour}" stroke="${colour}" stroke-width="${svgNumber(grain)}"/>`;
  if (marks.length === 0) return ground;
  return `${ground}<path d="${marks.map(run).join('')}" fill="none" stroke="${ink}" stroke-width="${svgNumber(grain)}"/>`;
}

/** A row of points, each told from the one before: shorter, and no error adds up. */
function relative(points: readonly (readonly [number, number])[]): string {
  let [x, y] = [0, 0];
  return points
    .map(([px, py], i) => {
      const [nx, ny] = [Math.round(px * STEPS), Math.round(py * STEPS)];
      const step = `${i === 0 ? 'M' : 'l'}${svgNumber((nx - x) / STEPS)} ${svgNumber((ny - y) / STEPS)}`;
      [x, y] = [nx, ny];
      return step;
    })
    .join('');
}

/** Steps of a picture's points for each mm: finer than a screen or a printer shows. */
const STEPS = 20;

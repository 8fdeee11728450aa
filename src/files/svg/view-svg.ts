import { type View, viewBox } from '../../drawing/index.js';
import { svgNumber, svgText } from './svg.js';
import { toneElements } from './tone-elements.js';

/** Widths of the lines of a picture that is scaled to its place on a screen, in shares of its longer side. */
const WIDTHS = { visible: 1 / 500, hidden: 1 / 1000, centre: 1 / 1000 } as const;

/** Width of a stroke of grain, in the same shares. */
const GRAIN = 1 / 900;

/** Air round a picture, in shares of its longer side. */
const MARGIN = 1 / 40;

/**
 * A view as an SVG element that fills the place it is given, for a page: one colour, the one of the text round it.
 *
 * @param said what a screen reader says of it
 */
export function viewSvg(view: View, said: string): string {
  const { minX: left, maxX: right, minY: low, maxY: high } = viewBox(view);
  const longer = Math.max(right - left, high - low);
  const air = longer * MARGIN;
  const box = [left - air, -high - air, right - left + 2 * air, high - low + 2 * air].map(svgNumber);
  const group = (kind: keyof typeof WIDTHS): string => {
    const drawn = view.lines
      .filter(({ line }) => line === kind)
      .map((line) => `M${line.points.map(([x, y]) => `${svgNumber(x)} ${svgNumber(-y)}`).join('L')}`);
    if (drawn.length === 0) return '';
    return `<path d="${drawn.join('')}" stroke-width="${svgNumber(longer * WIDTHS[kind])}"/>`;
  };
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box.join(' ')}" role="img" aria-label="${svgText(said)}">`,
    ...view.tones.map((tone) => toneElements(tone, { up: 0, grain: longer * GRAIN })),
    '<g fill="none" stroke="currentColor" stroke-linecap="round" stroke-linejoin="round">',
    group('centre'),
    group('visible'),
    '</g></svg>',
  ].join('');
}

import { fixed, INCH, type Say } from '../length/index.js';
import { GRAVITY } from '../statics/index.js';
import type { MarginUnit } from './margin.js';

/** Newtons in a pound-force (NIST SP 811), and pounds on a square inch in a megapascal. */
const POUND = 4.4482216;
const PSI = 145.03774;

/** About three figures of a number: `15.1`, `231`, `2600`. */
const three = (value: number): string => {
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : 2);
};

/**
 * A figure of a margin in the person's units; a force with the weight that presses as hard.
 *
 * @example sayFigure(speaker('mm'), 27, 'N') // '27.0 N (2.75 kg)'
 */
export function sayFigure(say: Say, figure: number, unit: MarginUnit): string {
  const inches = say.units === 'in';
  if (!Number.isFinite(figure)) return 'without end';
  switch (unit) {
    case 'mm':
      return say.length(figure);
    case 'N':
      return inches ? `${three(figure / POUND)} lbf` : `${three(figure)} N (${three(figure / GRAVITY)} kg)`;
    case 'N·m':
      return inches ? `${three((figure * 1000) / (POUND * 12 * INCH))} lbf·ft` : `${three(figure)} N·m`;
    case 'MPa':
      return inches ? `${three(figure * PSI)} psi` : `${three(figure)} MPa`;
    case 'deg':
      return say.angle(figure);
    default:
      return `${three(figure)}${unit && ` ${unit}`}`;
  }
}

import { type Texts, toldApart } from '../told-apart.js';
import { fixed } from './fixed.js';
import { printAngle } from './print-angle.js';
import { printFine, printFit, printLength, printTool } from './print-length.js';
import { forRouter, type Rule, unitsOf } from './rule.js';
import { INCH, type Units } from './units.js';

/** Says figures in the person's units; takes mm, mm², mm³ and degrees. */
export interface Say {
  readonly units: Units;
  /** As fine as lengths of wood are said. */
  readonly rule: Rule;
  /** Wood, as read off a rule: `57.5 mm`, `2-1/4"`. */
  length(mm: number): string;
  /** What is set on router and jig, as a caliper or depth gauge shows it: `12.7 mm`, `0.500"`. */
  setting(mm: number): string;
  /** What a cutter or a drill is sold by, and what it cuts: `8.0 mm`, `5/16"`. */
  tool(mm: number): string;
  /** The air of a fit, and what is held to it: `0.1 mm`, `0.004"`. */
  fit(mm: number): string;
  /** Finer than a rule, for limits and what is typed: `0.05 mm`, `0.002"`. */
  fine(mm: number): string;
  /** Lengths of one sentence, a figure and its limit for one, said like {@link Say.length}, or finer where two would read alike. */
  lengths<T extends readonly number[]>(...mm: T): Texts<T>;
  /** Lengths of one sentence said like {@link Say.fine}, or finer where two would read alike. */
  fines<T extends readonly number[]>(...mm: T): Texts<T>;
  angle(degrees: number): string;
  area(mm2: number): string;
  volume(mm3: number): string;
}

/**
 * The voice of one run: lengths of wood by its rule, settings of the router and fits in thousandths of an inch, whatever the rule.
 *
 * Areas from 100 mm² are said in cm², volumes from 1,000 mm³ in cm³; in inches a figure too small for three decimals stays metric.
 *
 * @example speaker('mm').volume(1_234_567) // '1234.6 cm³'
 */
export function speaker(rule: Rule): Say {
  const units = unitsOf(rule);
  return {
    units,
    rule,
    length: (mm) => printLength(mm, { units: rule }),
    setting: (mm) => printLength(mm, { units: forRouter(rule) }),
    tool: (mm) => printTool(mm, { units: rule }),
    fit: (mm) => printFit(mm, { units: rule }),
    fine: (mm) => printFine(mm, { units }),
    lengths: (...mm) => toldApart(mm, [(one) => printLength(one, { units: rule }), ...FINER[units]]),
    fines: (...mm) => toldApart(mm, [(one) => printFine(one, { units }), ...FINER[units]]),
    angle: printAngle,
    area: (mm2) => say(mm2, units, 2),
    volume: (mm3) => say(mm3, units, 3),
  };
}

/** Finer and finer, for figures that read alike: mm from hundredths on, inches from thousandths. */
const FINER: Readonly<Record<Units, readonly ((mm: number) => string)[]>> = {
  mm: [2, 3, 4, 5, 6].map((decimals) => (mm) => `${fixed(mm, decimals)} mm`),
  in: [3, 4, 5, 6, 7].map((decimals) => (mm) => `${fixed(mm / INCH, decimals)}"`),
};

function say(value: number, units: Units, power: 2 | 3): string {
  const mark = power === 2 ? '²' : '³';
  const inches = value / INCH ** power;
  if (units === 'in' && (value === 0 || Math.abs(inches) >= 0.01)) return `${fixed(inches, 3)} in${mark}`;
  if (Math.abs(value) < 10 ** power) return `${fixed(value, 2)} mm${mark}`;
  return `${fixed(value / 10 ** power, 1)} cm${mark}`;
}

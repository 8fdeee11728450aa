import { INCH, type Units } from './units.js';

/** The finest fractions of an inch a shop may ask for; the first is meant when it asks for none. */
export const FRACTIONS = ['1/32', '1/16', '1/64'] as const;

export type Fraction = (typeof FRACTIONS)[number];

/** How many lines an inch has: 32 when nothing is said; 1000 on a caliper. */
type Lines = '' | '/16' | '/64' | '/1000';

/**
 * What lengths are read off: a rule in mm, to 0.1; a rule in inches, to 1/32 or as fine as is said; a caliper or depth gauge in
 * thousandths of an inch.
 */
export type Rule = 'mm' | `in${Lines}`;

/** What a drawing's figures are read off: one rule, or mm with inches in brackets. */
export type DrawingUnits = Rule | `dual${Lines}`;

/** The units of a rule. */
export const unitsOf = (rule: Rule): Units => (rule === 'mm' ? 'mm' : 'in');

/** The rules a drawing's figures are read off, mm first. */
export const rulesOf = (units: DrawingUnits): readonly Rule[] => {
  const { system, lines } = partsOf(units);
  if (system === 'dual') return ['mm', `in${lines}`];
  return [system === 'in' ? `in${lines}` : 'mm'];
};

/** The system of a drawing, however fine. */
export const systemOf = (units: DrawingUnits): Units | 'dual' => partsOf(units).system;

/** The same units with another finest fraction; mm as they are. */
export function withFraction(units: Rule, fraction: Fraction | undefined): Rule;
export function withFraction(units: DrawingUnits, fraction: Fraction | undefined): DrawingUnits;
export function withFraction(units: DrawingUnits, fraction: Fraction | undefined): DrawingUnits {
  const { system } = partsOf(units);
  if (system === 'mm' || fraction === undefined) return units;
  return fraction === '1/16' ? `${system}/16` : fraction === '1/64' ? `${system}/64` : system;
}

/** As router work is set, by caliper and depth gauge: thousandths of an inch; mm as they are. */
export function forRouter(units: Rule): Rule;
export function forRouter(units: DrawingUnits): DrawingUnits;
export function forRouter(units: DrawingUnits): DrawingUnits {
  const { system } = partsOf(units);
  return system === 'mm' ? 'mm' : `${system}/1000`;
}

/** Lines in an inch of a rule. */
export const linesOf = (rule: Exclude<Rule, 'mm'>): number => Number(partsOf(rule).lines.slice(1) || 32);

/** The finest step a rule shows, mm. */
export const stepOf = (rule: Rule): number => (rule === 'mm' ? 0.1 : INCH / linesOf(rule));

/** So many steps of a rule, mm; tenths are divided rather than multiplied, so that 333 is 33.3. */
export const stepsInMm = (steps: number, rule: Rule): number =>
  rule === 'mm' ? steps / 10 : (steps * INCH) / linesOf(rule);

function partsOf(units: DrawingUnits): { readonly system: Units | 'dual'; readonly lines: Lines } {
  const [, lines = ''] = units.split('/');
  const told = (['/16', '/64', '/1000'] as const).find((one) => one === `/${lines}`) ?? '';
  return { system: units.startsWith('in') ? 'in' : units.startsWith('dual') ? 'dual' : 'mm', lines: told };
}

import { type DrawingUnits, printFit, printTool, rulesOf, stepOf } from '../../length/index.js';
import { printSteps } from './running-steps.js';

export type { DrawingUnits } from '../../length/index.js';

/** A length in whole steps of each rule of these units, as rows of text: `['57.5']`, `['57.5', '[2-1/4"]']`. */
export const dimensionRows = (steps: readonly number[], units: DrawingUnits): readonly string[] =>
  rulesOf(units).map((rule, i) =>
    i === 0 ? printSteps(steps[i]!, rule) : `[${printSteps(steps[i]!, rule)}]`,
  );

/** A length as rows of text, each to the nearest step of its rule. */
export const sizeRows = (mm: number, units: DrawingUnits): readonly string[] =>
  dimensionRows(
    rulesOf(units).map((rule) => Math.round(mm / stepOf(rule))),
    units,
  );

/** The size of a cutter or a drill, and of what it cuts, as rows of text. */
export const toolRows = (mm: number, units: DrawingUnits): readonly string[] => rowsBy(printTool, mm, units);

/** What is held to a fit, as rows of text. */
export const fitRows = (mm: number, units: DrawingUnits): readonly string[] => rowsBy(printFit, mm, units);

const rowsBy = (print: typeof printTool, mm: number, units: DrawingUnits): readonly string[] =>
  rulesOf(units).map((rule, i) => {
    if (rule === 'mm') return sizeRows(mm, rule)[0]!;
    const inches = print(mm, { units: rule });
    return i === 0 ? inches : `[${inches}]`;
  });

import { figureOf, formulaOf, type Quantity, quantityOf, type Scope } from '../formulas/index.js';
import { FollowsOn, type PieceTree, type Problems, problemWith } from '../text/index.js';
import { type Dimension, requireName } from './dimension.js';

/** A figure a piece works out, with the formula it comes from. */
export interface WorkedOut {
  readonly name: string;
  readonly formula: string;
  readonly figure: Quantity;
}

/** All that has a name in one run of a piece. */
export interface Known {
  /** Dimensions and what is worked out; by the names of the file. */
  readonly scope: Scope;
  /** The choices that were made: `wood` → `white oak`. */
  readonly words: ReadonlyMap<string, string>;
  readonly workedOut: readonly WorkedOut[];
}

/**
 * What every name of a piece stands for with the values of one run.
 *
 * @param values of the parameters, mm and degrees; those left out follow from the others
 * @param problems takes what cannot be worked out
 */
export function knownFrom(
  tree: PieceTree,
  dimensions: readonly Dimension[],
  values: Readonly<Record<string, unknown>>,
  problems: Problems,
): Known {
  const figures = new Map<string, Quantity>();
  const words = new Map<string, string>();
  const names = [...tree.dimensions, ...tree.workedOut].map(({ name }) => name.value);
  const broken = new Set(tree.dimensions.map(({ name }) => name.value));
  for (const { name } of dimensions) broken.delete(name.value);
  const scope = scopeOf(figures, words, broken, names);
  /** A line that is wrong leaves its name without a figure. */
  const line = (name: string, work: () => Quantity | undefined): void => {
    const before = problems.count;
    const figure = problems.during(work);
    if (figure) figures.set(name, figure);
    else if (problems.count > before) broken.add(name);
  };
  for (const { name, parameter, choices, from, figure } of dimensions)
    line(name.value, () => {
      const given = values[parameter];
      if (choices) words.set(name.value, String(given));
      return figure(given ?? (from && startOf(from, scope, tree.units)));
    });
  const workedOut: WorkedOut[] = [];
  for (const { name, formula } of tree.workedOut)
    line(name.value, () => {
      requireName(name);
      if (figures.has(name.value) || words.has(name.value))
        throw problemWith(name, `'${name.value}' is a dimension already`, 'choose another name');
      const figure = quantityOf(formulaOf(formula), scope, tree.units);
      workedOut.push({ name: name.value, formula: formula.value, figure });
      return figure;
    });
  return { scope, words, workedOut };
}

/** Where a dimension that was not given begins, as near as its range allows. */
export function startOf(
  { formula, least, most, wanted }: NonNullable<Dimension['from']>,
  scope: Scope,
  units: PieceTree['units'],
): number {
  const found = figureOf(formula, scope, wanted, units);
  return Math.min(most, Math.max(least, wanted === 'number' ? Math.round(found) : found));
}

/** Dimensions and worked out figures so far; a name whose own line is wrong is told there, and not again. */
function scopeOf(
  figures: ReadonlyMap<string, Quantity>,
  words: ReadonlyMap<string, string>,
  broken: ReadonlySet<string>,
  names: readonly string[],
): Scope {
  const find = (name: string): Quantity | undefined => {
    if (broken.has(name)) throw new FollowsOn({ line: 1, column: 1 }, 0, `'${name}' cannot be read`);
    return figures.get(name);
  };
  return Object.assign(find, {
    known: names,
    why: (name: string): string | undefined =>
      words.has(name)
        ? `'${name}' is a word, and a figure is wanted`
        : names.includes(name)
          ? `'${name}' is told further down`
          : undefined,
  });
}

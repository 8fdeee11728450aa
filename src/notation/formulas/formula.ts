import { toMm, type Units } from '../../length/index.js';
import { didYouMeanWord, type Problem, partOf, problemWith, type Told } from '../text/index.js';
import { type FormulaNode, formulaTree } from './formula-tree.js';
import { callOf } from './functions.js';
import {
  angleOf,
  isPlain,
  isSameKind,
  kindWords,
  lengthOf,
  numberOf,
  type Quantity,
  yesOf,
} from './quantity.js';

/** A formula as it is told, taken apart. */
export interface Formula {
  readonly told: Told<string>;
  readonly tree: FormulaNode;
}

/** What names stand for; undefined for a name nobody knows. */
export interface Scope {
  (name: string): Quantity | undefined;
  /** Names to choose from, for the message. */
  readonly known?: readonly string[];
  /** Why a name stands for nothing though it is known. */
  readonly why?: (name: string) => string | undefined;
}

/** What a place wants: mm, degrees, a plain number, or 1 for yes and 0 for no. */
export type Wanted = 'length' | 'angle' | 'number' | 'yes';

/**
 * A formula, read and not yet worked out.
 *
 * @param told at most 200 letters: `leg - apron thick / 2`, `9-1/16"`, `up(height / 20 mm)`
 * @throws Problem where it cannot be read
 */
export const formulaOf = (told: Told<string>): Formula => ({ told, tree: formulaTree(told) });

/** Names that stand in a formula, in its order. */
export function namesOf({ tree }: Formula): readonly string[] {
  const names = (node: FormulaNode): readonly string[] => {
    if (node.is === 'name') return [node.name];
    if (node.is === 'two') return [...names(node.a), ...names(node.b)];
    if (node.is === 'call') return node.of.flatMap(names);
    return node.is === 'figure' ? [] : names(node.of);
  };
  return [...new Set(names(tree))];
}

/**
 * What a formula comes to.
 *
 * @param units what a bare number is in where a length is wanted
 * @returns mm, degrees, a plain number, or 1 for yes and 0 for no
 * @throws Problem for an unknown name, a kind that does not fit, or what has no value
 * @example figureOf(formulaOf(told('depth - 40')), () => lengthOf(300), 'length', 'mm') // 260
 */
export function figureOf(formula: Formula, scope: Scope, wanted: Wanted, units: Units): number {
  const found = quantityOf(formula, scope, units);
  const fitting = fitted(found, WANTED[wanted], units);
  if (fitting !== undefined) return fitting.value;
  throw problemWith(
    formula.told,
    `${WORDS[wanted]} is wanted, '${formula.told.value}' is ${kindWords(found)}`,
    isPlain(found) && wanted !== 'yes' ? 'multiply by a figure, or give a figure its unit' : undefined,
  );
}

const A_LENGTH = lengthOf(0);
const AN_ANGLE = angleOf(0);

const WANTED: Readonly<Record<Wanted, Quantity>> = {
  length: A_LENGTH,
  angle: AN_ANGLE,
  number: numberOf(0),
  yes: yesOf(false),
};

const WORDS: Readonly<Record<Wanted, string>> = {
  length: 'a length',
  angle: 'an angle',
  number: 'a plain number',
  yes: 'yes or no',
};

/**
 * Both sides of a comparison, of one kind, and whether it holds.
 *
 * @throws Problem when it is none
 */
export function sidesOf(
  formula: Formula,
  scope: Scope,
  units: Units,
): { readonly holds: boolean; readonly a: Quantity; readonly b: Quantity } {
  const { tree } = formula;
  if (tree.is !== 'two' || !Object.hasOwn(COMPARE, tree.sign))
    throw problemWith(formula.told, `'${formula.told.value}' compares nothing`);
  const holds = quantityOf(formula, scope, units).value !== 0;
  const [a, b] = [tree.a, tree.b].map((part) => quantityOf({ told: formula.told, tree: part }, scope, units));
  return { holds, a: fitted(a!, b!, units) ?? a!, b: fitted(b!, a!, units) ?? b! };
}

/** A figure as one of the kind of another; a bare number becomes a length in the file's units, or degrees. */
function fitted(of: Quantity, like: Quantity, units: Units): Quantity | undefined {
  if (isSameKind(of, like)) return of;
  if (!of.bare) return undefined;
  if (isSameKind(like, A_LENGTH)) return { ...A_LENGTH, value: toMm(of.value, units) };
  return isSameKind(like, AN_ANGLE) ? { ...AN_ANGLE, value: of.value } : undefined;
}

/** What a formula comes to, of whatever kind it is. @throws Problem */
export function quantityOf({ told, tree }: Formula, scope: Scope, units: Units): Quantity {
  const wrong = ({ from, to }: FormulaNode, text: string, remedy?: string): Problem =>
    problemWith(partOf(told, from, to), text, remedy);
  const words = ({ from, to }: FormulaNode): string => `'${told.value.slice(from, to)}'`;

  function worked(node: FormulaNode): Quantity {
    const found = step(node);
    if (!Number.isFinite(found.value))
      throw node.is === 'name'
        ? wrong(node, `${words(node)} has no value`, 'give it one')
        : wrong(node, `${words(node)} is too large to work with`);
    return found;
  }

  function step(node: FormulaNode): Quantity {
    switch (node.is) {
      case 'figure':
        return node.figure;
      case 'name':
        return named(node);
      case 'minus': {
        const of = figure(node.of);
        return { ...of, value: -of.value };
      }
      case 'not':
        return yesOf(!truth(node.of));
      case 'call':
        return callOf(node.name, node.of, {
          worked: figure,
          fitted: (of, like) => fitted(of, like, units),
          words,
          wrong: (text, remedy, at = node) => wrong(at, text, remedy),
        });
      default:
        return two(node);
    }
  }

  function named(node: FormulaNode & { is: 'name' }): Quantity {
    const found = scope(node.name);
    if (found !== undefined) return found;
    const known = scope.known ?? [];
    const why = scope.why?.(node.name);
    throw why === undefined
      ? wrong(
          node,
          `nothing is called '${node.name}'`,
          node.name === 'n'
            ? 'n counts copies: write repeat or around too'
            : known.length === 0
              ? undefined
              : didYouMeanWord(node.name, known),
        )
      : wrong(node, why);
  }

  const figure = (node: FormulaNode): Quantity => {
    const found = worked(node);
    if (found.yes) throw wrong(node, `${words(node)} is yes or no, a figure is wanted`);
    return found;
  };

  function truth(node: FormulaNode): boolean {
    const found = worked(node);
    if (found.yes) return found.value !== 0;
    throw wrong(node, `yes or no is wanted, ${words(node)} is ${kindWords(found)}`);
  }

  function two(node: FormulaNode & { is: 'two' }): Quantity {
    const { sign } = node;
    if (sign === 'and' || sign === 'or') {
      // both are looked at, so that a slip in the second is told however the first comes out
      const [a, b] = [truth(node.a), truth(node.b)];
      return yesOf(sign === 'and' ? a && b : a || b);
    }
    const [a, b] = [figure(node.a), figure(node.b)];
    if (sign === '*' || sign === '/') return product(node, a, b);
    const [left, right] = [fitted(a, b, units) ?? a, fitted(b, a, units) ?? b];
    if (!isSameKind(left, right))
      throw wrong(
        node,
        sign === '+' || sign === '-'
          ? `'${sign === '-' ? '−' : '+'}' joins ${kindWords(left)}, ${words(node.a)}, and ${kindWords(right)}, ${words(node.b)}`
          : `${kindWords(left)}, ${words(node.a)}, cannot be compared with ${kindWords(right)}, ${words(node.b)}`,
      );
    if (sign === '+' || sign === '-')
      return {
        ...left,
        value: sign === '+' ? left.value + right.value : left.value - right.value,
        bare: isPlain(left) && Boolean(left.bare || right.bare),
      };
    return yesOf(COMPARE[sign]!(left.value, right.value));
  }

  function product(node: FormulaNode & { is: 'two' }, a: Quantity, b: Quantity): Quantity {
    const divides = node.sign === '/';
    if (divides && b.value === 0)
      throw wrong(node.b, `${words(node.b)} is 0 here, and nothing can be divided by 0`);
    const way = divides ? -1 : 1;
    const of = {
      value: divides ? a.value / b.value : a.value * b.value,
      lengths: a.lengths + way * b.lengths,
      angles: a.angles + way * b.angles,
    };
    return { ...of, bare: isPlain(of) && Boolean(a.bare || b.bare) };
  }

  return worked(tree);
}

/** Figures that differ by less than this part of them are one: sums of decimals must not decide what is refused. */
const SAME = 1e-9;

const apart = (a: number, b: number): boolean =>
  Math.abs(a - b) > SAME * Math.max(1, Math.abs(a), Math.abs(b));

const COMPARE: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b && apart(a, b),
  '>': (a, b) => a > b && apart(a, b),
  '<=': (a, b) => a <= b || !apart(a, b),
  '>=': (a, b) => a >= b || !apart(a, b),
  '=': (a, b) => !apart(a, b),
};

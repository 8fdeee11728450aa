import { type Problem, partOf, problemWith, type Told } from '../text/index.js';
import { type FormulaWord, formulaWords } from './formula-words.js';
import type { Quantity } from './quantity.js';

/** Where a part of a formula stands in it, letters from 0. */
interface Part {
  readonly from: number;
  readonly to: number;
}

/** A formula taken apart. Signs are `+ - * /`, `< <= > >= =`, `and or`. */
export type FormulaNode =
  | (Part & { readonly is: 'figure'; readonly figure: Quantity })
  | (Part & { readonly is: 'name'; readonly name: string })
  | (Part & { readonly is: 'minus' | 'not'; readonly of: FormulaNode })
  | (Part & { readonly is: 'two'; readonly sign: string; readonly a: FormulaNode; readonly b: FormulaNode })
  | (Part & { readonly is: 'call'; readonly name: string; readonly of: readonly FormulaNode[] });

/** The most brackets within brackets. */
const DEEPEST = 20;

/** The most letters of a formula. */
export const LONGEST_FORMULA = 200;

/** Signs with what binds them most last; each level holds parts of the next. */
const LEVELS: readonly (readonly string[])[] = [
  ['or'],
  ['and'],
  ['<', '<=', '>', '>=', '='],
  ['+', '-'],
  ['*', '/'],
];

/** What is done one after the other; `a < b < c` is not. */
const COMPARING = 2;

/**
 * Takes a formula apart.
 *
 * @throws Problem where it cannot be read, with the place in the line
 */
export function formulaTree(told: Told<string>): FormulaNode {
  if (told.value.length > LONGEST_FORMULA)
    throw problemWith(
      told,
      `a formula of ${told.value.length} letters is too long; it may have ${LONGEST_FORMULA}`,
      "name its parts under 'worked out'",
    );
  const words = formulaWords(told);
  let at = 0;
  let deep = 0;
  const next = (): FormulaWord => words[at]!;
  const take = (): FormulaWord => words[at++]!;
  const wrong = ({ from, to }: Part, text: string, remedy?: string): Problem =>
    problemWith(partOf(told, from, to), text, remedy);

  function level(which: number): FormulaNode {
    const inner = (): FormulaNode =>
      which === COMPARING - 1 ? negated() : which === LEVELS.length - 1 ? signed() : level(which + 1);
    let a = inner();
    for (let many = 0; next().is === 'sign' && LEVELS[which]!.includes(next().text); many++) {
      const sign = take();
      if (which === COMPARING && many > 0)
        throw wrong(sign, 'two comparisons stand in one', "join them by 'and'");
      const b = inner();
      a = { is: 'two', sign: sign.text, a, b, from: a.from, to: b.to };
    }
    return a;
  }

  function negated(): FormulaNode {
    return next().text === 'not' ? before('not', negated) : level(COMPARING);
  }

  function signed(): FormulaNode {
    if (next().text === '-') return before('minus', signed);
    if (next().text === '+') take();
    return single();
  }

  function before(is: 'minus' | 'not', inner: () => FormulaNode): FormulaNode {
    const { from } = take();
    const of = deeper(from, inner);
    return { is, of, from, to: of.to };
  }

  function deeper<T>(from: number, work: () => T): T {
    deep += 1;
    if (deep > DEEPEST)
      throw wrong(
        { from, to: from + 1 },
        `there are more than ${DEEPEST} brackets or signs within each other here`,
        "name a part of it under 'worked out'",
      );
    const found = work();
    deep -= 1;
    return found;
  }

  function single(): FormulaNode {
    const word = take();
    if (word.is === 'figure') return { is: 'figure', figure: word.figure!, from: word.from, to: word.to };
    if (word.is === 'name' && next().text === '(') return call(word);
    if (word.is === 'name') return { is: 'name', name: word.text, from: word.from, to: word.to };
    if (word.text === '(') {
      const { of, to } = bracketed(word);
      if (of.length > 1)
        throw wrong(
          { from: word.from, to },
          'only a function takes several figures',
          'use a point for decimals',
        );
      return { ...of[0]!, from: word.from, to };
    }
    throw word.is === 'end'
      ? wrong(
          word,
          told.value.trim() === ''
            ? 'a formula is missing'
            : 'the formula ends here, and a figure or a name is missing',
        )
      : wrong(word, `a figure or a name is missing before '${word.text}'`);
  }

  function call(name: FormulaWord): FormulaNode {
    const { of, to } = bracketed(take());
    return { is: 'call', name: name.text, of, from: name.from, to };
  }

  function bracketed(open: FormulaWord): { readonly of: readonly FormulaNode[]; readonly to: number } {
    return deeper(open.from, () => {
      const of = [level(0)];
      while (next().text === ',') {
        take();
        of.push(level(0));
      }
      if (next().text !== ')') {
        if (next().is === 'end') throw wrong(open, 'this bracket is never closed', "write ')' where it ends");
        throw afterwards(next());
      }
      return { of, to: take().to };
    });
  }

  const afterwards = (word: FormulaWord): Problem =>
    word.text === ')'
      ? wrong(word, 'no bracket is open here', "leave ')' out")
      : word.text === ','
        ? wrong(
            word,
            "',' stands between the figures of a function",
            'use a point for decimals, no mark for thousands',
          )
        : word.is === 'sign' && word.text !== '('
          ? wrong(word, `'${word.text}' cannot stand here`)
          : wrong(word, `a sign is missing before '${word.text}'`, 'write + − × or ÷ between two figures');

  const whole = level(0);
  if (next().is !== 'end') throw afterwards(next());
  return whole;
}

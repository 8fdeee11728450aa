import { didYouMeanWord, type Problem } from '../text/index.js';
import type { FormulaNode } from './formula-tree.js';
import { angleOf, isPlain, kindWords, numberOf, type Quantity } from './quantity.js';

/** What a function needs of the formula it stands in. */
export interface Calling {
  worked(node: FormulaNode): Quantity;
  fitted(of: Quantity, like: Quantity): Quantity | undefined;
  words(node: FormulaNode): string;
  wrong(text: string, remedy?: string, at?: FormulaNode): Problem;
}

const RADIANS = Math.PI / 180;

/** Of an angle, degrees. */
const OF_ANGLE: Readonly<Record<string, (degrees: number) => number>> = {
  sin: (degrees) => Math.sin(degrees * RADIANS),
  cos: (degrees) => Math.cos(degrees * RADIANS),
  tan: (degrees) => Math.tan(degrees * RADIANS),
};

/** To an angle, degrees. */
const TO_ANGLE: Readonly<Record<string, (value: number) => number>> = {
  asin: (value) => Math.asin(value) / RADIANS,
  acos: (value) => Math.acos(value) / RADIANS,
  atan: (value) => Math.atan(value) / RADIANS,
};

/** To a whole number; what sums of decimals leave over does not count. */
const WHOLE: Readonly<Record<string, (value: number) => number>> = {
  up: (value) => Math.ceil(value - WHOLE_WITHIN * Math.max(1, Math.abs(value))),
  down: (value) => Math.floor(value + WHOLE_WITHIN * Math.max(1, Math.abs(value))),
};

/** A number this near a whole one is that one, as a part of it. */
const WHOLE_WITHIN = 1e-9;

const SEVERAL: Readonly<Record<string, (...values: number[]) => number>> = { min: Math.min, max: Math.max };

/** Names a formula may call. */
export const FUNCTIONS: readonly string[] = [
  ...Object.keys(SEVERAL),
  'sqrt',
  'abs',
  ...Object.keys(OF_ANGLE),
  ...Object.keys(TO_ANGLE),
  ...Object.keys(WHOLE),
];

/** What a function comes to. @throws Problem for an unknown one, figures of the wrong number or kind, or what has no value */
export function callOf(name: string, nodes: readonly FormulaNode[], calling: Calling): Quantity {
  if (!FUNCTIONS.includes(name))
    throw calling.wrong(`there is no function '${name}'`, didYouMeanWord(name, FUNCTIONS));
  const severally = Object.hasOwn(SEVERAL, name);
  if (!severally && nodes.length !== 1)
    throw calling.wrong(`'${name}' takes one figure, not ${nodes.length}`);
  const figures = nodes.map(calling.worked);
  if (severally) return leastOrMost(name, nodes, figures, calling);
  const [figure, node] = [figures[0]!, nodes[0]!];
  const { value } = figure;
  if (name === 'abs') return { ...figure, value: Math.abs(value) };
  if (name === 'sqrt') {
    if (value < 0) throw calling.wrong(`${calling.words(node)} is less than 0 here, and has no root`);
    return { ...figure, value: Math.sqrt(value), lengths: figure.lengths / 2, angles: figure.angles / 2 };
  }
  if (Object.hasOwn(OF_ANGLE, name)) {
    const angle = calling.fitted(figure, angleOf(0));
    if (angle === undefined)
      throw calling.wrong(
        `'${name}' is of an angle, ${calling.words(node)} is ${kindWords(figure)}`,
        undefined,
        node,
      );
    return numberOf(OF_ANGLE[name]!(angle.value));
  }
  if (!isPlain(figure))
    throw calling.wrong(
      `'${name}' is of a plain number, ${calling.words(node)} is ${kindWords(figure)}`,
      figure.lengths === 1 ? 'divide by a length, a number with its unit' : undefined,
      node,
    );
  if (Object.hasOwn(WHOLE, name)) return numberOf(WHOLE[name]!(value));
  if (name !== 'atan' && Math.abs(value) > 1)
    throw calling.wrong(
      `'${name}' is of a number from -1 to 1, ${calling.words(node)} is not here`,
      undefined,
      node,
    );
  return angleOf(TO_ANGLE[name]!(value));
}

/** All of one kind; bare numbers take the kind of the others. */
function leastOrMost(
  name: string,
  nodes: readonly FormulaNode[],
  figures: readonly Quantity[],
  calling: Calling,
): Quantity {
  const like = figures.find((one) => !one.bare) ?? figures[0]!;
  const fitting = figures.map((one, at) => {
    const fits = calling.fitted(one, like);
    if (fits !== undefined) return fits;
    throw calling.wrong(
      `'${name}' is of figures of one kind, ${calling.words(nodes[at]!)} is ${kindWords(one)} and the others are not`,
      undefined,
      nodes[at],
    );
  });
  return {
    ...like,
    value: SEVERAL[name]!(...fitting.map(({ value }) => value)),
    bare: isPlain(like) && figures.some(({ bare }) => bare === true),
  };
}

import fc from 'fast-check';
import { all, create, type MathJsInstance, type Unit } from 'mathjs';
import { expect, test } from 'vitest';
import {
  angleOf,
  formulaOf,
  lengthOf,
  numberOf,
  Problem,
  type Quantity,
  quantityOf,
} from '../../src/notation/index.js';
import { many, seed } from '../properties/seed.js';

// a general maths library, with units of its own, as the second opinion
const math: MathJsInstance = create(all!);

const NAMES: ReadonlyMap<string, Quantity> = new Map([
  ['leg', lengthOf(42)],
  ['foot', lengthOf(25.4)],
  ['rake', angleOf(8)],
  ['splay', angleOf(12.5)],
  ['shelves', numberOf(3)],
  ['ratio', numberOf(0.625)],
]);

const SAME_NAMES = new Map<string, number | Unit>(
  [...NAMES].map(([name, { value, lengths, angles }]) => [
    name,
    lengths === 1 ? math.unit(value, 'mm') : angles === 1 ? math.unit(value, 'deg') : value,
  ]),
);

/** One formula as each side writes it. */
interface Both {
  readonly ours: string;
  readonly theirs: string;
}

const alike = (text: string): Both => ({ ours: text, theirs: text });

const SIGNS: readonly Both[] = [
  alike('+'),
  alike('-'),
  { ours: '−', theirs: '-' },
  { ours: '×', theirs: '*' },
  alike('*'),
  { ours: '÷', theirs: '/' },
  alike('/'),
];

const ROUNDED: Readonly<Record<string, string>> = { up: 'ceil', down: 'floor' };

/** Random formulas as flat text, so that each side finds by itself what binds most. */
const formulas = (leaf: fc.Arbitrary<Both>, functions: readonly string[]): fc.Arbitrary<Both> =>
  fc
    .letrec<{ whole: Both; part: Both }>((tie) => ({
      whole: fc
        .tuple(
          tie('part'),
          fc.array(fc.tuple(fc.constantFrom(...SIGNS), tie('part')), {
            maxLength: 3,
            depthIdentifier: 'formula',
          }),
        )
        .map(([first, more]) => ({
          ours: [first.ours, ...more.map(([sign, part]) => `${sign.ours} ${part.ours}`)].join(' '),
          theirs: [first.theirs, ...more.map(([sign, part]) => `${sign.theirs} ${part.theirs}`)].join(' '),
        })),
      part: fc.oneof(
        { depthSize: 'small', withCrossShrink: true, depthIdentifier: 'formula' },
        { weight: 5, arbitrary: leaf },
        {
          weight: 2,
          arbitrary: tie('whole').map(({ ours, theirs }) => ({ ours: `(${ours})`, theirs: `(${theirs})` })),
        },
        {
          weight: 1,
          arbitrary: tie('part').map(({ ours, theirs }) => ({ ours: `- ${ours}`, theirs: `- ${theirs}` })),
        },
        {
          weight: 3,
          arbitrary: fc.tuple(fc.constantFrom(...functions), tie('whole')).map(([name, of]) => ({
            ours: `${name}(${of.ours})`,
            theirs: `${ROUNDED[name] ?? name}(${of.theirs})`,
          })),
        },
        {
          weight: 1,
          arbitrary: fc
            .tuple(fc.constantFrom('min', 'max'), tie('part'), tie('part'))
            .map(([name, a, b]) => ({
              ours: `${name}(${a.ours}, ${b.ours})`,
              theirs: `${name}(${a.theirs}, ${b.theirs})`,
            })),
        },
      ),
    }))
    .whole.filter(({ ours }) => ours.length <= 200);

const ours = (text: string): Quantity | undefined => {
  try {
    return quantityOf(
      formulaOf({ value: text, at: { line: 1, column: 1 } }),
      (name) => NAMES.get(name),
      'mm',
    );
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
};

/**
 * What the library makes of a formula: undefined where it refuses, or a part of it has no finite real value. A difference that
 * comes to nothing but for rounding decides by chance what a quotient or a root of it is: such a formula is not tried.
 */
function theirs(text: string): ReturnType<typeof known> {
  try {
    const tree = math.parse(text);
    let sound = true;
    let chance = false;
    tree.traverse((node) => {
      if (node.type !== 'OperatorNode' && node.type !== 'FunctionNode') return;
      const found = known(node.evaluate(SAME_NAMES as never));
      sound &&= found !== undefined;
      chance ||= found !== undefined && Math.abs(found.value) < 1e-9;
    });
    fc.pre(!chance || !/\/|sqrt/.test(text));
    return sound ? known(tree.evaluate(SAME_NAMES as never)) : undefined;
  } catch (error) {
    if (error instanceof fc.PreconditionFailure) throw error;
    return undefined;
  }
}

/** Of a unit the library keeps powers of nine bases: the second is length, the eighth angle. */
function known(
  found: unknown,
): { readonly value: number; readonly lengths: number; readonly angles: number } | undefined {
  if (typeof found === 'number')
    return Number.isFinite(found) ? { value: found, lengths: 0, angles: 0 } : undefined;
  if (!math.isUnit(found)) return undefined;
  const { dimensions, value } = found as unknown as { dimensions: readonly number[]; value: number };
  const [lengths, angles] = [dimensions[1]!, dimensions[7]!];
  const inOurs = value * 1000 ** lengths * (180 / Math.PI) ** angles;
  return typeof value === 'number' && Number.isFinite(inOurs)
    ? { value: inOurs, lengths, angles }
    : undefined;
}

const RUNS = many(1_000, 5_000);

test('formulas of plain numbers come to what a general maths library makes of them', () => {
  const leaf = fc.oneof(
    fc.integer({ min: 0, max: 40 }).map((value) => alike(String(value))),
    fc.integer({ min: 1, max: 4000 }).map((value) => alike(String(value / 100))),
    fc.constantFrom('shelves', 'ratio').map(alike),
  );
  let worked = 0;
  fc.assert(
    fc.property(formulas(leaf, ['sqrt', 'abs', 'up', 'down']), (formula) => {
      const [mine, other] = [ours(formula.ours), theirs(formula.theirs)];
      expect(mine === undefined).toBe(other === undefined);
      if (mine === undefined || other === undefined) return;
      expect(mine).toMatchObject({ lengths: 0, angles: 0 });
      const exact = Math.abs(mine.value - other.value) <= 1e-9 * Math.max(1, Math.abs(other.value));
      // what sums of decimals leave over is told apart by us alone
      fc.pre(exact || !/up|down/.test(formula.ours));
      expect(mine.value).toBeCloseTo(
        other.value,
        6 - Math.ceil(Math.log10(Math.max(1, Math.abs(other.value)))),
      );
      worked += 1;
    }),
    seed(RUNS),
  );
  expect(worked).toBeGreaterThan(RUNS / 2);
});

test('formulas of lengths, angles and numbers have the kind and the value of a library with units, or neither takes them', () => {
  const leaf = fc.constantFrom(...NAMES.keys()).map(alike);
  const tally = { worked: 0, refused: 0 };
  fc.assert(
    fc.property(formulas(leaf, ['sqrt', 'abs', 'sin', 'cos']), (formula) => {
      const [mine, other] = [ours(formula.ours), theirs(formula.theirs)];
      // the library takes sin(0.5), in radians: here an angle, or a figure without a unit, is wanted
      fc.pre(mine !== undefined || other === undefined || !/sin|cos/.test(formula.ours));
      expect(mine === undefined).toBe(other === undefined);
      tally[mine === undefined ? 'refused' : 'worked'] += 1;
      if (mine === undefined || other === undefined) return;
      expect([mine.lengths, mine.angles]).toEqual(
        [other.lengths, other.angles].map((power) => expect.closeTo(power, 9)),
      );
      expect(Math.abs(mine.value - other.value)).toBeLessThanOrEqual(
        1e-9 * Math.max(1, Math.abs(other.value)),
      );
    }),
    seed(RUNS),
  );
  expect(Math.min(tally.worked, tally.refused)).toBeGreaterThan(RUNS / 5);
});

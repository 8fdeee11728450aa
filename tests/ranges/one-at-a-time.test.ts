import { expect, test } from 'vitest';
import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { TenonwrightError } from '../../src/errors.js';
import { type Model, parameterMeta, readParameters } from '../../src/model/index.js';
import { builtInShop, toolsOf } from '../../src/shop/index.js';
import { findings } from '../checks/sample-design.js';
import { many, SEED } from '../properties/seed.js';

/** Values of a range at seeded places, one in each equal part of it, so that few of them still cover it. */
function spread(min: number, max: number, parts: number, whole: boolean): readonly number[] {
  let state = SEED;
  const values = Array.from({ length: parts }, (_, i) => {
    // a multiplicative congruential generator (Lewis, Goodman and Miller 1969: 7^5 and 2^31 − 1)
    state = (state * 16807) % 2147483647;
    const value = min + ((max - min) * (i + state / 2147483647)) / parts;
    return whole ? Math.round(value) : Math.round(value * 10) / 10;
  });
  return [...new Set(values)];
}

const MODELS = { stool, jig, frame } as unknown as Readonly<Record<string, Model>>;

const built = (of: string, given: Readonly<Record<string, number | string>>) => {
  try {
    const model = MODELS[of]!;
    return model.build(readParameters(model, given, 'mm'), toolsOf(builtInShop('mm')));
  } catch (error) {
    if (error instanceof TenonwrightError) return error;
    throw error;
  }
};

const RANGES = Object.entries(MODELS).flatMap(([of, model]) =>
  Object.entries(model.parameters.shape).flatMap(([name, schema]) => {
    const { kind, min, max } = parameterMeta(name, schema);
    return min === undefined || max === undefined ? [] : [{ of, name, whole: kind === 'count', min, max }];
  }),
);

test.each(RANGES)(
  'four fifths of the range of $name of a $of go together with the other sizes left alone',
  ({ of, name, whole, min, max }) => {
    const values = spread(min, max, many(10, 20), whole);
    const refused = values.flatMap((value) => {
      const design = built(of, { [name]: value });
      return design instanceof TenonwrightError ? [`${value}: ${design.message}`] : [];
    });
    expect(refused.length / values.length, refused.join('\n')).toBeLessThanOrEqual(0.2);
  },
);

/** Those whose ranges were traps once, checked on the solids. */
test.each([
  ['stool', 'archRadius', [5, 60, 110, 150]],
  ['stool', 'stretcherHeight', [30, 150, 300, 500]],
  ['stool', 'footLength', [20, 90, 140, 200]],
  ['stool', 'archHeight', [0, 60, 130, 200]],
  ['jig', 'counterboreDepth', [6, 30, 70, 100]],
  ['jig', 'holeCircle', [40, 120, 200, 280]],
  ['frame', 'thickness', [15, 30, 45, 60]],
  ['frame', 'cutter', [4, 10, 15, 20]],
] as const)(
  'what is left alone follows: a sound %s with %s anywhere in its range',
  async (of, name, values) => {
    const [least, one, other, most] = values;
    for (const value of [least, most, one, other].slice(0, many(2, 4))) {
      const design = built(of, { [name]: value });
      if (design instanceof TenonwrightError) throw design;
      const errors = (await findings(design)).filter(({ level }) => level === 'error');
      expect(errors, `${name} ${value}`).toEqual([]);
    }
  },
);

test('a size that was given is never touched, and sizes that agree already stay what is usual', () => {
  for (const { of, name, min, max, whole } of RANGES) {
    const model = MODELS[of]!;
    const value = spread(min, max, 3, whole)[1]!;
    expect(model.complete(readParameters(model, { [name]: value }, 'mm'))).toMatchObject({ [name]: value });
  }
  const usual = stool.complete(readParameters(stool, {}, 'mm'));
  expect(usual).toMatchObject({
    height: 230,
    treadDepth: 240,
    archHeight: 45,
    archRadius: 25,
    footLength: 55,
    stretcherHeight: 85,
    stretcherWidth: 70,
  });
});

// Who works in inches starts from inches: sizes that stand on a line of the rule, and no check against them.

import { expect, test } from 'vitest';
import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { INCH } from '../../src/length/index.js';
import { describeParameters, type Model, parameterMeta, readParameters } from '../../src/model/index.js';
import { builtInShop, jigOfShop, toolsOf } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';

const shop = builtInShop('in');
const tools = toolsOf(shop);

const CASES: readonly (readonly [called: string, model: Model, raw: Readonly<Record<string, string>>])[] = [
  ['stool', stool as unknown as Model, {}],
  ['stool of two treads', stool as unknown as Model, { treads: '2' }],
  ['jig', jig as unknown as Model, {}],
  ['frame', frame as unknown as Model, {}],
];

/** A maker's inch rule: wood to 1/16, a fit in thousandths. */
const roundInInches = (mm: number): boolean => {
  const inches = mm / INCH;
  const on = (step: number) => Math.abs(inches / step - Math.round(inches / step)) < 1e-6;
  return inches < 0.05 ? on(0.001) || on(1 / 64) : on(1 / 16);
};

const lengths = (model: Model, raw: Readonly<Record<string, string>>): [string, number][] => {
  const values = model.complete(readParameters(model, raw, 'in'), tools) as Readonly<Record<string, unknown>>;
  return Object.entries(model.parameters.shape).flatMap(([name, schema]): [string, number][] => {
    const value = values[name];
    return parameterMeta(name, schema).kind === 'length' && typeof value === 'number' ? [[name, value]] : [];
  });
};

test.each(CASES)('every size the %s starts from stands on a line of an inch rule', (_, model, raw) => {
  const found = lengths(model, raw);
  expect(found.length).toBeGreaterThan(2);
  expect(found.filter(([, mm]) => !roundInInches(mm)).map(([name, mm]) => `${name} ${mm / INCH}`)).toEqual(
    [],
  );
});

test('a stool in inches is 9 in high and of 1 in stock, and the list of parameters says so', () => {
  const sizes = Object.fromEntries(lengths(stool as unknown as Model, {}));
  expect(sizes).toMatchObject({
    height: 9 * INCH,
    treadLength: 16 * INCH,
    treadThickness: INCH,
    sideThickness: INCH,
  });
  const rows = describeParameters(stool, 'in');
  const row = (option: string) => rows.find((one) => one.option === option)!.default;
  expect(row('tread-length')).toBe('16"');
  expect(row('height')).toContain('9" for one tread');
  expect(describeParameters(stool, 'mm').find(({ option }) => option === 'tread-length')!.default).toBe(
    '420 mm',
  );
});

test('sizes the jig works out from others are whole sixteenths too', () => {
  const { boards, derived } = jig.build(readParameters(jig, {}, 'in'), tools);
  for (const { board } of boards)
    for (const size of [board.blank.length, board.blank.width, board.blank.thickness])
      expect(roundInInches(size), `${board.id} ${size / INCH}`).toBe(true);
  for (const { name, value } of derived.filter((one) =>
    /^(slot length|slot position|plate|rail)/.test(one.name),
  ))
    expect(roundInInches(value), `${name} ${value / INCH}`).toBe(true);
});

test.each(CASES)('the %s in inches passes every check: no error and no warning', async (_, model, raw) => {
  const question = { model, units: 'in' as const, shop, jig: jigOfShop(shop, jig as unknown as Model, 'in') };
  const { findings, refused } = await verdictOf(question, readParameters(model, raw, 'in'));
  expect(refused).toBeUndefined();
  expect(
    findings.filter(({ level }) => level !== 'note').map(({ code, message }) => `${code}: ${message}`),
  ).toEqual([]);
});

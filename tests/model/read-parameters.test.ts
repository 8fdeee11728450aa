import fc from 'fast-check';
import { describe, expect, expectTypeOf, test } from 'vitest';
import * as z from 'zod';
import { InputError } from '../../src/errors.js';
import {
  choice,
  describeParameters,
  optionName,
  parameterValues,
  readParameters,
} from '../../src/model/index.js';
import { speciesNames } from '../../src/tables/index.js';
import { smallModel } from './small-model.js';

const refusal = (raw: Record<string, unknown>, units: 'mm' | 'in' = 'mm'): InputError => {
  try {
    readParameters(smallModel, raw, units);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('the values were accepted');
};

describe('values are read by the kind of their parameter', () => {
  test('without values every parameter has its default, and a derived one is absent', () => {
    const values = readParameters(smallModel, {}, 'mm');
    expect(values).toEqual({
      seatLength: 230,
      cheekAir: 0.05,
      splay: 10,
      tenons: 2,
      edge: 'round',
      rows: 1,
      wedged: false,
      species: 'beech',
    });
    expectTypeOf(values.edge).toEqualTypeOf<'round' | 'square'>();
    expectTypeOf(values.rows).toEqualTypeOf<1 | 2>();
    expectTypeOf(values.railHeight).toEqualTypeOf<number | undefined>();
    expect(smallModel.build(values).notes[0]).toBe('rail 57.5');
  });

  test('a bare length is in the units of the run, an angle in degrees, a written unit wins', () => {
    const values = readParameters(
      smallModel,
      { 'seat-length': '9 1/16', splay: 5, railHeight: '50mm' },
      'in',
    );
    expect(values.seatLength).toBe(230.1875);
    expect(values.splay).toBe(5);
    expect(values.railHeight).toBe(50);
    expect(readParameters(smallModel, { seatLength: 9 }, 'in').seatLength).toBeCloseTo(228.6, 9);
    expect(readParameters(smallModel, { cheekAir: 1e-7 }, 'mm').cheekAir).toBeCloseTo(1e-7, 12);
  });

  test('camelCase and kebab-case name the same parameter, but only once in a run', () => {
    expect(readParameters(smallModel, { seatLength: 300 }, 'mm')).toEqual(
      readParameters(smallModel, { 'seat-length': '300' }, 'mm'),
    );
    expect(refusal({ seatLength: 300, 'seat-length': 310 }).code).toBe('parameter-twice');
  });

  test.each([
    [{ wedged: 'yes' }, 'wedged', true],
    [{ wedged: 'off' }, 'wedged', false],
    [{ wedged: true }, 'wedged', true],
    [{ rows: '2' }, 'rows', 2],
    [{ edge: 'square' }, 'edge', 'square'],
    [{ tenons: '3' }, 'tenons', 3],
    [{ species: 12 }, 'species', '12'],
    [{ splay: '-3.5°' }, 'splay', -3.5],
  ] as const)('%o', (raw, name, expected) => {
    expect(readParameters(smallModel, raw, 'mm')[name]).toBe(expected);
  });
});

describe('values that cannot be used are refused', () => {
  test('out of range says name, received, allowed and remedy in the units of the person', () => {
    expect(refusal({ seatLength: 50 }).message).toBe(
      'seat-length is 50 mm; it must be 150 mm to 600 mm: give more, or did you mean 50 cm?',
    );
    expect(refusal({ seatLength: '30"' }, 'in').message).toBe(
      'seat-length is 30"; it must be 5.9055" to 23.622": give less',
    );
    expect(refusal({ splay: -6 }).message).toBe('splay is -6°; it must be -5° to 20°: give more');
  });

  test.each([
    { tenons: '1.5' },
    { tenons: '2mm' },
    { tenons: 9 },
    { edge: 'oval' },
    { rows: 3 },
    { wedged: 'perhaps' },
    { seatLength: true },
    { seatLength: null },
    { seatLength: [200] },
    { seatLength: { mm: 200 } },
    { seatLength: Number.NaN },
    { seatLength: Number.POSITIVE_INFINITY },
    { seatLength: '' },
    { seatLength: '3mm in' },
    { splay: '10mm' },
  ])('%o', (raw) => {
    expect(refusal(raw).code).toBe('parameter-refused');
    expect(refusal(raw).message).toContain(optionName(Object.keys(raw)[0]!));
  });

  test.each([
    [9, 'mm', ['9 in']],
    ['23', 'mm', ['23 cm', '23 in']],
    [230, 'in', ['230 mm']],
    // a unit that is written is no slip
    ['9 mm', 'mm', []],
    [1, 'mm', []],
  ] as const)('%j in %s is told in which unit it would do, and does in it', (given, units, hints) => {
    const { message } = refusal({ seatLength: given }, units);
    const told = /did you mean (.+)\?$/.exec(message)?.[1]?.split(' or ') ?? [];
    expect(told).toEqual(hints);
    for (const hint of told) readParameters(smallModel, { seatLength: hint }, units);
  });

  test('a kind of wood without its species names every species of the kind', () => {
    const woods = {
      name: 'x',
      parameters: z.object({ wood: choice(speciesNames, { default: 'white ash', help: 'wood' }) }),
    };
    expect(() => readParameters(woods, { wood: 'Oak' }, 'mm')).toThrow(
      /did you mean northern red oak or white oak\?$/,
    );
  });

  test('an unknown name is refused with the nearest known one', () => {
    expect(refusal({ seatLegnth: 200 }).message).toMatch(
      /no parameter 'seatLegnth': did you mean seat-length\?/,
    );
    expect(refusal({ toString: 1 }).code).toBe('parameter-unknown');
    expect(refusal({ quxquuxcorge: 1 }).message).toMatch(/known are cheek-air, edge/);
  });

  test('all problems are reported together, a line each', () => {
    const error = refusal({ seatLength: 50, tenons: 'two', seatLegnth: 1, edge: 'round' });
    expect(error.code).toBe('parameters-refused');
    expect(error.message.split('\n')).toHaveLength(3);
  });
});

test('every limit can be given as it is told, in either unit', () => {
  for (const units of ['mm', 'in'] as const)
    for (const row of describeParameters(smallModel, units)) {
      if (!row.range.includes(' to ')) continue;
      for (const limit of row.range.split(' to '))
        expect(() => readParameters(smallModel, { [row.option]: limit }, units)).not.toThrow();
    }
});

test('for all lengths in range the value read is the value given', () => {
  fc.assert(
    fc.property(fc.double({ min: 150.01, max: 599.99, noNaN: true }), (mm) => {
      expect(readParameters(smallModel, { seatLength: mm }, 'mm').seatLength).toBe(mm);
    }),
  );
});

test('a description says option, default or how it is worked out, range and help', () => {
  const rows = describeParameters(smallModel, 'mm');
  expect(rows[0]).toEqual({
    option: 'seat-length',
    label: 'seat length',
    kind: 'length',
    default: '230 mm',
    range: '150 mm to 600 mm',
    choices: [],
    help: 'length of the seat',
  });
  expect(rows.at(-1)!.default).toBe('a quarter of the seat length');
  expect(rows.map((row) => row.kind)).toEqual(
    'length length angle count choice choice flag text length'.split(' '),
  );
});

test('values are listed with their units, those not given left out', () => {
  const values = parameterValues(smallModel, readParameters(smallModel, { splay: 4 }, 'mm'));
  expect(values.seatLength).toEqual({ value: 230, unit: 'mm' });
  expect(values.splay).toEqual({ value: 4, unit: 'deg' });
  expect(values.wedged).toEqual({ value: false, unit: '' });
  expect(values).not.toHaveProperty('railHeight');
});

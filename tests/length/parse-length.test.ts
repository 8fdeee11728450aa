import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { parseLength } from '../../src/length/index.js';

const mm = (text: string) => parseLength(text, { units: 'mm' });

const codeOf = (read: () => unknown): string => {
  try {
    read();
  } catch (error) {
    if (error instanceof InputError) return error.code;
    throw error;
  }
  return 'accepted';
};

describe('a length is read as people write it', () => {
  // Expected values by hand: 1 in = 25.4 mm exactly (international inch, 1959).
  test.each([
    ['230', 230],
    ['230mm', 230],
    ['230 MM', 230],
    ['23 cm', 230],
    ['0.23 m', 230],
    ['9in', 228.6],
    ['9"', 228.6],
    ['9 inches', 228.6],
    ['9 1/16 in', 230.1875],
    ['9-1/16"', 230.1875],
    ['+9-1/16"', 230.1875],
    ['9 1 / 16 in', 230.1875],
    ['3/8', 0.375],
    ['3/8"', 9.525],
    ['0.375in', 9.525],
    ['.375 in', 9.525],
    ['1\' 2-1/2"', 368.3],
    ['1\'-2-1/2"', 368.3],
    ['1 ft 2 1/2 in', 368.3],
    ["1' 2", 355.6],
    ["1'", 304.8],
    ['2 feet', 609.6],
    ['9½″', 241.3],
    ['9 ½”', 241.3],
    ['9-½"', 241.3],
    ['½"', 12.7],
    ['⅛"', 3.175],
    ['⅞ in', 22.225],
    ['1′ 2½″', 368.3],
    ["14 1/2''", 368.3],
    ['9 1⁄16 in', 230.1875],
    ['−5', -5],
    ['-9-1/16"', -230.1875],
    ['-½"', -12.7],
    ['  230  ', 230],
    ['9\u00a01/16\u2009in', 230.1875],
  ])('%s is %f mm', (text, expected) => {
    expect(mm(text)).toBeCloseTo(expected, 9);
  });

  test('a bare number takes the units of the run, and a written unit wins over them', () => {
    expect(parseLength('9', { units: 'in' })).toBeCloseTo(228.6, 9);
    expect(parseLength('9 1/16', { units: 'in' })).toBe(230.1875);
    expect(parseLength('230mm', { units: 'in' })).toBe(230);
  });

  test('a length of nothing is plain zero, without a sign', () => {
    expect(mm('-0')).toBe(0);
    expect(Object.is(mm('-0'), 0)).toBe(true);
  });

  test('all spellings of sixteenths of an inch agree', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 15 }), (whole, over) => {
        const inches = whole + over / 16;
        const feet = Math.floor(whole / 12);
        const spellings = [
          `${whole} ${over}/16 in`,
          `${whole}-${over}/16"`,
          `${whole} ${over}⁄16″`,
          `${feet}' ${whole - 12 * feet}-${over}/16"`,
          `${feet} ft ${whole - 12 * feet} ${over}/16 inches`,
          `${inches}in`,
          `${((inches * 254) / 10).toFixed(4)} mm`,
          `${((inches * 254) / 100).toFixed(5)}cm`,
        ];
        for (const spelling of spellings) expect(mm(spelling)).toBeCloseTo(inches * 25.4, 9);
        expect(parseLength(`${whole} ${over}/16`, { units: 'in' })).toBeCloseTo(inches * 25.4, 9);
      }),
    );
  });
});

describe('a length that cannot be used is refused', () => {
  test.each([
    ['', 'length-empty'],
    ['   ', 'length-empty'],
    ['NaN', 'length-not-a-number'],
    ['Infinity', 'length-not-a-number'],
    ['∞', 'length-not-a-number'],
    ['mm', 'length-not-a-number'],
    ['-', 'length-not-a-number'],
    ['--5', 'length-not-a-number'],
    ['wide', 'length-not-a-number'],
    ['1/0', 'length-divided-by-zero'],
    ['0/0', 'length-divided-by-zero'],
    ['9 1/0 in', 'length-divided-by-zero'],
    ['9'.repeat(400), 'length-too-large'],
    [`${'9'.repeat(308)} ft`, 'length-too-large'],
    ['3mm in', 'length-two-units'],
    ['3mm 4cm', 'length-two-units'],
    ['3" mm', 'length-two-units'],
    ["1' 20mm", 'length-two-units'],
    ["1' 2' ", 'length-two-units'],
    ['3 4 mm', 'length-text-after'],
    ['3 mm 4', 'length-text-after'],
    ['230 wide', 'length-text-after'],
    ['230mmm', 'length-text-after'],
    ['1e3', 'length-text-after'],
    ['0x10', 'length-text-after'],
    ['1,5', 'length-text-after'],
    ['1.2.3', 'length-text-after'],
    ['1/2/3', 'length-text-after'],
    ['9 1/16 1/2', 'length-text-after'],
    ['9" (+0.12 mm', 'length-two-units'],
  ])("'%s' with %s", (text, code) => {
    expect(codeOf(() => mm(text))).toBe(code);
  });

  test('a negative or a missing size is refused where a size is meant', () => {
    expect(codeOf(() => parseLength('-5', { units: 'mm', sign: 'positive' }))).toBe('length-negative');
    expect(codeOf(() => parseLength('-1/16', { units: 'in', sign: 'non-negative' }))).toBe('length-negative');
    expect(codeOf(() => parseLength('0 mm', { units: 'mm', sign: 'positive' }))).toBe('length-zero');
    expect(parseLength('0', { units: 'mm', sign: 'non-negative' })).toBe(0);
    expect(parseLength('-5', { units: 'mm', sign: 'any' })).toBe(-5);
  });

  test('the message repeats what was written and says what to write', () => {
    expect(() => mm('3mm in')).toThrow(/'3mm in'.*write one, like 23 cm/);
    expect(() => mm('1,5')).toThrow(/point/);
  });

  test('whatever is typed gives a finite length or an input error, never a fault', () => {
    const typed = fc.array(fc.constantFrom(...'0123456789./-+ "\'½⅛′″()mcintf'.split('')), { maxLength: 14 });
    fc.assert(
      fc.property(
        fc.oneof(
          typed.map((all) => all.join('')),
          fc.string(),
        ),
        (text) => {
          let read: number | undefined;
          expect(codeOf(() => (read = mm(text)))).toMatch(/^(accepted|length-[a-z-]+)$/);
          if (read !== undefined) expect(Number.isFinite(read)).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

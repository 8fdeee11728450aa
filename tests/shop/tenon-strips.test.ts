import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { speaker } from '../../src/length/index.js';
import { type TenonKind, tenonSchedule, tenonStrips } from '../../src/shop/index.js';
import { aShop, without } from './a-shop.js';
import { stoolWith } from './designs.js';

const [sample] = tenonSchedule(stoolWith(), aShop, speaker('mm'));
const kind = (given: Partial<TenonKind>): TenonKind => ({ ...sample!, ...given });

test('eight tenons of 50 with a 3 mm saw, worked by hand: 2 spares, 1 test piece, 9 on a strip of 555 and 2 on one of 300', () => {
  const [plan] = tenonStrips([kind({ count: 8, length: 50 })], aShop);
  const uses = plan!.strips.flatMap(({ pieces }) => pieces.map(({ use }) => use));
  expect(uses.filter((use) => use === 'tenon')).toHaveLength(8);
  expect(uses.filter((use) => use === 'spare')).toHaveLength(2);
  expect(uses.filter((use) => use === 'test piece')).toHaveLength(1);
  // 9 · 53 + 75 = 552, to the next 5 mm; 2 · 53 + 75 = 181, but no strip is shorter than 300
  expect(plan!.strips.map(({ pieces, length }) => [pieces.length, length])).toEqual([
    [9, 555],
    [2, 300],
  ]);
});

test('two kinds of one section share strips, two widths do not', () => {
  const short = kind({ mark: 'T1', length: 40 });
  const long = kind({ mark: 'T2', length: 60 });
  expect(tenonStrips([short, long], aShop).map(({ marks }) => marks)).toEqual([['T1', 'T2']]);
  expect(tenonStrips([short, kind({ mark: 'T2', width: 50 })], aShop)).toHaveLength(2);
});

describe('for all schedules', () => {
  const anyKinds = fc.array(
    fc.record({ count: fc.integer({ min: 1, max: 40 }), length: fc.integer({ min: 25, max: 130 }) }),
    { minLength: 1, maxLength: 3 },
  );
  const plansOf = (rows: readonly { count: number; length: number }[]) =>
    tenonStrips(
      rows.map((row, i) => kind({ ...row, mark: `T${i + 1}` })),
      aShop,
    );

  test('pieces, kerfs and what is left make up each strip, and a grip is left', () => {
    fc.assert(
      fc.property(anyKinds, (rows) => {
        for (const { strips } of plansOf(rows))
          for (const { length, pieces, kerfs, left } of strips) {
            const cut = pieces.reduce((sum, piece) => sum + piece.length, 0);
            expect(cut + 3 * pieces.length + left).toBeCloseTo(length, 9);
            expect(kerfs).toBeCloseTo(3 * pieces.length, 9);
            expect(left).toBeGreaterThanOrEqual(75);
            expect(length).toBeGreaterThanOrEqual(300);
          }
      }),
    );
  });

  test('every tenon is cut, with 10 to 20 % spares or one, and one test piece a section', () => {
    fc.assert(
      fc.property(anyKinds, (rows) => {
        const pieces = plansOf(rows).flatMap(({ strips }) => strips.flatMap((strip) => strip.pieces));
        expect(pieces.filter(({ use }) => use === 'test piece')).toHaveLength(1);
        rows.forEach(({ count }, i) => {
          const of = (use: string) =>
            pieces.filter((piece) => piece.mark === `T${i + 1}` && piece.use === use).length;
          expect(of('tenon')).toBe(count);
          expect(of('spare')).toBeGreaterThanOrEqual(Math.max(1, 0.1 * count));
          expect(of('spare')).toBeLessThan(0.2 * count + 1);
        });
      }),
    );
  });
});

test('a strip is as long as the planer asks; without its figure nothing is passed', () => {
  const planer = { ...aShop, shortest: { planer: 420, saw: 250 } };
  const [plan] = tenonStrips([kind({ count: 1 })], planer);
  expect(plan!.strips[0]!.length).toBe(420);
  expect(plan!.safe.map(({ verdict }) => verdict)).toEqual(['passed', 'passed']);
  const [unknown] = tenonStrips([kind({ count: 1 })], { ...without('sawKerf'), shortest: {} });
  expect(unknown!.safe.map(({ verdict }) => verdict)).toEqual(['not verified', 'not verified']);
  expect(unknown!.kerfVerdict).toBe('not verified');
});

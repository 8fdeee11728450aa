import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type CuttingPlan,
  guillotine,
  type LaidStock,
  type PartToCut,
  type Rect,
  type Sawing,
  type Stock,
} from '../../src/shop/index.js';
import { replayCuts } from './replay-cuts.js';

const size = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);

const anyParts = fc
  .array(
    fc.record({
      length: size(20, 900),
      width: size(10, 500),
      grain: fc.constantFrom('along' as const, 'free' as const),
    }),
    { minLength: 1, maxLength: 18 },
  )
  .map((parts) => parts.map((part, i): PartToCut => ({ id: `P${i + 1}`, ...part })));

const anyStock = fc.array(
  fc.record({
    name: fc.constant('sheet'),
    length: size(600, 2440),
    width: size(100, 1220),
    count: fc.integer({ min: 1, max: 3 }),
  }),
  { minLength: 1, maxLength: 3 },
);

const anySawing: fc.Arbitrary<Sawing> = fc.record({
  kerf: size(0.5, 4),
  trim: fc.record({ ends: size(0, 30), edges: size(0, 12) }),
  first: fc.constantFrom('rip' as const, 'crosscut' as const),
});

const anyJob = fc.tuple(anyParts, anyStock, anySawing);

/** Free space between two rectangles that share a run along the other axis; undefined for those that do not face each other. */
function gapBetween(a: Rect, b: Rect): number {
  const along = Math.max(b.x - (a.x + a.length), a.x - (b.x + b.length));
  const across = Math.max(b.y - (a.y + a.width), a.y - (b.y + b.width));
  return Math.max(along, across);
}

const pairs = (items: readonly Rect[]) =>
  items.flatMap((a, i) => items.slice(i + 1).map((b) => [a, b] as const));

const forEveryPiece = (check: (piece: LaidStock, sawing: Sawing, plan: CuttingPlan) => void) =>
  fc.assert(
    fc.property(anyJob, ([parts, stock, sawing]) => {
      const plan = guillotine(parts, stock, sawing);
      for (const piece of plan.pieces) check(piece, sawing, plan);
    }),
    { numRuns: 150, seed: 20 },
  );

describe('for all parts, stock and saws', () => {
  test('two parts are never nearer to each other than the kerf', () => {
    forEveryPiece(({ parts }, { kerf }) => {
      for (const [a, b] of pairs(parts)) expect(gapBetween(a, b)).toBeGreaterThan(kerf - 1e-6);
    });
  });

  test('every part lies inside the trimmed stock', () => {
    forEveryPiece(({ parts, stock }, { trim }) => {
      for (const { x, y, length, width } of parts) {
        expect(Math.min(x, stock.length - x - length)).toBeGreaterThan(trim.ends - 1e-6);
        expect(Math.min(y, stock.width - y - width)).toBeGreaterThan(trim.edges - 1e-6);
      }
    });
  });

  test('following the cuts from edge to edge gives exactly the parts and the offcuts', () => {
    forEveryPiece((piece, { kerf }) => {
      const sawn = replayCuts(piece, kerf);
      for (const { id, ...rect } of [...piece.parts, ...piece.offcuts]) {
        const found = sawn.get(id)!;
        expect(found.length).toBeCloseTo(rect.length, 6);
        expect(found.width).toBeCloseTo(rect.width, 6);
        expect(found.x).toBeCloseTo(rect.x, 6);
        expect(found.y).toBeCloseTo(rect.y, 6);
      }
    });
  });

  test('every part is placed once in its own size, or reported; one with grain is not turned', () => {
    fc.assert(
      fc.property(anyJob, ([parts, stock, sawing]) => {
        const plan = guillotine(parts, stock, sawing);
        const laid = plan.pieces.flatMap((piece) => piece.parts);
        const told = [...laid.map(({ id }) => id), ...plan.unplaced.map(({ part }) => part.id)];
        expect(told.toSorted()).toEqual(parts.map(({ id }) => id).toSorted());
        for (const { id, length, width, turned } of laid) {
          const part = parts.find((one) => one.id === id)!;
          expect([length, width]).toEqual(turned ? [part.width, part.length] : [part.length, part.width]);
          expect(turned && part.grain === 'along').toBe(false);
        }
      }),
      { numRuns: 150, seed: 21 },
    );
  });

  test('no more of one stock is used than there is', () => {
    fc.assert(
      fc.property(anyJob, ([parts, stock, sawing]) => {
        const { pieces } = guillotine(parts, stock, sawing);
        for (const one of stock)
          expect(pieces.filter((piece) => piece.stock === one).length).toBeLessThanOrEqual(one.count);
      }),
      { numRuns: 80, seed: 22 },
    );
  });

  test('the same parts give the same plan', () => {
    fc.assert(
      fc.property(anyJob, ([parts, stock, sawing]) => {
        expect(guillotine(parts, stock, sawing)).toEqual(guillotine(parts, stock, sawing));
      }),
      { numRuns: 20, seed: 23 },
    );
  });
});

const saw: Sawing = { kerf: 3, trim: { ends: 0, edges: 0 }, first: 'rip' };
const sheet: Stock = { name: 'sheet', length: 1000, width: 606, count: 1 };
const strips = (count: number, width: number): PartToCut[] =>
  Array.from({ length: count }, (_, i) => ({ id: `P${i + 1}`, length: 1000, width, grain: 'along' }));

test('three strips of 200 and two kerfs of 3 fill a sheet 606 wide; a forgotten kerf would let 202 pass', () => {
  expect(guillotine(strips(3, 200), [sheet], saw).unplaced).toEqual([]);
  expect(guillotine(strips(3, 200.1), [sheet], saw).unplaced.map(({ part }) => part.id)).toHaveLength(1);
  expect(guillotine(strips(3, 202), [sheet], { ...saw, kerf: 0 }).unplaced).toEqual([]);
});

test('a part that fits only across the grain is reported with the sheet it needs, trim included', () => {
  const part: PartToCut = { id: 'P', length: 500, width: 800, grain: 'along' };
  const trimmed = { ...saw, trim: { ends: 10, edges: 8 } };
  expect(guillotine([part], [sheet], trimmed).unplaced).toEqual([
    { part, because: 'too small', needed: { length: 520, width: 816 } },
  ]);
  const turned = guillotine([{ ...part, grain: 'free' }], [sheet], trimmed).pieces[0]!.parts[0]!;
  expect(turned).toMatchObject({ turned: true, length: 800, width: 500 });
});

test('a part for which no stock is left is told from one that is too large', () => {
  const { unplaced } = guillotine(strips(4, 200), [sheet], saw);
  expect(unplaced.map(({ because }) => because)).toEqual(['used up']);
});

test('sheets are ripped before they are crosscut, lumber is cut to length before it is ripped', () => {
  const parts: PartToCut[] = ['A', 'B', 'C', 'D'].map((id) => ({
    id,
    length: 450,
    width: 200,
    grain: 'along',
  }));
  const first = (way: 'rip' | 'crosscut') =>
    guillotine(parts, [sheet], { ...saw, first: way }).pieces[0]!.cuts.map(({ direction }) => direction);
  expect(first('rip').indexOf('crosscut')).toBe(first('rip').filter((one) => one === 'rip').length);
  expect(first('crosscut')[0]).toBe('crosscut');
});

test('the replay of the cuts finds a cut made too early, one that is missing, and a fence set wrong by half a millimetre', () => {
  const parts: PartToCut[] = ['A', 'B', 'C'].map((id) => ({ id, length: 450, width: 200, grain: 'along' }));
  const piece = guillotine(parts, [sheet], saw).pieces[0]!;
  const { cuts } = piece;
  expect(() => replayCuts(piece, 3)).not.toThrow();
  const renumbered = (order: typeof cuts) => order.map((cut, i) => ({ ...cut, number: i + 1 }));
  expect(() => replayCuts({ ...piece, cuts: renumbered(cuts.toReversed()) }, 3)).toThrow('not on the bench');
  expect(() => replayCuts({ ...piece, cuts: cuts.slice(0, -1) }, 3)).toThrow('wait for a cut');
  const off = cuts.map((cut, i) => (i === 0 ? { ...cut, at: cut.at + 0.5 } : cut));
  expect(() => replayCuts({ ...piece, cuts: off }, 3)).toThrow('not on the bench');
});

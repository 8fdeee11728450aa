import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutPictures } from '../../src/drawing/figure/cut-strip.js';
import { speaker } from '../../src/length/index.js';
import { cutList, guillotine, type LaidStock, stockPlan } from '../../src/shop/index.js';
import { aShop } from '../shop/a-shop.js';
import { plainJig, stoolWith } from '../shop/designs.js';
import { readPicture } from './strip-reader.js';

interface Sawn {
  readonly length: number;
  readonly width: number;
}

/**
 * What the saw leaves of stock when it is fed as the pictures say, and by nothing else: the first cut takes the stock, every other
 * what an earlier one left for it.
 */
function sawnBy({ stock, cuts }: LaidStock, kerf: number, settingOf = Number): Map<string, Sawn> {
  const told = cutPictures(cuts, true, 'mm').flatMap(readPicture);
  const waiting = new Map<number, Sawn>([[1, { length: stock.length, width: stock.width }]]);
  const done = new Map<string, Sawn>();
  for (const { number, direction, setting, near, far } of told) {
    const piece = waiting.get(number);
    if (!piece) throw new Error(`no picture leaves a piece for cut ${number}`);
    waiting.delete(number);
    const side = direction === 'rip' ? 'width' : 'length';
    const at = settingOf(setting);
    for (const [left, size] of [
      [near, at],
      [far, piece[side] - at - kerf],
    ] as const) {
      if (left === undefined) continue;
      const rest = { ...piece, [side]: size };
      if ('next' in left) waiting.set(left.next, rest);
      else if (left.done) done.set(left.mark, rest);
    }
  }
  if (waiting.size > 0) throw new Error(`cuts ${[...waiting.keys()].join(', ')} are in no picture`);
  return done;
}

/** A setting is written to 0.1 mm; what is left beyond a row of cuts carries the sum of what was rounded off. */
const READ = 0.06;

describe('the order of cuts in small pictures', () => {
  test('of the stool and the jig leads at the saw to every piece, in its size', () => {
    let pieces = 0;
    for (const design of [stoolWith(), plainJig()]) {
      const volumes = new Map(design.boards.map(({ board }) => [board.id, 1]));
      const rows = cutList({ design, shop: aShop, volumes });
      const { layouts } = stockPlan(rows, aShop, speaker('mm'));
      for (const { plan, kerf, parts } of layouts) {
        for (const laid of plan.pieces) {
          if (laid.cuts.length === 0) continue;
          const sawn = sawnBy(laid, kerf);
          expect([...sawn.keys()].toSorted()).toEqual(laid.parts.map(({ id }) => id).toSorted());
          for (const [mark, { length, width }] of sawn) {
            const wanted = parts.find((one) => one.mark === mark)!;
            const off = READ * laid.cuts.length;
            expect(
              [Math.abs(length - wanted.length), Math.abs(width - wanted.width)].every((d) => d < off),
            ).toBe(true);
            pieces += 1;
          }
        }
      }
      // no two pieces of wood share a name
      const names = layouts.flatMap(({ plan }) =>
        plan.pieces.flatMap(({ parts, offcuts }) => [...parts, ...offcuts].map(({ id }) => id)),
      );
      expect(new Set(names).size).toBe(names.length);
    }
    expect(pieces).toBeGreaterThan(2);
  });

  test('leads to every piece of any job on any stock', () => {
    const size = (least: number, most: number) =>
      fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);
    const anyJob = fc.record({
      parts: fc.array(fc.record({ length: size(20, 900), width: size(10, 500) }), {
        minLength: 1,
        maxLength: 12,
      }),
      kerf: size(1, 4),
      ends: size(0, 30),
      edges: size(0, 12),
      first: fc.constantFrom('rip' as const, 'crosscut' as const),
    });
    fc.assert(
      fc.property(anyJob, ({ parts, kerf, ends, edges, first }) => {
        const asked = parts.map((one, i) => ({ id: `P${i + 1}`, grain: 'along' as const, ...one }));
        const stock = [{ name: 'sheet', length: 2440, width: 1220 }];
        const { pieces } = guillotine(asked, stock, { kerf, trim: { ends, edges }, first });
        for (const laid of pieces) {
          const sawn = sawnBy(laid, kerf);
          expect(sawn.size).toBe(laid.parts.length);
          for (const [mark, { length, width }] of sawn) {
            const wanted = asked.find(({ id }) => id === mark)!;
            expect(Math.abs(length - wanted.length)).toBeLessThan(READ * laid.cuts.length);
            expect(Math.abs(width - wanted.width)).toBeLessThan(READ * laid.cuts.length);
          }
        }
      }),
      { numRuns: 40, seed: 12 },
    );
  });
});

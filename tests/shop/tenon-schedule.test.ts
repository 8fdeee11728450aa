import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { speaker } from '../../src/length/index.js';
import { area, obround, perimeter } from '../../src/profile/index.js';
import { groovesOf, reliefOf, slotWidthOf, tenonEdges, tenonSchedule } from '../../src/shop/index.js';
import { chamfer } from '../../src/shop/tenons/tenon-edges.js';
import { aShop } from './a-shop.js';
import { stoolWith } from './designs.js';

const say = speaker('mm');
const stool = stoolWith();
const boards = new Map(stool.boards.map(({ board }) => [board.id, board]));

describe('the schedule of the default stool', () => {
  const kinds = tenonSchedule(stool, aShop, say);

  test('counts every tenon of every joint once', () => {
    const all = stool.joints.flatMap(({ tenons }) => tenons);
    expect(kinds.reduce((sum, { count }) => sum + count, 0)).toBe(all.length);
    for (const kind of kinds) expect(kind.joints.reduce((sum, { count }) => sum + count, 0)).toBe(kind.count);
  });

  test('a tenon is as long as its two mortises are deep, less a gap at each end', () => {
    for (const { joints, length } of kinds) {
      const joint = stool.joints.find(({ id }) => id === joints[0]!.joint)!;
      const depths = [joint.a, joint.b].map(
        (id) => boards.get(id)!.mortises.find((one) => one.joint === joint.id)!.depth,
      );
      expect(length).toBeCloseTo(depths[0]! + depths[1]! - 2 * joint.fit.end, 9);
    }
  });

  test('the thickness is the narrower measured slot less a clearance on each cheek', () => {
    for (const { thickness, slot, drawnThickness } of kinds) {
      expect(thickness).toBeCloseTo(8.02 - 2 * 0.1, 9);
      expect(slot).toMatchObject({ governs: 'end grain', verdict: 'passed' });
      expect(drawnThickness).toBeCloseTo(8 - 2 * 0.1, 9);
    }
  });

  test('slack goes into the mortise across the grain of the rail: the stretcher and the sides keep theirs', () => {
    const slack = kinds.flatMap((kind) => kind.slack);
    expect(slack.map(({ joint, exactIn, longerIn }) => [joint, exactIn, longerIn])).toEqual([
      ['tread/left-side', 'left-side', 'tread'],
      ['tread/right-side', 'right-side', 'tread'],
      ['stretcher/left-side', 'stretcher', 'left-side'],
      ['stretcher/right-side', 'stretcher', 'right-side'],
    ]);
    // half of 1/32 in at either end never opens past the wood kept there
    for (const { endWoodLeft, endWood } of slack) {
      expect(endWood - endWoodLeft).toBeCloseTo(0.4, 9);
      expect(endWoodLeft).toBeGreaterThan(6);
    }
  });
});

describe('the slot a tenon has to fit', () => {
  const cutter = (slots: object) => ({ ...aShop, cutters: [{ nominal: 8, ...slots }] });
  const both = ['face grain', 'end grain'] as const;

  test('that was never measured is the nominal one, not verified', () => {
    expect(slotWidthOf(cutter({}), 8, both, say)).toMatchObject({
      width: 8,
      governs: 'nominal diameter',
      verdict: 'not verified',
    });
    expect(slotWidthOf(aShop, 12.7, both, say).verdict).toBe('not verified');
  });

  test('measured in one kind of grain only is not verified for a joint that needs both', () => {
    expect(slotWidthOf(cutter({ slotInFace: 8.1 }), 8, both, say).verdict).toBe('not verified');
    expect(slotWidthOf(cutter({ slotInFace: 8.1 }), 8, ['face grain'], say).verdict).toBe('passed');
  });

  test.each([
    [8.1, undefined],
    [8.11, /0\.11 mm apart/],
  ])('of %s mm beside one of 8 mm warns only beyond 0.1 mm', (slotInFace, warning) => {
    const found = slotWidthOf(cutter({ slotInFace, slotInEnd: 8 }), 8, both, say).warning;
    if (warning === undefined) expect(found).toBeUndefined();
    else expect(found).toMatch(warning);
  });
});

const anyTenon = fc
  .record({
    mortiseWidth: fc.double({ min: 5, max: 14, noNaN: true }),
    cheek: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
    edge: fc.double({ min: 0.04, max: 6, noNaN: true }),
    run: fc.double({ min: 8, max: 90, noNaN: true }),
    length: fc.double({ min: 20, max: 100, noNaN: true }),
  })
  .map(({ mortiseWidth, cheek, edge, run, length }) => ({
    mortiseWidth,
    mortiseLength: mortiseWidth + run,
    thickness: mortiseWidth - 2 * cheek,
    width: mortiseWidth + run - edge,
    length,
  }));

describe('edge styles', () => {
  test('a round edge glues over the whole outline of the tenon', () => {
    fc.assert(
      fc.property(anyTenon, (given) => {
        const { cheekAreaMm2, edgeAreaMm2 } = tenonEdges(given)[0]!;
        const outline = obround({ length: given.width, width: given.thickness });
        expect(cheekAreaMm2 + edgeAreaMm2).toBeCloseTo(perimeter(outline) * given.length, 5);
      }),
    );
  });

  test('a chamfered tenon goes into the round end, and a leg half a millimetre shorter comes nearer than half the clearance', () => {
    fc.assert(
      fc.property(anyTenon, (given) => {
        const { thickness: t, width: w, mortiseWidth, mortiseLength } = given;
        // how far a corner is from the mortise's wall: distance to the line its cutter's centre runs on
        const room = (c: number) => {
          const past = (x: number) => Math.max(0, x - (mortiseLength - mortiseWidth) / 2);
          const corners = [
            [w / 2 - c, t / 2],
            [w / 2, Math.max(t / 2 - c, 0)],
          ] as const;
          return Math.min(...corners.map(([x, y]) => mortiseWidth / 2 - Math.hypot(past(x), y)));
        };
        const c = chamfer(given);
        const half = Math.min((mortiseWidth - t) / 4, (mortiseLength - w) / 2);
        expect(room(c)).toBeGreaterThan(half - 1e-9);
        if (c > 0.5) expect(room(c - 0.5)).toBeLessThan(half);
      }),
    );
  });

  test('a square tenon 7.8 × 90 × 43.2 glues on 2 · 43.2 · (90 + 7.8) mm²', () => {
    const square = tenonEdges({
      thickness: 7.8,
      width: 90,
      length: 43.2,
      mortiseWidth: 8,
      mortiseLength: 91,
    })[2]!;
    expect(square.cheekAreaMm2 + square.edgeAreaMm2).toBeCloseTo(8449.92, 6);
  });
});

describe('air and glue', () => {
  const mortise = { width: 10, length: 40, depth: 25 };

  test('a tenon 9.8 × 39.8 that goes 24 in pushes out 8.87 ml of air, not the 9.46 ml its mortise holds', () => {
    const { displacedMm3 } = reliefOf({ board: 'a', thickness: 9.8, width: 39.8, into: 24, mortise });
    // a plate 30 long between two half rounds of 9.8: (π·9.8²/4 + 9.8·30)·24
    expect(displacedMm3).toBeCloseTo((24.01 * Math.PI + 294) * 24, 6);
    expect(displacedMm3 / 1000).toBeCloseTo(8.87, 2);
  });

  test('one clearance all round leaves P·c − π·c² (Steiner): 9.110 mm² for 10 × 40 and 0.1 mm', () => {
    const gap = reliefOf({ board: 'a', thickness: 9.8, width: 39.8, into: 24, mortise }).gapAreaMm2;
    expect(gap).toBeCloseTo((60 + 10 * Math.PI) * 0.1 - Math.PI * 0.01, 9);
    expect(gap).toBeCloseTo(9.110177, 5);
  });

  test('a rounded edge that fills the slot end is a closed pump; one narrower by a hundredth is not', () => {
    const closed = (width: number) =>
      reliefOf({ board: 'a', thickness: 9.8, width, into: 24, mortise }).closed;
    expect(closed(39.8)).toBe(true);
    expect(closed(39.79)).toBe(false);
  });

  test('the room for glue and the tenon together fill the mortise', () => {
    const { roomBesideMm3, roomBelowMm3, displacedMm3 } = reliefOf({
      board: 'a',
      thickness: 9.7,
      width: 39,
      into: 23.5,
      mortise,
    });
    const held = area(obround({ length: 40, width: 10 })) * 25;
    expect(roomBesideMm3 + roomBelowMm3 + displacedMm3).toBeCloseTo(held, 6);
  });

  test('grooves leave most of the cheek to the glue, and most of the tenon to the load', () => {
    for (const [width, thickness] of [
      [12, 5],
      [49, 8],
      [50, 8],
      [120, 12],
    ] as const) {
      const { perCheek, width: each, depth, areaMm2 } = groovesOf(width, thickness);
      // a tenon has two cheeks
      expect(areaMm2).toBeCloseTo(perCheek * each * depth + perCheek * each * depth, 9);
      expect(perCheek * each).toBeLessThanOrEqual(width / 4);
      expect(2 * depth).toBeLessThanOrEqual(thickness / 3 + 1e-9);
    }
  });
});

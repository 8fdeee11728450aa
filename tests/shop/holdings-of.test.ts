import fc from 'fast-check';
import { expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stool from '../../models/stool.js';
import { assemble } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { frame } from '../../src/frame/index.js';
import { readParameters } from '../../src/model/index.js';
import { type Holding, holdingsOf, unheld } from '../../src/shop/index.js';
import { alone, BARE_SHOP, jigWith, mortiseOn } from './at-hand.js';

type Raw = Readonly<Record<string, number | string>>;
const RAD = Math.PI / 180;
const stoolOf = (raw: Raw = {}) => stool.build(readParameters(stool, raw, 'mm'));
const heldIn = (raw: Raw = {}, jig: Raw = {}) => holdingsOf(stoolOf(raw), jigWith(jig), BARE_SHOP).holdings;
const summary = (held: readonly Holding[]) =>
  new Set(
    held.map(({ way, stage, near, far }) => {
      const wedged = [near, far].filter((bearing) => bearing?.wedge).length;
      return `${way}${wedged > 0 ? `, ${wedged} wedges` : ''}, ${stage}`;
    }),
  );
const on = (held: readonly Holding[], board: string, face?: string) =>
  held.filter((one) => one.board === board && (face === undefined || one.mortise.face === face));

test('both ends of a stretcher stand between both rails as soon as they are cut: its wide faces run with the cutter', () => {
  // 24 mm is within the grip of 20 to 62; a raked end has no mouth before it is cut, a square one has it on the blank
  expect(summary(on(heldIn(), 'stretcher'))).toEqual(new Set(['both rails, ends cut']));
  expect(summary(on(heldIn({ rake: 0 }), 'stretcher'))).toEqual(new Set(['both rails, milled blank']));
  for (const { near, far } of on(heldIn(), 'stretcher')) {
    expect(near!.toRail).toBeCloseTo(12, 6);
    expect(far!.toRail).toBeCloseTo(12, 6);
  }
});

test('the top of a raked side takes a wedge on both faces after its ends are cut and before it is tapered', () => {
  // the bevel stands square to the cutter, so both wide faces lean by the rake; no face of the side runs with the cutter
  const held = heldIn();
  for (const side of ['left-side', 'right-side']) {
    expect(summary(on(held, side, 'top'))).toEqual(new Set(['both rails, 2 wedges, ends cut']));
    for (const { near, far } of on(held, side, 'top')) {
      // across the slanted end: thickness over cosine
      expect(near!.toFace + far!.toFace).toBeCloseTo(28 / Math.cos(10 * RAD), 6);
      expect(near!.wedge!.angleDeg).toBeCloseTo(10, 6);
      expect(far!.wedge!.angleDeg).toBeCloseTo(10, 6);
    }
  }
});

test('an upright side is cut on its blank without wedges', () => {
  expect(summary(on(heldIn({ rake: 0 }), 'left-side').filter(({ mortise }) => mortise.depth > 20))).toEqual(
    new Set(['both rails, milled blank']),
  );
});

test('the underside of a tread is fenced from its end by a jig that reaches there, and by a guide board otherwise', () => {
  // 41.5 mm from the end: the default jig reaches 43.5, one made for work 60 mm thick 31
  expect(summary(on(heldIn(), 'tread'))).toEqual(new Set(['one rail, milled blank']));
  for (const { near, far, raised } of on(heldIn(), 'tread')) {
    expect((near ?? far)!.face).toMatch(/-end$/);
    expect((near ?? far)!.toRail).toBeLessThan(43.5);
    // the rail is 45 high and the tread 28 thick
    expect(raised).toBe(17);
  }
  const short = on(heldIn({}, { workMax: 60 }), 'tread');
  expect(summary(short)).toEqual(new Set(['guide board, milled blank']));
  for (const { refused } of short) {
    const fence = refused.find(({ way }) => way === 'one rail')!;
    expect(fence.broken.map(({ code }) => code)).toEqual(['rail-reach']);
    expect(fence.broken[0]!.limit).toBeCloseTo(31, 9);
  }
});

test('the inner face of a side is cut along a guide board: both its edges are 121 mm away', () => {
  const held = heldIn({}, { workMax: 90 }).filter(({ mortise }) => mortise.face === 'opposite-face');
  expect(held).toHaveLength(2);
  expect(summary(held)).toEqual(new Set(['guide board, milled blank']));
  for (const { travelling } of held) expect(travelling).toEqual({ what: 'router base', along: 150 });
});

test('all joints of a frame are cut on the blanks between both rails', () => {
  const design = frameModel.build(readParameters(frameModel, {}, 'mm'));
  const { holdings, aids } = holdingsOf(design, jigWith(), BARE_SHOP);
  expect(holdings).toHaveLength(8);
  expect(summary(holdings)).toEqual(new Set(['both rails, milled blank']));
  expect(aids.filter(({ kind }) => kind === 'wedge')).toEqual([]);
});

test('a mortise beside the riser of a stepped side cannot be reached, and the riser is named', () => {
  const design = stoolOf({ treads: 2, steppedSide: 'one-board' });
  const { holdings } = holdingsOf(design, jigWith(), BARE_SHOP);
  const seat = holdings.filter(({ mortise, board }) => board.endsWith('-side') && mortise.face === 'step');
  expect(seat).toHaveLength(4);
  const blocked = seat.filter(({ broken }) => broken.some(({ code }) => code.endsWith('-meets-work')));
  // the inner one of each side; its base, too, is wider than its way to the riser
  expect(blocked.map(({ mortise }) => mortise.id)).toEqual(
    expect.arrayContaining(['lower-tread/left-side/2', 'lower-tread/right-side/2']),
  );
  for (const { broken } of blocked) expect(broken[0]!.measured).toBeGreaterThan(broken[0]!.limit);
});

test('a mortise turned against the edges takes a wedge that tapers along its length', () => {
  const board = makeBoard({ id: 'turned', blank: { length: 300, width: 40, thickness: 40 } });
  const turn = 3 * RAD;
  const at = frame([150, 20, 40], [0, 0, 1], [Math.cos(turn), Math.sin(turn), 0]);
  const { holdings, aids } = holdingsOf(
    alone({ ...board, mortises: [mortiseOn('opposite-face', at)] }),
    jigWith({ workMax: 100 }),
    BARE_SHOP,
  );
  const [held] = holdings;
  expect(held!.way).toBe('both rails');
  for (const rail of [held!.near!, held!.far!]) {
    expect(rail.wedge!.angleDeg).toBeCloseTo(3, 9);
    expect(['start', 'end']).toContain(rail.wedge!.thickEnd);
    expect(rail.toFace).toBeCloseTo(20 / Math.cos(turn), 9);
    // where the wood beyond the wedge comes out the rail must still clear it
    expect(rail.wedge!.thicknessAtMouth).toBeGreaterThan(4);
  }
  const wedge = aids.find(({ kind }) => kind === 'wedge')!.board;
  expect(wedge.bevels[0]!.normal[0]).toBeCloseTo(-Math.sin(turn), 9);
});

test('a rail whose mortises run along its grain is cut before its ends are sawn to their angle', () => {
  // the axis along the stretcher leans 10° from the end; the blank's own end is square to it
  const design = stoolOf();
  const bare = design.boards.map(({ board, place }) => ({ board: { ...board, mortises: [] }, place }));
  const joined = assemble({
    name: 'along',
    title: 'Along',
    cutter: 8,
    boards: bare,
    joints: [{ a: 'stretcher', b: 'left-side', options: { cutter: 8, axis: 'along a' } }],
  });
  const { holdings } = holdingsOf(joined, jigWith(), BARE_SHOP);
  const [held] = on(holdings, 'stretcher');
  const finished = joined.boards.find(({ board }) => board.id === 'stretcher')!.board.mortises[0]!;
  expect(summary([held!])).toEqual(new Set(['both rails, milled blank']));
  expect(held!.mortise.face).toBe('reference-end');
  // deeper by what the saw will take off at the middle of the mouth
  expect(held!.mortise.depth).toBeCloseTo(finished.depth + finished.at.origin[0], 6);
  // in the side nothing is square to that axis: it is told, not cut
  expect(unheld(joined, holdings).map(({ board }) => board)).toEqual(['left-side']);
});

test('for all rakes and tapers every mortise of the stool is held, and a way without wedges wins wherever there is one', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      (rake, taper) => {
        const design = stoolOf({ rake, taper });
        const { holdings } = holdingsOf(design, jigWith({ workMax: 90 }), BARE_SHOP);
        expect(unheld(design, holdings)).toEqual([]);
        expect(holdings).toHaveLength(12);
        for (const held of holdings) {
          expect(held.broken).toEqual([]);
          const wedged = [held.near, held.far].some((bearing) => bearing?.wedge);
          if (wedged) expect(held.mortise.face).toBe('top');
          if (held.near && held.far) {
            expect(held.near.toRail + held.far.toRail).toBeLessThanOrEqual(92 + 1e-6);
          }
        }
      },
    ),
    { numRuns: 15 },
  );
});

import { expect, test } from 'vitest';
import { type Board, makeBoard } from '../../src/board/index.js';
import { frame } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { polygon } from '../../src/profile/index.js';
import { type Holding, holdingsOf, type Shop } from '../../src/shop/index.js';
import { alone, BARE_SHOP, edgeBoard, faceBoard, jigWith, mortiseOn } from './at-hand.js';

const jig = jigWith();
const heldOf = (board: Board, shop: Shop = BARE_SHOP): Holding => {
  const { holdings } = holdingsOf(alone(board), jig, shop);
  expect(holdings).toHaveLength(1);
  return holdings[0]!;
};

/** Every limit that kept simpler ways away, or that the way taken breaks. */
const limits = (held: Holding) => [...held.refused.flatMap(({ broken }) => broken), ...held.broken];
const limit = (held: Holding, code: string) => limits(held).find((one) => one.code === code);

// the default jig: grip 20 to 87 mm, each rail out to 43.5 mm, plate 269 × 186 × 12, rails 45 high; base 150

test('work as thin as the grip is held between both rails, a millimetre thinner against one, for want of grip', () => {
  expect(heldOf(edgeBoard(20)).way).toBe('both rails');
  const thin = heldOf(edgeBoard(19));
  expect(thin.way).toBe('one rail');
  expect(thin.broken).toEqual([]);
  expect(limit(thin, 'grip-too-narrow')).toMatchObject({ measured: 19, limit: 20 });
  // a 19 mm edge rocks under one rail: a block stands on its other side
  expect(thin.supports.length).toBeGreaterThan(0);
});

test('work as thick as the grip is held between both rails, a millimetre thicker not, and the grip is named', () => {
  expect(heldOf(edgeBoard(87)).way).toBe('both rails');
  const thick = heldOf(edgeBoard(88));
  expect(thick.way).not.toBe('both rails');
  expect(limit(thick, 'grip-too-wide')).toMatchObject({ measured: 88, limit: 87 });
});

test('a fence reaches 43.5 mm and no farther', () => {
  expect(heldOf(faceBoard(43)).way).toBe('one rail');
  const far = heldOf(faceBoard(44));
  expect(far.way).toBe('guide board');
  expect(limit(far, 'rail-reach')).toMatchObject({ measured: 44, limit: 43.5 });
  expect(limit(far, 'rail-reach')!.remedy).toContain('1.0 mm');
});

test('a figure that misses its limit by 0.04 mm is told finer than a rule shows it, in mm and in inches', () => {
  const told = (board: Board, code: string, units: 'mm' | 'in', shop: Shop = BARE_SHOP) => {
    const { holdings } = holdingsOf(alone(board), jig, shop, speaker(units));
    const { message, remedy } = limit(holdings[0]!, code)!;
    return `${message}: ${remedy}`;
  };
  expect(told(faceBoard(43.54), 'rail-reach', 'mm')).toMatch(
    /stand 43\.54 mm .* only 43\.50 mm: .* by 0\.08 mm/,
  );
  // 43.54 / 25.4 and 43.5 / 25.4, by hand
  expect(told(faceBoard(43.54), 'rail-reach', 'in')).toMatch(/stand 1\.714" .* only 1\.713": .* by 0\.003"/);
  expect(told(edgeBoard(87.04), 'grip-too-wide', 'mm')).toMatch(
    /87\.04 mm thick.*only 87\.00 mm: .*by 0\.04 mm/,
  );
  expect(told(edgeBoard(19.96), 'grip-too-narrow', 'mm')).toMatch(
    /19\.96 mm thick.*than 20\.00 mm: .*packing 0\.04 mm/,
  );
  expect(told(edgeBoard(30, 5.96), 'rail-near-cutter', 'mm')).toMatch(
    /stand 5\.96 mm .* 6\.00 mm .*: .*0\.04 mm/,
  );
  const short: Shop = { ...BARE_SHOP, router: { ...BARE_SHOP.router, plungeTravel: 31.96 } };
  expect(told(edgeBoard(24), 'plunge-travel', 'mm', short)).toMatch(
    /plunge 32\.00 mm, .* only 31\.96 mm: .*0\.04 mm/,
  );
});

test('a rail keeps 2 mm from a turning cutter', () => {
  // half of 8, and 2
  expect(heldOf(edgeBoard(30, 6)).way).toBe('both rails');
  const near = heldOf(edgeBoard(30, 5));
  expect(near.way).toBe('one rail');
  expect(limit(near, 'rail-near-cutter')).toMatchObject({ measured: 5, limit: 6 });
});

test('a fence bears 12 mm down or not at all', () => {
  expect(heldOf(faceBoard(25, 12)).way).toBe('one rail');
  expect(heldOf(faceBoard(25, 11)).way).toBe('guide board');
});

test('the router must plunge through plate and depth', () => {
  // 12 of plate and 20 of wood
  const with_ = (plungeTravel: number): Shop => ({
    ...BARE_SHOP,
    router: { ...BARE_SHOP.router, plungeTravel },
  });
  expect(heldOf(edgeBoard(24), with_(32)).broken).toEqual([]);
  const short = heldOf(edgeBoard(24), with_(31));
  expect(limit(short, 'plunge-travel')).toMatchObject({ measured: 32, limit: 31 });
  expect(short.way === 'both rails' && short.broken.length === 0).toBe(false);
  // along a guide board there is no plate to go through: in a wide face the same router does it
  const wide = heldOf(faceBoard(30), with_(31));
  expect(wide.way).toBe('guide board');
  expect(wide.broken).toEqual([]);
});

test('the cutter must reach: two shank diameters of grip, base, plate and depth', () => {
  // 16 + 10 + 12 + 20
  const shop = (overallLength: number): Shop => ({
    ...BARE_SHOP,
    router: { ...BARE_SHOP.router, baseThickness: 10 },
    cutters: [{ nominal: 8, overallLength, shank: 8 }],
  });
  expect(limits(heldOf(edgeBoard(24), shop(58)))).toEqual([]);
  expect(limit(heldOf(edgeBoard(24), shop(57)), 'cutter-length')).toMatchObject({ measured: 58, limit: 57 });
});

test('edges shorter than the depth break a limit only under a shank that rubs', () => {
  const shop = (cuttingLength: number, shank: number): Shop => ({
    ...BARE_SHOP,
    cutters: [{ nominal: 8, cuttingLength, shank }],
  });
  expect(limits(heldOf(edgeBoard(24), shop(20, 8)))).toEqual([]);
  expect(limit(heldOf(edgeBoard(24), shop(19, 8)), 'cutting-length')).toMatchObject({
    measured: 20,
    limit: 19,
  });
  expect(limits(heldOf(edgeBoard(24), shop(19, 6)))).toEqual([]);
});

test('what the shop does not say breaks no limit', () => {
  expect(limits(heldOf(edgeBoard(24)))).toEqual([]);
});

/** A seat 300 long beside a riser; the mortise runs towards the riser and its centre lies a distance from it. */
function steppedBoard(fromRiser: number): Board {
  const board = makeBoard({
    id: 'step',
    blank: { length: 500, width: 400, thickness: 40 },
    outline: polygon([
      { x: 0, y: 0 },
      { x: 500, y: 0 },
      { x: 500, y: 100 },
      { x: 200, y: 100 },
      { x: 200, y: 400 },
      { x: 0, y: 400 },
    ]),
  });
  const at = frame([200, 100 + fromRiser, 20], [1, 0, 0], [0, 1, 0]);
  return { ...board, mortises: [mortiseOn('edge-4', at)] };
}

test('a plate that would run into a riser is refused, and the riser named', () => {
  // 20 + 134.5 − 4 from the centre, and 1 mm of air
  const clear = heldOf(steppedBoard(152));
  expect(clear.way).toBe('both rails');
  expect(clear.broken).toEqual([]);
  const blocked = heldOf(steppedBoard(151));
  expect(limit(blocked, 'plate-meets-work')!.measured).toBeCloseTo(151.5, 9);
  expect(limit(blocked, 'plate-meets-work')!.limit).toBeCloseTo(151, 3);
});

/** A board 28 thick with its end bevelled: both faces lean from the axis of the mortise in that end. */
function leaningBoard(deg: number): Board {
  const angle = (deg * Math.PI) / 180;
  const normal = [Math.cos(angle), 0, -Math.sin(angle)] as const;
  const board = makeBoard({
    id: 'lean',
    blank: { length: 300, width: 200, thickness: 28 },
    bevels: [{ id: 'top', point: [300, 0, 28], normal }],
  });
  const at = frame([300 - 14 * Math.tan(angle), 100, 14], normal, [0, 1, 0]);
  return { ...board, mortises: [mortiseOn('top', at)] };
}

test('a face that leans 25° takes a wedge, one that leans 26° does not', () => {
  const wide = jigWith({ workMax: 90 });
  const [wedged] = holdingsOf(alone(leaningBoard(25)), wide, BARE_SHOP).holdings;
  expect(wedged!.way).toBe('both rails');
  expect(wedged!.near!.wedge!.angleDeg).toBeCloseTo(25, 9);
  expect(wedged!.far!.wedge!.angleDeg).toBeCloseTo(25, 9);
  const [steep] = holdingsOf(alone(leaningBoard(26)), wide, BARE_SHOP).holdings;
  expect(steep!.near ?? steep!.far).toBeUndefined();
});

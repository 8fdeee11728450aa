import fc from 'fast-check';
import { expect, test } from 'vitest';
import stool from '../../models/stool.js';
import { faces } from '../../src/board/index.js';
import { angleDeg, directionOut, dot, pointOut, scale, subtract, type Vec3 } from '../../src/frame/index.js';
import { readParameters } from '../../src/model/index.js';
import { bounds } from '../../src/profile/index.js';
import {
  builtInShop,
  type Holding,
  type Holdings,
  holdingsOf,
  type Shop,
  seenStage,
  stagesOf,
  stopDistance,
} from '../../src/shop/index.js';
import {
  type Body,
  boxIn,
  hit,
  sharedVolume,
  standingIn,
  startKernel,
  stockBody,
} from '../../src/solid/index.js';
import { alone, BARE_SHOP, edgeBoard, faceBoard, jigWith } from './at-hand.js';

type Raw = Readonly<Record<string, number | string>>;
const RAD = Math.PI / 180;
const stoolOf = (raw: Raw) => stool.build(readParameters(stool, raw, 'mm'));
const heldIn = (raw: Raw): Holdings => holdingsOf(stoolOf(raw), jigWith(), BARE_SHOP);
const aid = (held: Holdings, id: string) => held.aids.find(({ board }) => board.id === id)!;
const wedges = (holding: Holding) => [holding.near?.wedge, holding.far?.wedge].flatMap((one) => one ?? []);

test('stops stand half the slot and half the base from the centre, less half the cutter', () => {
  // 40 mm slot, 150 mm base, 10 mm cutter: 20 + 75 − 5
  expect(stopDistance(40, 150, 10)).toBe(90);
  const held = heldIn({});
  for (const { mortise, travelling, stopDistance: stop } of held.holdings) {
    // the base that goes from stop to stop carries the cutter's edge from one end of the slot to the other
    expect(2 * (stop - travelling.along / 2) + mortise.width).toBeCloseTo(mortise.length, 9);
  }
});

test('a wedge is as thick as its thin end and its height times the tangent of its angle', () => {
  for (const rake of [5, 10, 20]) {
    const held = heldIn({ rake });
    const wedge = aid(held, `wedge-${rake}`);
    // 4 mm at the thin end, beside rails 45 mm high
    expect(wedge.board.blank.thickness).toBeCloseTo(4 + 45 * Math.tan(rake * RAD), 9);
    expect(wedge.board.blank.width).toBe(45);
    // one on each side, one of them turned over
    expect(wedge.count).toBe(2);
    expect(wedge.kind).toBe('wedge');
  }
});

test('a side raked on both faces takes one wedge thick end up and one thick end down', () => {
  const held = heldIn({ rake: 10 });
  const tops = held.holdings.filter((one) => one.mortise.face === 'top');
  expect(tops).toHaveLength(4);
  for (const holding of tops) {
    expect(
      wedges(holding)
        .map(({ thickEnd }) => thickEnd)
        .sort(),
    ).toEqual(['down', 'up']);
    const up = wedges(holding).find(({ thickEnd }) => thickEnd === 'up')!;
    expect(up.thicknessAtMouth).toBeCloseTo(4 + 45 * Math.tan(10 * RAD), 9);
  }
});

test('wood beside a leaning mortise grows thinner by the depth times the tangent of its lean', async () => {
  const design = stoolOf({ rake: 10 });
  const held = holdingsOf(design, jigWith(), BARE_SHOP);
  const kernel = await startKernel();
  try {
    for (const holding of held.holdings.filter((one) => one.mortise.face === 'top')) {
      const { board } = design.boards.find((one) => one.board.id === holding.board)!;
      const body = kernel.keep(stockBody(kernel, board));
      const { at } = holding.mortise;
      const wall = (side: 1 | -1, depth: number) =>
        hit(body, pointOut(at, [0, 0, -depth]), pointOut(at, [0, side * 60, -depth]))!;
      for (const [side, bearing] of [
        [-1, holding.near!],
        [1, holding.far!],
      ] as const) {
        // thick end down: the face draws away under the plate, so the wood beside the mortise grows thinner
        const sense = bearing.wedge!.thickEnd === 'down' ? -1 : 1;
        for (const depth of [5, 15, 31]) {
          expect(wall(side, depth)).toBeCloseTo(bearing.toFace + sense * depth * Math.tan(10 * RAD), 6);
        }
      }
    }
  } finally {
    kernel.dispose();
  }
});

/** How far two points of a body's surface lie from a plane along its normal, met from outside. */
const slopeDeg = (body: Body, from: readonly [Vec3, Vec3], towards: Vec3): number => {
  const far = (point: Vec3): Vec3 => [
    point[0] + 200 * towards[0],
    point[1] + 200 * towards[1],
    point[2] + 200 * towards[2],
  ];
  const [a, b] = [hit(body, from[0], far(from[0]))!, hit(body, from[1], far(from[1]))!];
  return Math.atan2(b - a, Math.hypot(...subtract(from[1], from[0]))) / RAD;
};

test('a support block comes out of a board no thicker than it is high, and stands flush with the mouth beside the work', async () => {
  const kernel = await startKernel();
  try {
    let leaning = 0;
    for (const raw of [
      { treads: 2 },
      { treads: 2, steppedSide: 'one-board' },
      { treads: 2, rake: 15 },
      { rake: 20 },
    ]) {
      const design = stoolOf(raw);
      // with its bushes, so that a template may be used
      const held = holdingsOf(design, jigWith(), builtInShop('mm'));
      for (const { board: id, mortise, stage, supports } of held.holdings) {
        const { board } = design.boards.find((placed) => placed.board.id === id)!;
        const work = kernel.keep(
          stockBody(kernel, stagesOf(board).find(({ name }) => name === stage)!.board),
        );
        for (const { aid: name, place } of supports) {
          const block = aid(held, name).board;
          expect(block.blank.thickness, name).toBeLessThanOrEqual(block.blank.width + 1e-6);
          const body = kernel.keep(standingIn(kernel.keep(stockBody(kernel, block)), place));
          expect(boxIn(body, mortise.at).max[2], name).toBeCloseTo(0, 4);
          expect(sharedVolume(body, work), name).toBeLessThan(0.01);
          leaning += block.bevels.length;
        }
      }
    }
    expect(leaning).toBeGreaterThan(0);
  } finally {
    kernel.dispose();
  }
});

test('a wedge in its place turns a face within 0.02° of the cutter, and lies flat on the wood', async () => {
  const kernel = await startKernel();
  try {
    for (const raw of [{ rake: 7.3 }, { rake: 10 }, { rake: 20 }, { treads: 2, rake: 12 }]) {
      const design = stoolOf(raw);
      const held = holdingsOf(design, jigWith({ workMax: 90 }), BARE_SHOP);
      const users = held.holdings.filter((one) => wedges(one).length > 0);
      expect(users.length).toBeGreaterThanOrEqual(4);
      for (const holding of users) {
        const { at } = holding.mortise;
        const { board } = design.boards.find((one) => one.board.id === holding.board)!;
        for (const side of [-1, 1] as const) {
          const use = (side < 0 ? holding.near : holding.far)!;
          const wedge = aid(held, use.wedge!.aid).board;
          const body = kernel.keep(standingIn(kernel.keep(stockBody(kernel, wedge)), use.wedge!.place));
          const outside = (x: number, z: number): Vec3 => pointOut(at, [x, side * 150, z]);
          const inwards = scale(at.y, -side);
          expect(slopeDeg(body, [outside(3, -5), outside(3, -40)], inwards)).toBeCloseTo(0, 4);
          expect(slopeDeg(body, [outside(-20, -20), outside(20, -20)], inwards)).toBeCloseTo(0, 4);
          const stage = stagesOf(board).find(({ name }) => name === holding.stage)!;
          const face = seenStage(stage, faces(board)).faces.find(({ id }) => id === use.face)!;
          const taper = directionOut(use.wedge!.place, wedge.bevels[0]!.normal);
          expect(angleDeg(taper, scale(face.frame.z, -1))).toBeLessThan(0.02);
          const touching = pointOut(use.wedge!.place, wedge.bevels[0]!.point);
          expect(dot(face.frame.z, subtract(touching, face.frame.origin))).toBeCloseTo(0, 6);
        }
      }
    }
  } finally {
    kernel.dispose();
  }
});

test('one depth block a depth, as thick as the depth', () => {
  const held = heldIn({});
  const depths = new Set(held.holdings.map(({ mortise }) => mortise.depth.toFixed(6)));
  const blocks = held.aids.filter(({ kind }) => kind === 'depth block');
  expect(blocks).toHaveLength(depths.size);
  for (const { depthBlock, mortise } of held.holdings)
    expect(aid(held, depthBlock).board.blank.thickness).toBe(mortise.depth);
});

test('the ends of a stretcher are narrow, so a block as thick as it stands on both sides and both share a pattern', () => {
  for (const rake of [0, 5, 10]) {
    const held = heldIn({ rake });
    const ends = held.holdings.filter((one) => one.board === 'stretcher');
    expect(ends.map(({ supports }) => supports.length)).toEqual([2, 2]);
    const names = new Set(ends.flatMap(({ supports }) => supports.map((use) => use.aid)));
    expect(names.size).toBe(1);
    const block = aid(held, [...names][0]!);
    expect(block.count).toBe(2);
    expect(block.board.blank.thickness).toBeCloseTo(24, 6);
    // its end leans like the edge beside it: one long edge is longer by the height times the tangent
    const { maxX } = bounds(block.board.outline);
    const top = Math.max(...block.board.outline.filter(({ y }) => y > 1).map(({ x }) => -x));
    expect(maxX).toBe(block.board.blank.length);
    expect(-top).toBeCloseTo(block.board.blank.width * Math.tan(rake * RAD), 6);
  }
});

test('a mortise near the end of a blank asks for a horn that holds the plate, in steps of 5 mm', () => {
  // the cutter comes to 16.7 mm from the end at 12.7 mm of inset; 25 are wanted, so 8.3, and 10 in steps
  const board = edgeBoard(24);
  const at = { ...board.mortises[0]!.at, origin: [600 - 12.7 - 20, 0, 12] as const };
  const near = { ...board, mortises: [{ ...board.mortises[0]!, at }] };
  const [held] = holdingsOf(alone(near), jigWith(), BARE_SHOP).holdings;
  expect(held!.horn).toEqual({ end: 'opposite-end', length: 10 });
  expect(held!.supports).toEqual([]);
  expect(held!.along.from).toBe('reference-end');
  const [middle] = holdingsOf(alone(board), jigWith(), BARE_SHOP).holdings;
  expect(middle!.horn).toBeUndefined();
});

test('a guide board stands half the base from the centre line, and the eccentricity farther', () => {
  const shop: Shop = { ...BARE_SHOP, router: { ...BARE_SHOP.router, eccentricity: 0.4 } };
  const held = holdingsOf(alone(faceBoard(100)), jigWith(), shop);
  const [holding] = held.holdings;
  expect(holding!.way).toBe('guide board');
  expect(holding!.guide!.offset).toBeCloseTo(75.4, 9);
  // long enough for the base at both stops: 40 + 150 and more
  expect(aid(held, holding!.guide!.aid).board.blank.length).toBeGreaterThan(40 + 150);
  const edge = holding!.guide!.place;
  expect(dot(subtract(edge.origin, holding!.mortise.at.origin), holding!.mortise.at.y)).toBeCloseTo(
    holding!.guide!.side === 'near' ? -75.4 : 75.4,
    9,
  );
});

test('where no guide board can be clamped a template is cut: the mortise, and the bush less the cutter', () => {
  const shop: Shop = {
    ...BARE_SHOP,
    bushes: [{ outside: 16, bore: 13, collarLength: 5 }],
    sheets: [{ name: 'birch plywood', length: 2440, width: 1220, thickness: 6 }],
  };
  // 90 mm thick is too thick for the rails, and its edge too narrow for a board beside the router
  const held = holdingsOf(alone(edgeBoard(90)), jigWith(), shop);
  const [holding] = held.holdings;
  expect(holding!.way).toBe('windowed template');
  expect(holding!.window).toMatchObject({ length: 48, width: 16, bush: 16 });
  expect(holding!.refused.map(({ way }) => way)).toContain('guide board');
  const window = aid(held, holding!.window!.aid).board;
  const box = bounds(window.openings[0]!.outline);
  expect([box.maxX - box.minX, box.maxY - box.minY]).toEqual([48, 16]);
  // a collar 5 mm long needs more than 5.5 mm of sheet
  const thin: Shop = { ...shop, sheets: [{ ...shop.sheets[0]!, thickness: 5.4 }] };
  const [none] = holdingsOf(alone(edgeBoard(90)), jigWith(), thin).holdings;
  expect(none!.broken.length).toBeGreaterThan(0);
});

test('for all rakes every aid is named once, every name that is used exists, and nothing is made for nobody', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      fc.constantFrom(1, 2),
      (rake, taper, treads) => {
        const held = heldIn({ rake, taper, treads });
        const names = held.aids.map(({ board }) => board.id);
        expect(new Set(names).size).toBe(names.length);
        const used = new Set(
          held.holdings.flatMap((one) => [
            one.depthBlock,
            ...wedges(one).map((use) => use.aid),
            ...one.supports.map((use) => use.aid),
            ...(one.guide ? [one.guide.aid] : []),
            ...(one.window ? [one.window.aid] : []),
          ]),
        );
        expect([...used].sort()).toEqual([...names].sort());
      },
    ),
    { numRuns: 20 },
  );
});

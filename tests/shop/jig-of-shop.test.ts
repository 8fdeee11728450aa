import { expect, test } from 'vitest';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { InputError } from '../../src/errors.js';
import { pointOut, WORLD } from '../../src/frame/index.js';
import { parameterValues, readParameters } from '../../src/model/index.js';
import {
  builtInShop,
  holdingsOf,
  jigAtHand,
  jigOfShop,
  jigParameters,
  orderOfWork,
  readShop,
  type Shop,
  toolsOf,
  withMadeJig,
} from '../../src/shop/index.js';
import { boxIn, solidsOf, startKernel } from '../../src/solid/index.js';

const shopOf = (jigSaid: object, along = 160) =>
  readShop({ router: { base: { shape: 'round', along } }, jig: jigSaid }, 'shed/shop.yaml', 'mm');
const summaryOf = (given: object) => {
  const values = readParameters(jig, given as Record<string, unknown>, 'mm');
  return { design: 'jig', parameters: parameterValues(jig, values as Record<string, unknown>) };
};
const figure = (design: ReturnType<typeof jig.build>, name: string) =>
  design.derived.find((one) => one.name === name)!.value;

test('a jig made with what the shop says is the jig the cards are for', () => {
  const shop = shopOf({ workMax: 95, 'rail-width': '1 3/4 in' });
  const made = jig.build(
    readParameters(jig, jigParameters(shop, jig, 'mm'), 'in', shop.measures),
    toolsOf(shop),
  );
  const forCards = jigOfShop(shop, jig, 'mm');
  expect(made.boards.map(({ board }) => board.blank)).toEqual(
    forCards.boards.map(({ board }) => board.blank),
  );
  // 95 and a millimetre at both ends; the router's base is 10 wider than the usual one
  expect(figure(made, 'widest work')).toBeGreaterThanOrEqual(97);
  expect(figure(made, 'slot position')).toBe(
    figure(jig.build(readParameters(jig, {}, 'mm')), 'slot position') + 5,
  );
});

test('a shop can name the summary of the jig that was made, and has that jig', () => {
  const made = summaryOf({
    baseDiameter: 160,
    workMax: 70,
    slots: 'open',
    holePoints: 'in: 2, 2; -2, 2; 0, -2',
  });
  const shop = withMadeJig(shopOf({}), jig, made, 'out/jig/summary.json', 'mm');
  expect(figure(jigOfShop(shop, jig, 'mm'), 'widest work')).toBe(72);
  expect(shop.jig.slots).toBe('open');
});

test('a shop in inches has a jig with inch bolts and a cutter it owns, but none of that contradicts the jig it made', () => {
  const inches = builtInShop('in');
  const jigThere = jigOfShop(inches, jig, 'in');
  const bolts = jigThere.hardware.filter(({ kind }) => kind === 'bolt').map(({ name }) => name);
  expect(bolts).toEqual(Array(4).fill(expect.stringMatching(/^hex bolt 5\/16 × [-\d/]+", ASME/)));
  expect(inches.cutters.map(({ nominal }) => nominal)).toContain(jigThere.cutter);
  // nothing the shop said: it is what the jig starts from there
  expect(readParameters(jig, jigParameters(inches, jig, 'in'), 'in').boltSize).toBe('5/16');
  // what the shop file says goes first, and a made jig with other bolts is believed
  const said = { ...inches, jig: { boltSize: 'M8' } };
  expect(
    jigOfShop(said, jig, 'in')
      .hardware.map(({ name }) => name)
      .join(),
  ).toContain('hex bolt M8');
  const made = summaryOf({ baseDiameter: '6 in', baseThickness: '3/8 in', boltSize: '3/8' });
  expect(withMadeJig(inches, jig, made, 'x', 'in').jig).toMatchObject({ boltSize: '3/8' });
  expect(
    jigOfShop(builtInShop('mm'), jig, 'mm')
      .hardware.map(({ name }) => name)
      .join(),
  ).toContain('hex bolt M8');
});

test('the plate is as thick as the sheet at hand for it measures, unless the shop says how thick', () => {
  const sheets = (...thick: readonly number[]) =>
    thick.map((thickness) => ({ name: 'birch plywood', length: 1525, width: 1525, thickness }));
  const plate = (shop: Shop) => jigOfShop(shop, jig, 'mm').boards[0]!.board.blank.thickness;
  const shop = shopOf({});
  expect(plate(shop)).toBe(12);
  expect(plate({ ...shop, sheets: sheets(6, 11.7, 18) })).toBe(11.7);
  expect(plate({ ...shop, sheets: sheets(6, 18) })).toBe(12);
  expect(plate({ ...shop, sheets: sheets(11.7), jig: { plateThickness: 15 } })).toBe(15);
  const inches = builtInShop('in');
  expect(plate(inches)).toBe(inches.sheets[0]!.thickness);
});

test('a shop that says something else of its jig or router than the jig was made with is refused, line by line', () => {
  const made = summaryOf({ baseDiameter: 160, workMax: 70 });
  const refused = (shop: ReturnType<typeof shopOf>, summary: unknown = made) => {
    try {
      withMadeJig(shop, jig, summary, 'out/jig/summary.json', 'mm');
    } catch (error) {
      if (error instanceof InputError) return error;
      throw error;
    }
    throw new Error('it was not refused');
  };
  const error = refused(shopOf({ workMax: 71 }, 150));
  expect(error.code).toBe('jig-made-differs');
  expect(error.message.split('\n')).toHaveLength(2);
  expect(error.message).toContain(
    'base-diameter is 150 mm, but the jig in out/jig/summary.json was made with 160 mm',
  );
  expect(error.message).toContain('work-max is 71 mm');
  // the remedy: correct the shop file
  expect(() => withMadeJig(shopOf({ workMax: 70 }, 160), jig, made, 'x', 'mm')).not.toThrow();
  for (const wrong of [null, 3, {}, { design: 'stool', parameters: {} }])
    expect(refused(shopOf({}), wrong).code).toBe('jig-made-unknown');
});

test('the usual jig fences the tread of the usual stool, one tread or two', () => {
  for (const raw of [{}, { treads: 2 }]) {
    const design = stool.build(readParameters(stool, raw, 'mm'));
    const { holdings } = holdingsOf(
      design,
      jigAtHand(jig.build(readParameters(jig, {}, 'mm'))),
      builtInShop('mm'),
    );
    const treads = holdings.filter(({ board }) => board.includes('tread'));
    expect(treads.length).toBeGreaterThan(3);
    for (const { broken, way, mortise } of treads.filter(({ board }) => board.endsWith('tread'))) {
      expect(broken).toEqual([]);
      expect(way, mortise.id).not.toBe('guide board');
    }
  }
});

test('every hole and slot of the jig is ordered with its sizes, and slots as wide as no cutter are drilled and sawn', () => {
  const design = jig.build(readParameters(jig, {}, 'mm'));
  const slotSteps = (nominals: readonly number[]) =>
    orderOfWork(design, [], [], {
      cutters: nominals.map((nominal) => ({ ...builtInShop('mm').cutters[0]!, nominal })),
    }).steps.filter(({ kind }) => kind === 'slot');
  const [sawn] = slotSteps([6, 8, 10]);
  expect(sawn!.what).toMatch(/drill .* both ends.* saw/);
  const size = (name: string) => sawn!.figures.find((one) => one.name === name)!.value;
  const slot = design.boards[0]!.board.slots[0]!;
  expect(size('drill')).toBe(slot.width);
  // a hole at each end makes the round ends: they are a slot's length apart, less half a drill at both
  expect(size('from centre to centre of its ends') + slot.width).toBe(slot.length);
  expect(slotSteps([9])[0]!.what).toContain('rout');
  const { steps } = orderOfWork(design, [], [], {});
  const bored = steps.filter(({ kind }) => kind === 'hole');
  const holes = design.boards.flatMap(({ board }) => board.holes);
  expect(bored.flatMap(({ cuts }) => cuts)).toHaveLength(holes.length);
  for (const step of bored) {
    const { board } = design.boards.find((one) => one.board.id === step.board)!;
    const values = step.figures.map(({ value }) => value);
    for (const id of step.cuts) {
      const hole = board.holes.find((one) => one.id === id)!;
      expect(values).toContain(hole.diameter);
      if (hole.counterbore) expect(values).toEqual(expect.arrayContaining(Object.values(hole.counterbore)));
      if (hole.countersink) expect(values).toEqual(expect.arrayContaining(Object.values(hole.countersink)));
    }
  }
});

test('the jig is told from the saw to the test cut, and its bolts go in the way they stand on the solids', async () => {
  const design = jig.build(readParameters(jig, {}, 'mm'));
  const { steps } = orderOfWork(design, [], [], {});
  const last = steps.slice(-design.putTogether!.length);
  expect(last.map(({ kind }) => kind)).toEqual([
    'fix',
    'fix',
    'assemble',
    'assemble',
    'test cut',
    'test cut',
  ]);
  const bolts = last.find(({ what }) => what.includes('push the bolts'))!.what;
  const kernel = await startKernel();
  try {
    const solids = solidsOf(kernel, design);
    const box = (id: string) => boxIn(solids.hardware.get(id)!.body, WORLD);
    const rail = boxIn(solids.boards.get('near-rail')!.body, WORLD);
    // the head is the wide end: a slice of the bolt there reaches farther than its shank
    const bolt = box('near-rail-bolt-1');
    const knob = box('near-rail-knob-1');
    const headBelow = knob.min[2] > rail.max[2] && bolt.min[2] < rail.max[2];
    expect(bolts.includes('from below')).toBe(headBelow);
    expect(bolts.includes('knob on each above the plate')).toBe(
      knob.min[2] > boxIn(solids.boards.get('plate')!.body, WORLD).max[2] - 1e-6,
    );
  } finally {
    kernel.dispose();
  }
  // the pin stands in the middle of the plate
  const centred = last.find(({ what }) => what.includes('straight pin'))!.figures.map(({ value }) => value);
  const { board, place } = design.boards[0]!;
  const corner = pointOut(place, [0, 0, 0]);
  expect(centred).toEqual([-corner[0]]);
  expect(centred).toEqual([board.blank.length / 2]);
});

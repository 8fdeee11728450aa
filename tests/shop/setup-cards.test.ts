import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeBoard } from '../../src/board/index.js';
import { TenonwrightError } from '../../src/errors.js';
import { dot, frame, WORLD } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { polygon } from '../../src/profile/index.js';
import { builtInShop, faceWords, type Holding, type SetupCard, setupCards } from '../../src/shop/index.js';
import { planeOf } from './card-reader.js';
import { off, worst } from './cut-by-cards.js';
import { carded, made } from './made.js';

const DESIGNS = [
  ['stool', {}],
  ['stool', { treads: 2 }],
  ['stool', { rake: 0, taper: 0 }],
  ['stool', { rake: 17, taper: 6, stretcherTenons: 2 }],
  ['frame', {}],
  ['frame', { tenons: 2, railWidth: 120 }],
] as const;

describe.each(DESIGNS)('%s %j', (model, given) => {
  const work = carded(made(model, given));

  test('every mortise stands on one card, or is told to be impossible', () => {
    const mortises = work.design.boards.flatMap(({ board }) =>
      board.mortises.map(({ id }) => `${board.id} ${id}`),
    );
    const told = work.cards.flatMap(({ cuts }) => cuts.map(({ board, mortise }) => `${board} ${mortise}`));
    const uncut = new Set(work.uncut.map(({ board, mortise }) => `${board} ${mortise.id}`));
    expect([...told, ...uncut].toSorted()).toEqual(mortises.toSorted());
  });

  test('a stranger with the card and the board cuts every mortise where it belongs', () => {
    expect(worst(off(work))).toBeLessThan(1e-6);
  });

  test('read off a rule to a tenth of a mm, no mortise is off by more than that rounding', () => {
    for (const row of off(work, 0.1)) {
      expect(row.along, row.where).toBeLessThanOrEqual(0.05 + 1e-9);
      // a wedge adds a second rounded figure to the rail's distance
      expect(row.across, row.where).toBeLessThanOrEqual(0.1 + 1e-9);
    }
  });
});

test('for all stools and frames that can be made, cutting by the cards gives the mortises', () => {
  const stools = fc.record({
    treads: fc.constantFrom(1, 2),
    rake: fc.integer({ min: 0, max: 18 }),
    taper: fc.integer({ min: 0, max: 8 }),
    treadThickness: fc.integer({ min: 20, max: 40 }),
    sideThickness: fc.integer({ min: 20, max: 40 }),
    treadTenons: fc.integer({ min: 1, max: 3 }),
    stretcherTenons: fc.integer({ min: 1, max: 2 }),
    cutter: fc.constantFrom(6, 8, 10),
  });
  const frames = fc.record({
    length: fc.integer({ min: 300, max: 900 }),
    width: fc.integer({ min: 300, max: 900 }),
    railWidth: fc.integer({ min: 40, max: 120 }),
    tenons: fc.integer({ min: 1, max: 2 }),
    cutter: fc.constantFrom(6, 8, 10),
  });
  let read = 0;
  const check = (model: 'stool' | 'frame') => (given: object) => {
    let design: ReturnType<typeof made>;
    try {
      design = made(model, given as Record<string, unknown>);
    } catch (error) {
      if (error instanceof TenonwrightError) return;
      throw error;
    }
    const rows = off(carded(design));
    read += rows.length;
    expect(worst(rows)).toBeLessThan(0.05);
  };
  fc.assert(fc.property(stools, check('stool')), { seed: 31, numRuns: 12 });
  fc.assert(fc.property(frames, check('frame')), { seed: 32, numRuns: 12 });
  expect(read).toBeGreaterThan(100);
});

test('what is not on the card is not known: a mortise cut by a card with one wrong number is off', () => {
  const work = carded(made('stool'));
  const shifted: readonly SetupCard[] = work.cards.map((card) => ({
    ...card,
    cuts: card.cuts.map((cut) => ({ ...cut, ends: [cut.ends[0] + 0.2, cut.ends[1] + 0.2] as const })),
  }));
  for (const row of off({ ...work, cards: shifted })) expect(row.along).toBeCloseTo(0.2, 6);
});

test('both sides of a stool share their set-ups, and are told apart as left and right', () => {
  const { cards } = carded(made('stool', { treads: 2 }));
  for (const card of cards.filter(({ cuts }) => cuts.some(({ board }) => board.endsWith('-side')))) {
    const boards = card.cuts.map(({ board, hand }) => `${board} ${hand}`);
    expect(boards.filter((one) => /^left-(side|step) left/.test(one)).length).toBe(boards.length / 2);
    expect(boards.filter((one) => /^right-(side|step) right/.test(one)).length).toBe(boards.length / 2);
  }
});

test('the reference face lies against the near rail wherever the rails bear on the wide faces', () => {
  const { cards } = carded(made('stool'));
  const held = cards
    .flatMap(({ cuts }) => cuts)
    .filter(({ nearFace, farFace }) => [nearFace, farFace].some((face) => face?.endsWith('-face')));
  expect(held.length).toBeGreaterThan(4);
  for (const { nearFace, farFace } of held) {
    expect(nearFace).toBe('reference-face');
    expect(farFace).toBe('opposite-face');
  }
});

test('set-ups come in the order of the work, and are numbered in it', () => {
  const { cards } = carded(made('stool', { treads: 2 }));
  const stages = cards.map(({ stage }) => ['milled blank', 'ends cut', 'outline cut'].indexOf(stage));
  expect(stages).toEqual(stages.toSorted());
  expect(cards.map(({ id }) => id)).toEqual(cards.map((_, i) => `S${i + 1}`));
});

test('depth is zeroed anywhere on the face that is cut into, for it lies flat under the plate, bevelled or not', () => {
  const { design, cards } = carded(made('stool'));
  for (const { zeroPoint, cuts } of cards) {
    const told = cuts.map(({ board: id, face, mortise: own }) => {
      const { board } = design.boards.find((placed) => placed.board.id === id)!;
      const mortise = board.mortises.find((one) => one.id === own)!;
      // square to the mortise: the router goes down along it, whatever point it is zeroed on
      expect(Math.abs(dot(planeOf(board, face).normal, mortise.at.z))).toBeCloseTo(1, 9);
      return faceWords(board, face);
    });
    const on = /^on the (.+)$/.exec(zeroPoint)![1]!.split(' or the ');
    expect(on.toSorted()).toEqual([...new Set(told)].toSorted());
  }
});

describe('what the shop file does not say is not verified, never passed', () => {
  const bare = {
    ...builtInShop('mm'),
    name: 'bare',
    cutters: [],
    router: { base: builtInShop('mm').router.base },
  };
  const full = {
    ...builtInShop('mm'),
    cutters: [
      {
        nominal: 8,
        diameter: 8,
        cuttingLength: 40,
        overallLength: 90,
        shank: 8,
        slotInFace: 8.04,
        slotInEnd: 8.06,
      },
    ],
  };
  const figuresWith = (shop: Parameters<typeof carded>[1]) =>
    carded(made('stool'), shop).cards.flatMap(({ figures }) => figures);

  test('with nothing but a base', () => {
    const verdicts = figuresWith(bare)
      .filter(({ name }) => name !== 'support under the plate')
      .map(({ verdict }) => verdict);
    expect(new Set(verdicts)).toEqual(new Set(['not verified']));
  });

  test('with everything measured', () => {
    const verdicts = figuresWith(full)
      .filter(({ name }) => name !== 'edge guide instead of the guide board')
      .map(({ verdict }) => verdict);
    expect(new Set(verdicts)).toEqual(new Set(['passed']));
  });

  test.each([
    ['overallLength', 'cutter long enough'],
    ['cuttingLength', 'cutting edges long enough'],
    ['shank', 'collet fits the shank'],
    ['slotInEnd', 'slot width'],
  ] as const)('without %s: %s', (left, name) => {
    const { [left]: _, ...cutter } = full.cutters[0]!;
    const shop = { ...full, cutters: [cutter] };
    const verdicts = figuresWith(shop)
      .filter((figure) => figure.name === name)
      .map(({ verdict }) => verdict);
    expect(verdicts).toContain('not verified');
    expect(verdicts).not.toContain('failed');
  });
});

test('reach of cutter and plunge by hand: shank, base, plate and depth', () => {
  // 2 × 8 in the collet + 10 base + 12 plate + 31.2 deep = 69.2
  const { cards } = carded(made('stool'));
  const { figures, depth } = cards.find(({ way }) => way === 'both rails')!;
  expect(depth).toBeCloseTo(31.2, 9);
  const figure = (name: string) => figures.find((one) => one.name === name)!;
  expect(figure('cutter long enough').needed).toBeCloseTo(69.2, 9);
  expect(figure('plunge travel').needed).toBeCloseTo(43.2, 9);
  expect(figure('cutting edges long enough').needed).toBeCloseTo(31.2, 9);
});

test.each([
  [69.3, 'passed'],
  [69.1, 'failed'],
] as const)('a cutter %d mm long over all has %s where 69.2 mm are needed', (overallLength, verdict) => {
  const shop = {
    ...builtInShop('mm'),
    cutters: [{ nominal: 8, cuttingLength: 32, overallLength, shank: 8 }],
  };
  // held as with a long enough cutter: with a short one the jig is not taken at all
  const verdicts = setupCards({ ...carded(made('stool')), shop })
    .filter(({ way }) => way === 'both rails')
    .flatMap(({ figures }) => figures)
    .filter(({ name }) => name === 'cutter long enough')
    .map((figure) => figure.verdict);
  expect(new Set(verdicts)).toEqual(new Set([verdict]));
});

describe('a lone rail on a tapered edge, over a wedge that tapers along the mortise', () => {
  // the edge comes in by 20 mm over 300; half way it is 90 mm from the reference edge, 30 mm from the mortise
  const board = {
    ...makeBoard({
      id: 'leg',
      blank: { length: 300, width: 100, thickness: 24 },
      outline: polygon([
        { x: 0, y: 0 },
        { x: 300, y: 0 },
        { x: 300, y: 80 },
        { x: 0, y: 100 },
      ]),
    }),
    mortises: [
      {
        id: 'leg/rail/1',
        face: 'opposite-face',
        at: frame([150, 60, 24], [0, 0, 1], [1, 0, 0]),
        width: 8,
        length: 40,
        depth: 12,
        joint: 'leg/rail',
        tenon: 'leg/rail/1',
      },
    ],
  };
  const design = { ...made('frame'), boards: [{ board, place: WORLD }], joints: [] };
  const angleDeg = (Math.atan(20 / 300) * 180) / Math.PI;
  const wedge = { aid: 'wedge-4', angleDeg, thickEnd: 'end', thicknessAtMouth: 10, place: WORLD } as const;
  const holding: Holding = {
    board: 'leg',
    mortise: board.mortises[0]!,
    stage: 'outline cut',
    way: 'one rail',
    far: { face: 'edge-3', toFace: 30, toRail: 40, wedge },
    along: { from: 'reference-end', side: 'start', centre: 150 },
    travelling: { what: 'jig plate', along: 269 },
    stopDistance: 150.5,
    stopsBeyond: [0, 0],
    depthBlock: 'depth-block-12',
    supports: [],
    raised: 0,
    refused: [],
    broken: [],
  };
  const { jig, shop } = carded(made('frame'));
  const cards = setupCards({ design, holdings: [holding], aids: [], jig, shop });

  test('is set as the near rail, the work turned end for end', () => {
    expect(cards).toHaveLength(1);
    expect(cards[0]!.nearRail).toMatchObject({ distance: 40, toWork: 30, wedge: { thickEnd: 'start' } });
    expect(cards[0]!.farRail).toBeUndefined();
    expect(cards[0]!.cuts[0]).toMatchObject({ nearFace: 'edge-3', farFace: undefined });
  });

  test('gives the mortise back', () => {
    const [row] = off({ design, cards } as unknown as ReturnType<typeof carded>);
    expect(worst([row!])).toBeLessThan(1e-6);
  });
});

test('a slot off its place is brought back by half the difference of its walls', () => {
  const { cards } = carded(made('stool'));
  const card = cards.find(({ nearRail, farRail }) => nearRail?.wedge && farRail)!;
  const { nearWall, farWall, correction } = card.testCut;
  expect(nearWall! + farWall! + card.slotWidth).toBeCloseTo(card.nearRail!.toWork + card.farRail!.toWork, 9);
  // cut 0.4 mm too far from the near face
  const [near, far] = [nearWall! + 0.4, farWall! - 0.4];
  expect((near - far - (nearWall! - farWall!)) / 2).toBeCloseTo(0.4, 9);
  expect(correction).toContain(`(near wall − far wall) − (${speaker('mm').length(nearWall! - farWall!)})`);
  expect(correction).toContain('a positive one moves the slot towards the near face');
});

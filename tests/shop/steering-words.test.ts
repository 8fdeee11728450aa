import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { cross, dot, frame, pointOut, scale, subtract, unit, type Vec3 } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import {
  builtInShop,
  type CardCut,
  type SetupCard,
  setupPaper,
  tenonSchedule,
  wordsOf,
} from '../../src/shop/index.js';
import { feedWords } from '../../src/shop/set-up/feed.js';
import { edgeGuideFor } from '../../src/shop/set-up/guide-figures.js';
import { boardBody, type Kernel, startKernel, stockBody } from '../../src/solid/index.js';
import { alone, mortiseOn } from './at-hand.js';
import { planeOf } from './card-reader.js';
import { carded, made } from './made.js';
import { turnedSeat } from './turned-joints.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const DESIGNS = [
  carded(made('stool')),
  carded(made('stool', { rake: 17, taper: 6, stretcherTenons: 2 })),
  carded(made('stool', { treads: 2 })),
  carded(made('frame')),
  // a jig that does not reach the end of the tread leaves it to the guide board
  carded(made('stool'), builtInShop('mm'), { workMax: 60 }),
  // a jig that reaches the end of the tread holds it by one rail
  carded(made('stool'), builtInShop('mm'), { workMax: 90 }),
  // mortises a little askew in a square leg want wedges that taper along it, whichever way round the leg lies in the jig
  ...[3, -3, 177, 183].map((deg) => carded(askew(deg), builtInShop('mm'), { workMax: 100 })),
];

function askew(deg: number): Design {
  const turn = (deg * Math.PI) / 180;
  const board = makeBoard({ id: 'leg', blank: { length: 300, width: 40, thickness: 40 } });
  const at = frame([150, 20, 40], [0, 0, 1], [Math.cos(turn), Math.sin(turn), 0]);
  return alone({ ...board, mortises: [mortiseOn('opposite-face', at)] });
}
const CARDS = DESIGNS.flatMap((work) => work.cards.map((card) => ({ work, card })));
const told = (way: SetupCard['way']) => CARDS.filter(({ card }) => card.way === way);

const paperOf = ({ work, card }: (typeof CARDS)[number]) =>
  setupPaper({ ...work, cards: [card], sticks: [], revision: '0' });

/** What is said once before all cards. */
const saidOf = (one: (typeof CARDS)[number]): string =>
  paperOf(one)
    .flatMap((block) => (block.kind === 'list' ? block.items.map(wordsOf) : []))
    .join(' ');

/** What is said from these words on. */
const sentence = (said: string, start: string): string => {
  expect(said).toContain(start);
  return said.slice(said.indexOf(start), said.indexOf(start) + 250);
};

/** Rows of the settings of a card, as its paper tells them. */
function settingsOf(one: (typeof CARDS)[number]): ReadonlyMap<string, string> {
  const paper = paperOf(one);
  const table = paper.find((block) => block.kind === 'table' && block.head.join() === 'set,to');
  if (table?.kind !== 'table') throw new Error('no settings');
  return new Map(table.rows.map(([name, to]) => [wordsOf(name!), wordsOf(to!)]));
}

/**
 * The mean force of the wood on a cutter that turns clockwise seen from above, x to the person's right and y away from them:
 * every edge in the wood is pushed back against its own way. Summed over the half of the cutter that cuts new wood.
 */
function forceOn(feed: readonly [number, number]): readonly [number, number] {
  let [fx, fy] = [0, 0];
  for (let deg = 0; deg < 360; deg += 1) {
    const a = (deg * Math.PI) / 180;
    const [rx, ry] = [Math.cos(a), Math.sin(a)];
    const chip = rx * feed[0] + ry * feed[1];
    if (chip <= 0) continue;
    // a hand of a clock at twelve moves to the right: (0, 1) goes to (1, 0)
    fx -= chip * ry;
    fy += chip * rx;
  }
  return [fx, fy];
}

const feedOf = (words: string): readonly [number, number] => {
  if (words.includes('from left to right')) return [1, 0];
  if (words.includes('from right to left')) return [-1, 0];
  throw new Error(`no feed in: ${words}`);
};

describe('the feed closes what guides the router', () => {
  test('a cutter fed away from the person is pushed to the left', () => {
    const [x] = forceOn([0, 1]);
    expect(x).toBeLessThan(0);
  });

  test('against a guide board beyond the router the cut pushes the base', () => {
    const cards = told('guide board');
    expect(cards.length).toBeGreaterThan(2);
    for (const one of cards) {
      expect(one.card.feed).toContain('the guide board beyond the router');
      // the router has to be pushed away from the person
      expect(forceOn(feedOf(one.card.feed))[1]).toBeGreaterThan(0);
      expect(settingsOf(one).get('guide board')).toMatch(/^beyond the mortise/);
      expect(one.card.feed).toMatch(/ only, /);
      expect(settingsOf(one).get('feed')).toBe(one.card.feed);
      expect(saidOf(one)).toMatch(
        /Feed along a guide board: only the way the card says: .*; lift the cutter for the way back\./,
      );
    }
  });

  test('a rail on the side of the person is pulled against the work, and the feed of two rails does the same', () => {
    for (const { card } of [...told('one rail'), ...told('both rails')]) {
      expect(card.nearRail).toBeDefined();
      expect(forceOn(feedOf(card.feed))[1]).toBeGreaterThan(0);
    }
    for (const { card } of told('both rails')) expect(card.feed).toContain('the near rail towards you');
    for (const one of told('one rail')) {
      expect(settingsOf(one).get('feed')).toMatch(/ only, the rail on your side of the work$/);
      expect(saidOf(one)).toMatch(/Feed along one rail: only .*; lift the cutter for the way back\./);
    }
    for (const one of told('both rails'))
      expect(forceOn(feedOf(sentence(saidOf(one), 'Feed between two rails')))[1]).toBeGreaterThan(0);
  });

  test('a single rail is closed from either side of the work', () => {
    const { holding } = { holding: { way: 'one rail' } } as Parameters<typeof feedWords>[0];
    const rail = { face: 'reference-face', toFace: 20, toRail: 20 };
    const near = feedWords({ holding, near: rail, far: undefined });
    expect(near).toContain('the rail on your side of the work');
    // a rail on the near side has to be pulled away from the person, one beyond the work towards them
    expect(forceOn(feedOf(near))[1]).toBeGreaterThan(0);
    const far = feedWords({ holding, near: undefined, far: rail });
    expect(far).toContain('the rail beyond the work');
    expect(forceOn(feedOf(far))[1]).toBeLessThan(0);
  });

  test('an edge guide is offered on a named edge, at its distance, and with the feed that pulls its fence against it', () => {
    const shop = { ...builtInShop('mm'), router: { ...builtInShop('mm').router, guideReach: 160 } };
    const work = carded(made('stool'), shop, { workMax: 60 });
    let offered = 0;
    for (const card of work.cards) {
      const said = saidOf({ work, card });
      expect(said.includes('Or by edge guide')).toBe(card.cuts.some(({ edgeGuide }) => edgeGuide));
      if (said.includes('Or by edge guide')) {
        expect(said).toContain('that edge is towards you');
        expect(forceOn(feedOf(sentence(said, 'Or by edge guide')))[1]).toBeGreaterThan(0);
      }
      for (const { board: id, mortise, edgeGuide, horn } of card.cuts) {
        if (!edgeGuide) continue;
        offered += 1;
        const { board } = work.design.boards.find((placed) => placed.board.id === id)!;
        const { at } = board.mortises.find((one) => one.id === mortise)!;
        const edge = planeOf(board, edgeGuide.face);
        expect(Math.abs(dot(at.x, edge.normal))).toBeLessThan(1e-6);
        expect(Math.abs(dot(at.z, edge.normal))).toBeLessThan(1e-6);
        const away = dot(subtract(edge.point, at.origin), edge.normal);
        const beyond = Math.abs(edge.normal[0]) > 0.9 ? hornOf(work, id, edgeGuide.face) : 0;
        expect(edgeGuide.distance, `${id} ${mortise} ${horn}`).toBeCloseTo(away + beyond, 6);
        expect(edgeGuide.distance).toBeLessThanOrEqual(160);
      }
    }
    expect(offered).toBeGreaterThan(3);
    // a reach nobody gave is no offer
    const { guideReach: _, ...router } = shop.router;
    const bare = carded(made('stool'), { ...shop, router }, { workMax: 60 });
    expect(bare.cards.flatMap(({ cuts }) => cuts.filter(({ edgeGuide }) => edgeGuide))).toEqual([]);
  });
});

test('beyond an end that still has its horn the fence is set by as much farther, or not offered', () => {
  const side = [
    [-60, -20],
    [60, -20],
    [60, 0],
    [-60, 0],
  ] as const;
  const laid = {
    holding: { way: 'guide board' },
    work: {
      mortise: { length: 90 },
      faces: [{ id: 'reference-end', normal: [0, -1, 0], offset: 41.5, fromTheSide: [side] }],
    },
  } as unknown as Parameters<typeof edgeGuideFor>[0];
  const shop = (guideReach: number) => ({
    ...builtInShop('mm'),
    router: { ...builtInShop('mm').router, guideReach },
  });
  expect(edgeGuideFor(laid, shop(100), () => 0)?.distance).toBe(41.5);
  expect(edgeGuideFor(laid, shop(100), () => 30)?.distance).toBe(71.5);
  expect(edgeGuideFor(laid, shop(60), () => 30)).toBeUndefined();
});

const hornOf = (work: ReturnType<typeof carded>, board: string, end: string): number =>
  Math.max(
    0,
    ...work.holdings
      .filter((one) => one.board === board)
      .map(({ horn }) => (horn?.end === end ? horn.length : 0)),
  );

test('the stops of a guide board are clamped to it and stand on it, those of a rail to the work', () => {
  for (const one of CARDS.filter(({ card }) => !card.window)) {
    const words = settingsOf(one).get('stops')!;
    const aids = one.work.aids.filter(
      ({ kind, board }) => kind === 'guide board' && one.card.aids.includes(board.id),
    );
    if (one.card.way === 'guide board') {
      expect(words).toContain('clamped to the guide board');
      expect(aids).toHaveLength(1);
      // a foot of 20 mm beside each stop
      expect(aids[0]!.board.blank.length / 2).toBeGreaterThanOrEqual(one.card.stopDistance + 20);
    } else {
      expect(words).not.toContain('guide board');
      expect(saidOf(one)).toContain('Between rails they are blocks clamped to the work');
    }
  }
});

/** The person's own axes while the work lies as the card says: right, away, up; board frame. */
function personOf(cut: CardCut, board: Parameters<typeof planeOf>[0]) {
  const up = planeOf(board, cut.face).normal;
  const [face, sign] = cut.nearFace !== undefined ? [cut.nearFace, -1] : [cut.farFace!, 1];
  const normal = planeOf(board, face).normal;
  const away = unit(scale(subtract(normal, scale(up, dot(normal, up))), sign));
  return { up, away, right: cross(away, up) };
}

test('the thick end of every wedge points where the card says, as its own solid does in its place', () => {
  let wedges = 0;
  const said = new Set<string>();
  for (const { work, card } of CARDS) {
    for (const cut of card.cuts) {
      const { board } = work.design.boards.find((placed) => placed.board.id === cut.board)!;
      const holding = work.holdings.find((one) => one.board === cut.board && one.mortise.id === cut.mortise)!;
      for (const [rail, bearing] of [
        ['near rail', [holding.near, holding.far].find((one) => one?.face === cut.nearFace)],
        ['far rail', [holding.near, holding.far].find((one) => one?.face === cut.farFace)],
      ] as const) {
        if (!bearing?.wedge) continue;
        wedges += 1;
        const words = /thick end (up|down|to your left|to your right)/.exec(
          settingsOf({ work, card }).get(rail)!,
        )![1]!;
        said.add(words);
        const person = personOf(cut, board);
        const way: Vec3 =
          words === 'up'
            ? person.up
            : words === 'down'
              ? scale(person.up, -1)
              : scale(person.right, words === 'to your right' ? 1 : -1);
        const wedge = work.aids.find((aid) => aid.board.id === bearing.wedge!.aid)!.board;
        const body = boardBody(kernel, wedge, stockBody(kernel, wedge));
        const mesh = body.getMesh();
        const corners = Array.from({ length: mesh.numVert }, (_, i): Vec3 => {
          const [x, y, z] = [0, 1, 2].map((k) => mesh.vertProperties[i * mesh.numProp + k]!);
          return pointOut(bearing.wedge!.place, [x!, y!, z!]);
        });
        body.delete();
        // its thickness at either end of that way, across the work
        const along = corners.map((p) => dot(p, way));
        const middle = (Math.min(...along) + Math.max(...along)) / 2;
        const thick = (end: (at: number) => boolean) => {
          const there = corners.filter((_, i) => end(along[i]!)).map((p) => dot(p, person.away));
          return Math.max(...there) - Math.min(...there);
        };
        const [there, opposite] = [thick((at) => at > middle), thick((at) => at < middle)];
        expect(there, `${card.id} ${cut.mortise}: ${words}`).toBeGreaterThan(opposite + 0.5);
      }
    }
  }
  expect(wedges).toBeGreaterThan(8);
  expect(said).toEqual(new Set(['up', 'down', 'to your left', 'to your right']));
});

describe('a test cut that is off is put right by what the card says', () => {
  const wallsAt = (near: number, far: number, slot: number) => [near - slot / 2, far - slot / 2] as const;

  test('with two rails both walls come out right, whichever way the slot was off', () => {
    const cards = CARDS.filter(
      ({ card }) => card.testCut.nearWall !== undefined && card.testCut.farWall !== undefined,
    );
    expect(cards.length).toBeGreaterThan(2);
    for (const { card } of cards) {
      const { correction, nearWall, farWall } = card.testCut;
      const [, nearMove, farMove] =
        /a positive one moves the slot towards the near face, so set the near rail (closer|farther) by the shift and the far rail (closer|farther) by as much/.exec(
          correction,
        )!;
      for (const error of [0.8, -1.3]) {
        // rails as distances from the cutter to the work's faces; the slot lies `error` too far from the near face
        const [near, far] = [card.nearRail!.toWork + error, card.farRail!.toWork - error];
        const [a, b] = wallsAt(near, far, card.slotWidth);
        const shift = (a - b - (nearWall! - farWall!)) / 2;
        const moved = (distance: number, word: string) => distance + (word === 'closer' ? -shift : shift);
        const right = wallsAt(moved(near, nearMove!), moved(far, farMove!), card.slotWidth);
        expect(right[0]).toBeCloseTo(nearWall!, 9);
        expect(right[1]).toBeCloseTo(farWall!, 9);
      }
    }
  });

  test('with one rail a wall too thick is mended by a rail nearer to the cutter', () => {
    const cards = CARDS.filter(
      ({ card }) => (card.testCut.nearWall === undefined) !== (card.testCut.farWall === undefined),
    );
    expect(cards.length).toBeGreaterThan(0);
    for (const { card } of cards) {
      const { correction, nearWall, farWall } = card.testCut;
      const rail = nearWall === undefined ? card.farRail! : card.nearRail!;
      const [, thick] =
        /move the rail by the difference, (towards the cutter|away) when the wall is too thick, (?:towards the cutter|away) when it is too thin/.exec(
          correction,
        )!;
      // the rail stands too far off, so the wall is too thick by as much
      const off = 0.7;
      const moved = rail.toWork + off + (thick === 'away' ? off : -off);
      expect(moved - card.slotWidth / 2).toBeCloseTo((nearWall ?? farWall)!, 9);
    }
  });

  test('with a guide board the guide and the slot move alike: away from the face that is measured from when the slot is too near', () => {
    const cards = told('guide board').filter(({ card }) => card.cuts.every(({ marked }) => !marked));
    expect(cards.length).toBeGreaterThan(2);
    for (const { card } of cards)
      expect(card.testCut.correction).toMatch(
        /move the guide by the difference, away from the face when it is too little/,
      );
  });
});

test('a turned slot that was moved as its correction says has its walls alike on both sides of the line', () => {
  const { cards } = carded(turnedSeat({ legs: [{ at: [110, 120], turnDeg: 31 }] }));
  const marked = cards.filter(({ cuts }) => cuts.some((cut) => cut.marked));
  const texts = new Set(marked.map(({ testCut }) => testCut.correction));
  expect(texts.size).toBe(1);
  const [, which] = /by half the difference, towards the (nearer|farther) wall$/.exec([...texts][0]!)!;
  for (const off of [-1.3, 0.4, 2]) {
    // walls on the left and on the right of the line, seen from it
    const walls = (middle: number) => [4 - middle, 4 + middle] as const;
    const [left, right] = walls(off);
    const nearer = left < right ? -1 : 1;
    const moved = off + (which === 'nearer' ? 1 : -1) * nearer * (Math.abs(left - right) / 2);
    const [afterLeft, afterRight] = walls(moved);
    expect(afterLeft).toBeCloseTo(afterRight, 9);
  }
});

describe('every pass can be set', () => {
  test('a pass that no turret step gives has a spacer that leaves its depth', () => {
    const { turretSteps = [] } = builtInShop('mm').router;
    let spaced = 0;
    for (const { card } of CARDS) {
      for (const { depth, turretStep, spacer } of card.passes) {
        expect(spacer === undefined).toBe(turretStep !== undefined);
        // the rod comes to rest on the step, or on what lies on it
        const rests = spacer
          ? turretSteps[spacer.onStep - 1]! + spacer.thickness
          : turretSteps[turretStep! - 1]!;
        expect(card.depth - rests).toBeCloseTo(depth, 9);
        if (spacer) spaced += 1;
      }
    }
    expect(spaced).toBeGreaterThan(5);
  });

  test('every pass and every spacer is told', () => {
    for (const one of CARDS) {
      const rows = paperOf(one).flatMap((block) =>
        block.kind === 'table' && block.head.includes('passes') ? block.rows : [],
      );
      expect(rows).toHaveLength(1);
      const passes = wordsOf(rows[0]![2]!).split('; ');
      expect(passes).toHaveLength(one.card.passes.length);
      for (const [i, words] of passes.entries()) {
        const { depth, spacer } = one.card.passes[i]!;
        const told = [...words.matchAll(/([\d.]+) mm/g)];
        expect(told.map(([, mm]) => Number(mm))).toEqual(
          [depth, ...(spacer ? [spacer.thickness] : [])].map((value) => expect.closeTo(value, 1)),
        );
      }
    }
  });

  test('the plunges are told pass by pass', () => {
    for (const one of CARDS) expect(saidOf(one)).toMatch(/Plunges: for each pass/);
  });
});

test('the short-piece caution stands on every card that cuts a piece shorter than the saw may be given, and on no other', () => {
  const seen = new Set<boolean>();
  for (const saw of [100, 200, 211, 300, 421, undefined]) {
    const { saw: _, ...shortest } = builtInShop('mm').shortest;
    const work = carded(made('stool'), {
      ...builtInShop('mm'),
      shortest: saw === undefined ? shortest : { ...shortest, saw },
    });
    for (const { cuts, cautions } of work.cards) {
      const lengths = cuts.map(
        ({ board: id }) => work.design.boards.find(({ board }) => board.id === id)!.board.blank.length,
      );
      // where the shop file says nothing 300 mm are taken: common practice, no source
      const isShort = Math.min(...lengths) < (saw ?? 300);
      seen.add(isShort);
      expect(cautions.some((text) => text.startsWith('Short piece: hold it'))).toBe(isShort);
    }
  }
  expect(seen.size).toBe(2);
});

test('the guide board lies beyond the mortise, its edge where the card measures it', () => {
  let guides = 0;
  for (const { work, card } of told('guide board')) {
    for (const cut of card.cuts) {
      if (!cut.across || cut.guideEdge === undefined) continue;
      guides += 1;
      const { board } = work.design.boards.find((placed) => placed.board.id === cut.board)!;
      const { guide, mortise } = work.holdings.find(
        (one) => one.board === cut.board && one.mortise.id === cut.mortise,
      )!;
      const from = planeOf(board, cut.across.from);
      const inwards = (p: Vec3) => dot(subtract(from.point, p), from.normal) + cut.across!.horn;
      // the guide as it is put on the board: its working edge, and its middle on the side away from the cutter
      const edge = guide!.place.origin;
      const { width } = work.aids.find((aid) => aid.board.id === guide!.aid)!.board.blank;
      const middle = pointOut(guide!.place, [0, width / 2, 0]);
      expect(inwards(edge)).toBeCloseTo(cut.guideEdge, 6);
      expect(Math.abs(inwards(edge) - cut.across.centre)).toBeCloseTo(card.guideOffset!, 6);
      const away = inwards(mortise.at.origin);
      expect(Math.sign(inwards(middle) - inwards(edge))).toBe(Math.sign(inwards(edge) - away));
    }
  }
  expect(guides).toBeGreaterThan(5);
});

test('a tenon that is too thick is the one that wants a mallet, one that is too thin drops out', () => {
  const say = speaker('mm');
  for (const work of DESIGNS) {
    for (const { fit } of tenonSchedule(work.design, work.shop, say)) {
      expect(fit.go).toMatch(/by hand pressure alone, and does not fall out/);
      expect(fit.noGo).toMatch(/^needs a mallet \(too thick.*drops out \(too thin/);
    }
  }
});

import { describe, expect, test } from 'vitest';
import { markdown, marksSvg } from '../../src/files/index.js';
import { speaker } from '../../src/length/index.js';
import {
  boardMarks,
  builtInShop,
  type GlueUpPaper,
  glueUpPaper,
  orderOfWork,
  orderPaper,
  setupPaper,
  storySticks,
} from '../../src/shop/index.js';
import { carded, made } from '../shop/made.js';
import { emptyPapers } from './empty-papers.js';

const papersOf = (model: 'stool' | 'frame' | 'jig', given: Readonly<Record<string, unknown>> = {}) => {
  const work = carded(made(model, given));
  const { design, cards, holdings, shop } = work;
  const sticks = storySticks(design, cards);
  const order = orderOfWork(design, holdings, cards);
  const revision = '0badf00d';
  return {
    ...work,
    sticks,
    order,
    setup: markdown(setupPaper({ ...work, sticks, revision })),
    orderText: markdown(orderPaper({ design, order, shop, revision })),
    marks: marksSvg(sticks, { say: speaker('mm'), revision, title: design.title }),
  };
};

/** Rows of all tables in a Markdown text, as cells. */
const rowsIn = (text: string): readonly (readonly string[])[] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .map((line) => line.slice(2, -2).split(' | '));

const stool = papersOf('stool');

describe('set-up cards on paper', () => {
  test('every mortise of every card stands on it by its mark, with its centre', () => {
    const marks = boardMarks(stool.design.boards.map(({ board }) => board.id));
    for (const { id, cuts } of stool.cards) {
      const card = stool.setup.split(`## ${id}:`)[1]!.split('## ')[0]!;
      for (const { mortise, centre, board } of cuts) {
        const all = stool.design.boards.find((one) => one.board.id === board)!.board.mortises;
        const mark = `${marks.get(board)} M${all.findIndex((one) => one.id === mortise) + 1}`;
        const mine = rowsIn(card).find(([first]) => first!.split(', ').includes(mark));
        expect(mine, mark).toBeDefined();
        const said = speaker('mm').length(centre);
        // in its own row, or among what is the same for all
        expect(mine!.includes(said) || card.includes(`; centre ${said}`), mark).toBe(true);
      }
    }
  });

  test('every table has as many cells in each row as in its head', () => {
    const lines = `${stool.setup}${stool.orderText}`.split('\n');
    let cells = 0;
    let tables = 0;
    for (const line of lines) {
      if (!line.startsWith('|')) cells = 0;
      else if (cells === 0) {
        cells = line.split(' | ').length;
        tables += 1;
      } else expect(line.split(' | '), line).toHaveLength(cells);
    }
    expect(tables).toBeGreaterThan(10);
  });

  test('what was not measured stands out as not verified', () => {
    const doubts = [...stool.setup.matchAll(/^- (.*): slot width: cut a test slot .*$/gm)];
    expect(stool.setup).toContain('**Not verified:**');
    expect(doubts.flatMap(([, cards]) => cards!.split(', ')).toSorted()).toEqual(
      stool.cards.map(({ id }) => id),
    );
  });

  test('a rail is set by what a rule finds beside the cutter: the wedge, and the wall the test cut leaves', () => {
    for (const side of ['near', 'far'] as const) {
      const told = rowsIn(stool.setup).filter(([name, to]) => name === `${side} rail` && /flank/.test(to!));
      const railed = stool.cards.filter((card) => card[`${side}Rail`]);
      expect(told.length).toBe(railed.length);
      railed.forEach(({ testCut, ...card }, i) => {
        const [, toRail] = /^([\d.]+) mm from the flank of the cutter/.exec(told[i]![1]!)!;
        const wall = testCut[`${side}Wall`]!;
        const wedge = card[`${side}Rail`]!.wedge?.thicknessAtMouth ?? 0;
        expect(Math.abs(Number(toRail) - wedge - wall), told[i]![1]).toBeLessThanOrEqual(0.05 + 1e-9);
      });
    }
    const passed = stool.setup.indexOf('what passed');
    expect(stool.setup.slice(0, passed)).not.toContain("cutter's centre");
  });

  test('the usual cautions are told', () => {
    for (const words of ['Unplug the router', 'eye, ear and dust', 'No climb cuts', 'Short piece'])
      expect(stool.setup).toContain(words);
  });

  test('every chain printed adds up', () => {
    const chains = [stool, papersOf('stool', { treads: 2 }), papersOf('frame')].flatMap(({ setup }) =>
      rowsIn(setup).filter((row) => row[2]?.includes(' + ') && row[2].endsWith(' mm')),
    );
    expect(chains.length).toBeGreaterThan(10);
    for (const [, , told] of chains) {
      const [parts, total] = told!.replaceAll(' mm', '').split(' = ');
      const sum = parts!.split(' + ').reduce((all, part) => all + Math.round(Number(part) * 10), 0);
      expect(sum, told).toBe(Math.round(Number(total) * 10));
    }
  });

  test('a mortise that the tools at hand cannot cut stands before all cards with its cure, and on none of them', () => {
    const shop = builtInShop('mm');
    const work = carded(made('frame'), { ...shop, router: { ...shop.router, plungeTravel: 20 } });
    expect(work.uncut).toHaveLength(8);
    const text = markdown(setupPaper({ ...work, sticks: [], revision: '0' }));
    expect(text).toContain('## Mortises that cannot be cut');
    expect(text).toContain('cannot be cut with the router and jig at hand: the router must plunge');
    expect(text).toContain('shallower');
    expect(text).not.toContain('| set | to |');
    expect(text).not.toContain('There are no mortises to cut');
  });
});

describe('the order of work on paper', () => {
  test('every step stands in it once, in its order', () => {
    const numbers = rowsIn(stool.orderText)
      .map(([number]) => number!)
      .filter((number) => /^[\d, ]+$/.test(number))
      .flatMap((numbers) => numbers.split(', ').map(Number));
    expect(numbers).toEqual(stool.order.steps.map(({ number }) => number));
  });

  test('a design without mortises has an order too', () => {
    const { orderText, setup } = papersOf('jig');
    expect(orderText).toMatch(/PL base plate \| saw it from the sheet/);
    expect(orderText).toMatch(/PL base plate \| mark 2 slots by the template: drill through at both ends/);
    expect(setup).toContain('There are no mortises to cut.');
  });
});

describe('story sticks', () => {
  const page = /^<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)">$/m;

  test('a millimetre of the file is a millimetre of the paper, with no padding', () => {
    const [, width, height, across, down] = page.exec(stool.marks)!;
    expect([width, height]).toEqual([across, down]);
  });

  test('the bars are 100 mm and 4 in long', () => {
    const lengths = [...stool.marks.matchAll(/h([\d.]+)m0/g)].map(([, length]) => Number(length));
    expect(lengths).toEqual([100, 101.6]);
  });

  test('every mark is drawn as far from the zero end of its strip as it is on the wood', () => {
    // a strip's own edges are its level lines; the marks are the upright ones
    const lines = [
      ...stool.marks.matchAll(/<line x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"/g),
    ].map(([, ...at]) => at.map(Number) as [number, number, number, number]);
    const edges = lines.filter(([x1, , x2]) => x1 !== x2);
    expect(edges).toHaveLength(2 * stool.sticks.length);
    stool.sticks.forEach((stick, i) => {
      const [upper, lower] = [edges[2 * i]!, edges[2 * i + 1]!];
      expect(upper[2] - upper[0]).toBeCloseTo(stick.length, 3);
      const drawn = lines
        .filter(
          ([x1, y1, x2, y2]) =>
            x1 === x2 && Math.min(y1, y2) > upper[1] - 1e-9 && Math.max(y1, y2) < lower[1] + 1e-9,
        )
        .map(([x1]) => x1 - upper[0]);
      for (const { at } of stick.marks) {
        const nearest = Math.min(...drawn.map((x) => Math.abs(x - at)));
        expect(nearest, `${stick.boards[0]!.mark} ${at}`).toBeLessThan(0.002);
      }
    });
  });

  test('the mortises of a board stand on its sticks where they are in the wood', () => {
    const { board } = stool.design.boards.find((placed) => placed.board.id === 'tread')!;
    const stick = stool.sticks.find(
      ({ boards, direction }) => boards[0]!.id === 'tread' && direction === 'across the grain',
    )!;
    const centres = stick.marks.filter(({ kind }) => kind === 'centre').map(({ at }) => at);
    const wanted = board.mortises.map(({ at }) => at.origin[1]);
    expect(centres.toSorted((a, b) => a - b)).toEqual(
      wanted.toSorted((a, b) => a - b).map((at) => expect.closeTo(at, 9)),
    );
  });

  test('mirrored boards share a stick only when their marks fall together', () => {
    const boardsOf = ({ sticks }: ReturnType<typeof papersOf>) =>
      sticks
        .filter(({ direction, setups }) => direction === 'across the grain' && setups.length > 0)
        .map(({ boards }) => boards.map(({ id }) => id).join(' '));
    expect(boardsOf(stool)).toContain('left-side right-side');
    // a stepped side is measured from its back edge on the left and from its front edge on the right
    expect(boardsOf(papersOf('stool', { treads: 2 }))).not.toContain('left-side right-side');
  });
});

test('the same design gives the same papers, byte for byte', () => {
  const again = papersOf('stool');
  expect([again.setup, again.orderText, again.marks]).toEqual([stool.setup, stool.orderText, stool.marks]);
});

test('a cutter off the middle of its base is told with the edge that has to run along the guide', () => {
  const { cards, design, aids, ...work } = carded(made('stool'), {
    ...stool.shop,
    router: { ...stool.shop.router, eccentricity: 0.4 },
  });
  const text = markdown(setupPaper({ ...work, cards, design, aids, sticks: [], revision: '0' }));
  const rows = rowsIn(text).filter(([name]) => name === 'guide board');
  expect(rows).toHaveLength(cards.filter(({ guideOffset }) => guideOffset !== undefined).length);
  expect(rows.length).toBeGreaterThan(0);
  // a base of 150: 75 + 0.4 on one side of the cutter, 75 - 0.4 on the other
  for (const [, to] of rows) {
    expect(to).toContain('working edge 75.4 mm');
    expect(to).toContain('74.6 mm');
  }
  expect(rowsIn(stool.setup).find(([name]) => name === 'guide board')![1]).not.toContain('off the middle');
});

test('a design without joints is not told to be put together dry', () => {
  const { design, shop } = papersOf('jig');
  const empty = { ...emptyPapers(design), design, shop };
  const told = (paper: GlueUpPaper) => markdown(glueUpPaper(paper));
  expect(told(empty)).toContain('Nothing is glued');
  expect(told(empty)).not.toContain('clamp');
  expect(told({ ...empty, design: stool.design })).toContain('dry, with every clamp');
});

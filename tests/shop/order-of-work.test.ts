import { readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { markdown } from '../../src/files/index.js';
import { boardsToFit, builtInShop, orderOfWork, orderPaper, type WorkStep } from '../../src/shop/index.js';
import { type Body, type Kernel, solidsOf, startKernel } from '../../src/solid/index.js';
import { builtPiece, shippedPiece } from '../notation/built-piece.js';
import { carded, made } from './made.js';
import { cut, difference, isThere } from './replay.js';
import { turnedSeat } from './turned-joints.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const DESIGNS = [
  ['stool', {}],
  ['stool', { treads: 2 }],
  ['stool', { treads: 2, steppedSide: 'one-board' }],
  ['stool', { rake: 0, taper: 0, archHeight: 0 }],
  ['stool', { rake: 15, taper: 7, stretcherTenons: 2, treadTenons: 3 }],
  ['frame', {}],
  ['frame', { tenons: 2, railWidth: 120 }],
  ['jig', {}],
] as const;

const ordered = (model: (typeof DESIGNS)[number][0], given: object) => {
  const { design, holdings, cards } = carded(made(model, given as Record<string, unknown>));
  return { design, cards, holdings, order: orderOfWork(design, holdings, cards) };
};

/** The steps of one board done to its wood one after another; what it was before each. */
function replay(steps: readonly WorkStep[], board: Parameters<typeof cut>[3]) {
  const states: (Body | undefined)[] = [];
  let body: Body | undefined;
  for (const step of steps) {
    states.push(body);
    body = cut(kernel, body, step, board);
  }
  return { states, body: body! };
}

describe.each(DESIGNS)('%s %j', (model, given) => {
  const { design, cards, holdings, order } = ordered(model, given);
  const stepsOf = (id: string) => order.steps.filter(({ board }) => board === id);
  const done = new Map<string, ReturnType<typeof replay>>();
  beforeAll(() => {
    for (const { board } of design.boards) done.set(board.id, replay(stepsOf(board.id), board));
  });

  test('the steps, one after another, leave the finished boards', () => {
    const solids = solidsOf(kernel, design);
    for (const { board } of design.boards) {
      const { own } = solids.boards.get(board.id)!;
      const left = order.notOrdered.filter((one) => one.board === board.id).map(({ mortise }) => mortise);
      const { body: worked } = done.get(board.id)!;
      const body = cut(kernel, worked, { kind: 'mortise', cuts: left } as unknown as WorkStep, board);
      expect(difference(body, own) / own.volume(), board.id).toBeLessThan(1e-6);
    }
  });

  test('every face a step is held by or measured from is there, and flat, when its turn comes', () => {
    const missing = design.boards.flatMap(({ board }) => {
      const steps = stepsOf(board.id);
      const { states } = done.get(board.id)!;
      return steps.flatMap((step, i) =>
        step.uses.filter((id) => !isThere(states[i]!, board, id)).map((id) => `${step.id} uses ${id}`),
      );
    });
    expect(missing).toEqual([]);
  });

  test('every face a step makes is there after it and was not before', () => {
    for (const { board } of design.boards) {
      const steps = stepsOf(board.id);
      const { states, body } = done.get(board.id)!;
      steps.forEach((step, i) => {
        const after = states[i + 1] ?? body;
        for (const id of step.makes) {
          expect(isThere(after, board, id), `${step.id} makes ${id}`).toBe(true);
          if (states[i]) expect(isThere(states[i], board, id), `${step.id} makes ${id}`).toBe(false);
        }
      });
    }
  });

  test('every mortise, hole, slot and opening is cut once, or told as one that cannot be', () => {
    for (const { board } of design.boards) {
      const { mortises, holes, slots, openings, bevels } = board;
      const ids = [mortises, holes, slots, openings, bevels].flat().map(({ id }) => id);
      expect(
        [
          ...stepsOf(board.id).flatMap(({ cuts }) => cuts),
          ...order.notOrdered.filter((one) => one.board === board.id).map(({ mortise }) => mortise),
        ].toSorted(),
      ).toEqual(ids.toSorted());
    }
  });

  test('a horn stays on until every mortise it holds up or is measured over is cut', () => {
    for (const { board } of design.boards) {
      const steps = stepsOf(board.id);
      const off = steps.findIndex(({ kind }) => kind === 'trim horn');
      const wanting = steps.findLastIndex(
        ({ cuts, kind }) =>
          kind === 'mortise' &&
          cuts.some(
            (id) =>
              cards.some((card) =>
                card.cuts.some((one) => one.mortise === id && one.board === board.id && one.horn > 0),
              ) || holdings.some((one) => one.mortise.id === id && one.board === board.id && one.horn),
          ),
      );
      if (wanting >= 0) expect(off, board.id).toBeGreaterThan(wanting);
    }
  });

  test('cards are done in their order, and one is finished before the next begins', () => {
    const toFit = order.fitAfter;
    const done = order.steps
      .filter(({ kind, board }) => kind === 'mortise' && !toFit.has(board!))
      .map(({ setup }) => setup);
    const known = cards.map(({ id }) => id);
    expect(done).toEqual(done.toSorted((a, b) => known.indexOf(a!) - known.indexOf(b!)));
  });
});

test('a mortise cut after foot and taper took the end and edge it is measured from is found by the replay', () => {
  const { design, order } = ordered('stool', {});
  const { board } = design.boards.find((placed) => placed.board.id === 'left-side')!;
  const steps = order.steps.filter((step) => step.board === board.id);
  const early = steps.find(({ kind, uses }) => kind === 'mortise' && uses.includes('reference-edge'))!;
  const late = [...steps.filter((step) => step !== early), early];
  const { states } = replay(late, board);
  const missing = early.uses.filter((id) => !isThere(states.at(-1)!, board, id));
  expect(missing).toEqual(['reference-end', 'reference-edge']);
});

test('in a tapered side the mortises come before the taper', () => {
  const { order } = ordered('stool', {});
  const kinds = order.steps.filter(({ board }) => board === 'left-side').map(({ kind }) => kind);
  expect(kinds.lastIndexOf('mortise')).toBeLessThan(kinds.indexOf('outline'));
});

test('the stretcher, which fills a gap the sides leave, waits for a dry fit; everything else is cut now', () => {
  const { design, order } = ordered('stool', {});
  expect(boardsToFit(design)).toEqual(new Set(['stretcher']));
  const fit = order.steps.find(({ kind }) => kind === 'dry fit')!;
  expect(order.fitAfter).toEqual(new Map([['stretcher', fit.number]]));
  for (const step of order.steps) {
    if (step.board === 'stretcher') expect(step.number).toBeGreaterThan(fit.number);
    else if (step.board !== undefined) expect(step.number).toBeLessThan(fit.number);
  }
});

test('rails of a frame come in pairs sawn to one stop, and none waits for a fit', () => {
  expect(ordered('frame', {}).order.fitAfter.size).toBe(0);
});

test.each(readdirSync(new URL('../../pieces/', import.meta.url)).map((file) => file.replace(/\.yaml$/, '')))(
  'every figure of the work on the %s is a number, and boards that wait for a fit wait for others that do not',
  (name) => {
    const { design, holdings, cards } = carded(builtPiece(shippedPiece(name)));
    const { steps, fitAfter } = orderOfWork(design, holdings, cards);
    const figures = steps.flatMap((step) => step.figures);
    expect(figures.filter(({ value }) => !Number.isFinite(value))).toEqual([]);
    expect(fitAfter.size).toBeLessThan(design.boards.length);
  },
);

test('in a ring of four boards that are all different one closes the gap the others leave', () => {
  const rail = (thick: number) => `wide: ${thick}, like: piece }`;
  const ring = builtPiece(
    `design: ring\ntitle: Ring\nwood: white ash\npiece: [500, 28, 400]\nboards:
  left board: { grain: up, face: front, left: piece, ${rail(50)}
  right board: { grain: up, face: front, right: piece, ${rail(55)}
  lower: { grain: left-right, face: front, between: left board and right board, bottom: piece, ${rail(60)}
  upper: { grain: left-right, face: front, between: left board and right board, top: piece, ${rail(65)}
joints:\n  lower and upper to left board and right board:\n`,
  );
  expect(boardsToFit(ring)).toEqual(new Set(['lower']));
});

test('a board is milled face first, then the edge square to it, then thickness and width, the ends last', () => {
  const mills = ordered('stool', {}).order.steps.filter(({ kind }) => kind === 'mill');
  expect(mills.length).toBeGreaterThan(3);
  for (const { what } of mills) {
    const places = [
      'reference face flat',
      'reference edge square to it',
      'thickness',
      'width',
      'both ends',
    ].map((words) => what.indexOf(words));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  }
});

test('the ends of a raked side are parallel, those of a stretcher between raked sides mirrored', () => {
  const { order } = ordered('stool', {});
  const endsOf = (id: string) => order.steps.find(({ board, kind }) => board === id && kind === 'cut ends')!;
  expect(endsOf('left-side').what).toMatch(/ends parallel/);
  expect(endsOf('stretcher').what).toMatch(/ends mirrored/);
  const tilts = endsOf('left-side').figures.filter(({ name }) => name.startsWith('blade tilt'));
  expect(tilts.map(({ value }) => value)).toEqual([expect.closeTo(10, 9), expect.closeTo(10, 9)]);
  // the blade leans over the face of a side; the fence turns for a stretcher, whose cut stays square to its face
  const told = (id: string, start: string) => endsOf(id).figures.filter(({ name }) => name.startsWith(start));
  expect(told('left-side', 'mitre')).toEqual([]);
  expect(told('stretcher', 'blade tilt')).toEqual([]);
  expect(told('stretcher', 'mitre').map(({ value }) => value)).toEqual([
    expect.closeTo(10, 9),
    expect.closeTo(10, 9),
  ]);
  // 70 mm wide, 10°: each end loses 70·tan 10° = 12.343 mm from the long to the short edge
  const at = (name: string) => endsOf('stretcher').figures.find((figure) => figure.name === name)!.value;
  expect(at('long point to long point') - at('short point to short point')).toBeCloseTo(2 * 12.3429, 3);
});

test('a mortise that cannot be cut with what is at hand is never ordered, and why is told before the first step', () => {
  // plunge enough for the seat, too little for the end of the leg
  const design = turnedSeat({ legs: [{ at: [110, 120], turnDeg: 31 }] });
  const shop = builtInShop('mm');
  const { holdings, cards, uncut } = carded(design, {
    ...shop,
    router: { ...shop.router, plungeTravel: 30 },
  });
  const order = orderOfWork(design, holdings, cards);
  const ids = order.notOrdered.map(({ board, mortise }) => `${board} ${mortise}`);
  expect(ids.toSorted()).toEqual(uncut.map(({ board, mortise }) => `${board} ${mortise.id}`).toSorted());
  expect(ids).toEqual(['leg-1 seat/leg-1/1']);
  expect(cards.map(({ cuts }) => cuts.map(({ board }) => board))).toEqual([['seat']]);
  for (const { board, cuts } of order.steps)
    for (const id of cuts) expect(ids).not.toContain(`${board} ${id}`);
  const paper = orderPaper({ design, order, shop: builtInShop('mm'), revision: '0' });
  const steps = paper.findIndex((block) => block.kind === 'heading' && block.text === 'Steps');
  const told = markdown(paper.slice(0, steps));
  for (const { mortise, because } of order.notOrdered) {
    expect(told).toContain(mortise);
    expect(because.length).toBeGreaterThan(0);
    for (const one of because) expect(told).toContain(one.split(':')[0]!);
  }
});

test('with no holding at all not one mortise is ordered', () => {
  const { design } = carded(made('stool'));
  const order = orderOfWork(design, [], []);
  expect(order.steps.flatMap(({ kind, cuts }) => (kind === 'mortise' ? cuts : []))).toEqual([]);
  expect(order.notOrdered).toHaveLength(design.boards.flatMap(({ board }) => board.mortises).length);
});

test('the tenons are made before the dry fit that is put together with them', () => {
  for (const [model, count] of [
    ['stool', 6],
    ['frame', 4],
  ] as const) {
    const { design, order } = ordered(model, {});
    const at = order.steps.findIndex(({ kind }) => kind === 'tenons');
    expect(order.steps.filter(({ kind }) => kind === 'tenons')).toHaveLength(1);
    expect(design.joints.flatMap(({ tenons }) => tenons)).toHaveLength(count);
    expect(order.steps[at]!.what).toContain(`the ${count} tenons`);
    const fit = order.steps.findIndex(({ kind }) => kind === 'dry fit');
    if (fit >= 0) expect(at).toBeLessThan(fit);
    // every mortise of the boards fitted together stands before the tenons are tried in them
    const last = order.steps.findLastIndex(
      ({ kind, board }) => kind === 'mortise' && !order.fitAfter.has(board!),
    );
    expect(last).toBeLessThan(at);
  }
  expect(ordered('jig', {}).order.steps.some(({ kind }) => kind === 'tenons')).toBe(false);
});

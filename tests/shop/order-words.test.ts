import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import jigModel from '../../models/jig.js';
import stoolModel from '../../models/stool.js';
import { withMade } from '../../src/files/made/made.js';
import { frame, pointOut, type Vec3 } from '../../src/frame/index.js';
import type { Model } from '../../src/model/index.js';
import { readParameters } from '../../src/model/index.js';
import { regionBounds } from '../../src/profile/index.js';
import { longSides } from '../../src/shop/boards/index.js';
import { builtInShop, orderOfWork, type ShopPapers, type WorkStep } from '../../src/shop/index.js';
import { type Body, type Kernel, section, solidsOf, startKernel, stockBody } from '../../src/solid/index.js';
import { planeOf } from './card-reader.js';
import { carded, made } from './made.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const pointsOf = (body: Body): readonly Vec3[] => {
  const mesh = body.getMesh();
  return Array.from({ length: mesh.numVert }, (_, i): Vec3 => {
    const [x, y, z] = [0, 1, 2].map((k) => mesh.vertProperties[i * mesh.numProp + k]!);
    return [x!, y!, z!];
  });
};

const DESIGNS = [
  made('stool'),
  made('stool', { treads: 2 }),
  made('stool', { rake: 15, taper: 7 }),
  made('stool', { rake: 4, taper: 0, stretcherHeight: 60 }),
];

describe('which side of an end is long', () => {
  test('every cut end is longest on the side its step names, as the corners of the solid are', () => {
    let looked = 0;
    for (const design of DESIGNS) {
      const { holdings, cards } = carded(design);
      const solids = solidsOf(kernel, design);
      const { steps } = orderOfWork(design, holdings, cards);
      for (const { board } of design.boards) {
        const corners = pointsOf(solids.boards.get(board.id)!.own);
        for (const step of steps.filter((one) => one.board === board.id)) {
          // a face is called as a maker calls it, its id never stands in quotes
          for (const said of [step.what, ...step.figures.map(({ name }) => name)])
            expect(said).not.toMatch(/'[a-z0-9-]+'/);
          if (step.kind !== 'cut ends' && step.kind !== 'bevel') continue;
          const ids = step.kind === 'bevel' ? step.cuts : step.makes;
          for (const id of ids) {
            const plane = planeOf(board, id);
            const on = corners.filter(
              (p) =>
                Math.abs(p.reduce((sum, part, k) => sum + (part - plane.point[k]!) * plane.normal[k]!, 0)) <
                0.01,
            );
            const out = (p: Vec3) => Math.sign(plane.normal[0]) * p[0];
            const { thickness, width } = board.blank;
            const most = (axis: 1 | 2, at: number) =>
              Math.max(...on.filter((p) => Math.abs(p[axis] - at) < 0.02).map(out));
            // an end without a name of its own is told by the end it is, as the solid turns it
            const named = board.bevels.some((bevel) => bevel.id === id);
            const called = named
              ? `bevelled ${id} end`
              : `angled ${plane.normal[0] < 0 ? 'reference' : 'opposite'} end`;
            const words = new RegExp(`${called}: long on the ([a-z ]+)`).exec(step.what)?.[1];
            if (Math.abs(plane.normal[2]) > 0.01) {
              looked += 1;
              const isReference = most(2, 0) > most(2, thickness);
              expect(words, `${board.id} ${id}`).toBe(`${isReference ? 'reference' : 'opposite'} face`);
            } else if (Math.abs(plane.normal[1]) > 0.01) {
              looked += 1;
              const isReference = most(1, 0) > most(1, width);
              expect(words, `${board.id} ${id}`).toBe(`${isReference ? 'reference' : 'opposite'} edge`);
            } else expect(words, `${board.id} ${id}`).toBeUndefined();
          }
        }
      }
    }
    expect(looked).toBeGreaterThan(15);
  });

  test('by hand: a cut leaning over the reference face, and a compound one', () => {
    const deg = Math.PI / 180;
    // its outside turns towards +z: from above the board looks shorter
    expect(longSides([Math.cos(10 * deg), 0, Math.sin(10 * deg)])).toEqual(['reference face']);
    expect(longSides([-Math.cos(10 * deg), 0, Math.sin(10 * deg)])).toEqual(['reference face']);
    expect(longSides([-0.9, -0.3, -0.3])).toEqual(['opposite face', 'opposite edge']);
    expect(longSides([1, 0, 0])).toEqual([]);
    // an edge is never long, only wide
    expect(longSides([0.3, 0.9, 0.3])).toEqual(['reference face']);
  });
});

describe('where a dry fit is measured', () => {
  test('at the height told the gap between the two boards is the length of the board that fills it', () => {
    let measured = 0;
    for (const design of DESIGNS) {
      const { holdings, cards } = carded(design);
      const { steps, fitAfter } = orderOfWork(design, holdings, cards);
      const fit = steps.find(({ kind }) => kind === 'dry fit');
      if (!fit) continue;
      const solids = solidsOf(kernel, design);
      const others = design.boards.filter(({ board }) => !fitAfter.has(board.id));
      const bench = Math.min(
        ...others.flatMap(({ board }) => pointsOf(solids.boards.get(board.id)!.body).map(([, , z]) => z)),
      );
      for (const id of fitAfter.keys()) {
        const placed = design.boards.find(({ board }) => board.id === id)!;
        const { name } = placed.board;
        const said = (start: string) => fit.figures.find((figure) => figure.name.startsWith(start))!.value;
        const height = said(`height of that line above the bench for the ${name}`);
        const length = said(`length of ${name} by the list`);
        const words = fit.what
          .split('; ')
          .find((part) => part.startsWith(`measure the gap for the ${name} `))!;
        const sides = others.filter(({ board }) => words.includes(`of the ${board.name}`));
        expect(sides).toHaveLength(2);
        const at = frame([0, 0, bench + height], [0, 0, 1], [1, 0, 0]);
        const [a, b] = sides
          .map(({ board }) => regionBounds(section(solids.boards.get(board.id)!.body, at)))
          .toSorted((p, q) => p.minX - q.minX);
        expect(b!.minX - a!.maxX, `${design.title}: ${name} at ${height}`).toBeCloseTo(length, 2);
        // and the side that lies along it is at that height
        const side = /along the line where its ([a-z ]+) will lie/.exec(words)![1]!;
        const { width } = placed.board.blank;
        const y = side === 'reference edge' ? 0 : width;
        expect(side).toMatch(/^(reference|opposite) edge$/);
        expect(pointOut(placed.place, [placed.board.blank.length / 2, y, 0])[2] - bench).toBeCloseTo(
          height,
          6,
        );
        measured += 1;
      }
    }
    expect(measured).toBeGreaterThan(3);
  });

  test('what the gap lies between is clamped to what carries it', () => {
    const { design, holdings, cards } = carded(made('stool'));
    const fit = orderOfWork(design, holdings, cards).steps.find(({ kind }) => kind === 'dry fit')!;
    expect(fit.what).toContain(
      'clamp the left side and right side to the tread until the shoulders are closed',
    );
    expect(fit.what).toContain('on a flat bench');
  });
});

const whole = (model: unknown, given: Record<string, unknown> = {}, bush?: number): Promise<ShopPapers> =>
  withMade(
    {
      model: model as Model,
      values: readParameters(model as Model, given, 'mm'),
      shop: builtInShop('mm'),
      jig: jigModel.build(readParameters(jigModel, {}, 'mm')),
      units: 'mm',
      format: 'binary',
      curves: 'arcs',
      version: '0.0.0',
      ...(bush !== undefined && { bush }),
      progress: () => {},
    } as never,
    async ({ papers }) => papers,
  );

describe('the order covers the whole job', () => {
  const at = (steps: readonly WorkStep[], is: (step: WorkStep) => boolean) => steps.findIndex(is);

  test.each([
    ['stool', stoolModel],
    ['frame', frameModel],
  ] as const)('of a %s, each thing before what needs it', async (_, model) => {
    const { order, cards, aids, cutList, glueUp, strips } = await whole(model);
    const { steps } = order;
    const first = (kind: WorkStep['kind']) => at(steps, (step) => step.kind === kind);
    // templates and aids first
    const templates = cutList.filter(({ kind }) => kind === 'template');
    expect(steps.filter(({ kind, what }) => kind === 'template' && what.startsWith('make'))).toHaveLength(
      templates.length > 0 ? 1 : 0,
    );
    const made = steps.find(({ kind }) => kind === 'aid')!;
    for (const { board } of aids) expect(made.what).toContain(board.id);
    expect(first('aid')).toBeLessThan(first('mill'));
    // a wedge whose ends are alike along its length is ripped, one whose ends differ is sloped at an end
    for (const { board } of aids) {
      const points = pointsOf(stockBody(kernel, board));
      const low = (x: number) => points.filter((p) => Math.abs(p[0] - x) < 0.01).map((p) => p[2]);
      const high = (y: number) => points.filter((p) => Math.abs(p[1] - y) < 0.01).map((p) => p[2]);
      const { length, width } = board.blank;
      const alongDiffers = Math.abs(Math.max(...low(0)) - Math.max(...low(length))) > 0.5;
      const acrossDiffers = Math.abs(Math.max(...high(0)) - Math.max(...high(width))) > 0.5;
      const told = (words: RegExp) => (words.exec(made.what)?.[1] ?? '').split(', ').includes(board.id);
      expect(told(/rip the taper of ([^;]+) along the whole length/)).toBe(acrossDiffers);
      expect(told(/saw the slope of ([^;]+) at the end/)).toBe(alongDiffers);
    }
    // test blanks before the first set-up that is tried in one
    const blanks = cutList.filter(({ kind }) => kind === 'test blank').flatMap(({ marks }) => marks);
    expect(/: (.+)$/.exec(steps[first('test blank')]!.what)![1]!.split(', ')).toEqual(blanks);
    expect(first('test blank')).toBeLessThan(first('test cut'));
    // a board wider than the lumber is glued up before it is milled
    for (const [i, step] of steps.entries())
      if (step.kind === 'edge joint') expect(steps[i + 1]!.kind).toBe('mill');
    // a test cut before the first mortise of its card, in the blank the cut list has for it
    for (const { id } of cards) {
      const trial = at(steps, (step) => step.kind === 'test cut' && step.setup === id);
      expect(trial).toBeGreaterThanOrEqual(0);
      expect(trial).toBe(at(steps, (step) => step.setup === id));
      const mark = /test blank (X\d+)/.exec(steps[trial]!.what)![1]!;
      const row = cutList.find((one) => one.kind === 'test blank' && one.marks.includes(mark))!;
      expect(row.name).toMatch(new RegExp(`^test blank for [^;]*\\b${id}\\b`));
    }
    // strips, tenons, the fits they are needed for, glue, finish
    const kinds = ['strip', 'tenons', 'dry assembly', 'glue-up', 'finish'] as const;
    const places = kinds.map(first);
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    for (const mark of strips.flatMap(({ marks }) => marks))
      expect(steps[first('strip')]!.what).toContain(mark);
    if (order.fitAfter.size > 0) expect(first('tenons')).toBeLessThan(first('dry fit'));
    expect(steps.filter(({ kind }) => kind === 'glue-up')).toHaveLength(glueUp.stages.length);
    expect(at(steps, ({ kind }) => kind === 'dry assembly')).toBeGreaterThan(
      steps.findLastIndex(({ kind }) => kind === 'mortise'),
    );
    // the cut list counts the steps of this order
    for (const row of cutList)
      if (row.cut.when === 'cut to fit') expect(steps[row.cut.afterStep - 1]!.kind).toBe('dry fit');
  });

  test.each([undefined, 24])(
    'what is routed to a template is told the cutter that follows it, as long as the board is thick, with a bush of %s',
    async (bush) => {
      const raw = { sideThickness: '30 mm' };
      const { order, templates, shop } = await whole(stoolModel, raw, bush);
      const { boards, cutter } = stoolModel.build(readParameters(stoolModel, raw, 'mm'));
      const sheet = shop.sheets.find(({ name }) => name === 'medium density fibreboard')!.thickness;
      const routed = order.steps.filter(({ what }) => what.includes('to the template'));
      expect(routed.length).toBeGreaterThan(2);
      for (const { board: id, figures } of routed) {
        const thick = boards.find(({ board }) => board.id === id)!.board.blank.thickness;
        expect(figures.map(({ name, value }) => [name, value])).toEqual([
          ['cutter', cutter],
          ...(bush ? [['guide bush', bush]] : []),
          ['cutting edges at least', thick],
          ...(bush ? [['reach below the router at least', thick + sheet]] : []),
        ]);
      }
      // made for the thickest, told where the templates are made and before anything is routed
      const make = order.steps.find(({ what }) => what.startsWith('make the outline templates'))!;
      expect(make.figures.find(({ name }) => name === 'cutting edges at least')!.value).toBe(30);
      expect(templates.map(({ cuts }) => cuts)).toEqual([28, 30]);
    },
  );

  test('every board marked or cut by a template is named where they are printed, a tapered one without arcs is sawn', async () => {
    const printing = async (model: unknown, raw = {}) => (await whole(model, raw)).order.steps;
    const [print, make] = await printing(jigModel);
    expect(print!.what).toContain('base plate; near rail and far rail');
    expect(make!.what).toContain('plate-template for the base plate');
    const straight = await printing(stoolModel, { archHeight: '0 mm', handOpening: 'false' });
    expect(straight[0]!.what).toContain('tread; left side and right side');
    expect(straight.filter(({ what }) => what.includes('to the template'))).toEqual([]);
    const outlines = straight.filter(({ kind }) => kind === 'outline').map(({ what }) => what);
    expect(outlines).toEqual(Array(2).fill(expect.stringMatching(/saw close to its lines, then plane/)));
  });

  test('boards wider than the lumber at hand are glued up, and no others', async () => {
    const { order, layouts, cutList } = await whole(stoolModel);
    const notes = layouts.flatMap(({ notes: all }) => all).filter((note) => note.includes('glued up'));
    const steps = order.steps.filter(({ kind }) => kind === 'edge joint');
    expect(steps.length).toBeGreaterThan(0);
    expect(steps).toHaveLength(notes.length);
    for (const { what } of steps) {
      const [, strips, mark] = /the (\d+) strips of (\S+) and/.exec(what)!;
      expect(
        notes.filter((note) => note.startsWith(`${mark} `) && note.includes(`${strips} strips`)),
      ).toHaveLength(1);
    }
    // boards too short for the machines name the length they are milled in, once it is glued up
    const short = cutList.filter(({ kind, finished }) => kind === 'board' && finished.length < 250);
    for (const id of short.flatMap(({ boards }) => boards)) {
      const at = order.steps.findIndex(({ kind, board }) => kind === 'mill' && board === id);
      const length = /as part of length (P\d+)/.exec(order.steps[at]!.what)?.[1];
      expect(
        layouts.some(({ plan }) => plan.pieces.some(({ stock }) => stock.name.startsWith(`${length},`))),
      ).toBe(true);
      const glued = order.steps.findIndex(
        ({ kind, what }) => kind === 'edge joint' && what.includes(` ${length} `),
      );
      expect(glued).toBeLessThan(at);
    }
  });

  test('the blank of a wedged set-up is sawn as the work is where the wedge holds it', async () => {
    const { cards, cutList } = await whole(stoolModel);
    const wedged = cards.filter(({ nearRail, farRail }) => nearRail?.wedge ?? farRail?.wedge);
    expect(wedged.length).toBeGreaterThan(0);
    for (const { id, nearRail, farRail, testCut } of wedged) {
      const [sawn] = testCut.sawnFirst;
      expect(testCut.sawnFirst).toHaveLength(1);
      // the end leans by the angle of the wedge that makes up for it
      expect(sawn).toContain(
        `blade tilt ${(nearRail?.wedge ?? farRail!.wedge)!.angleDeg.toFixed(0)}°, long on the`,
      );
      const row = cutList.find(
        ({ kind, name }) => kind === 'test blank' && name.includes(`for ${id} sawn like`),
      );
      expect(row?.name).toContain(sawn);
    }
    for (const { testCut, nearRail, farRail } of cards)
      if (!nearRail?.wedge && !farRail?.wedge) expect(testCut.sawnFirst).toEqual([]);
  });
});

/** A square about the origin, counter-clockwise seen from above; the cutter's middle runs on it. */
const LAP = [
  [1, -1],
  [1, 1],
  [-1, 1],
  [-1, -1],
] as const;

test('along a template the cutter is never fed the way its edge pulls: the edge on the wood moves with the feed', async () => {
  const { order } = await whole(stoolModel);
  for (const [kind, wood] of [
    ['outline', -1],
    ['opening', 1],
  ] as const) {
    const steps = order.steps.filter((step) => step.kind === kind);
    expect(steps.length).toBeGreaterThan(0);
    for (const { what } of steps) {
      const way = /(counter-clockwise|clockwise)/.exec(what)![1] === 'clockwise' ? -1 : 1;
      for (let i = 0; i < 4; i += 1) {
        const [from, to] = [LAP[i]!, LAP[(i + 1) % 4]!];
        const feed = [(to[0] - from[0]) * way, (to[1] - from[1]) * way] as const;
        const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
        // from the cutter to the wood: inwards to a board inside the lap, outwards round an opening
        const [rx, ry] = [middle[0] * wood, middle[1] * wood];
        // an edge at r of a cutter that turns clockwise seen from above moves along (ry, −rx)
        expect(ry * feed[0] - rx * feed[1], `${what}`).toBeGreaterThan(0);
      }
    }
  }
});

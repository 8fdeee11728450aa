import { afterAll, expect, test } from 'vitest';
import { boardViews } from '../../src/drawing/board/board-views.js';
import { featureTable } from '../../src/drawing/board/index.js';
import {
  assemblyFigure,
  type Box,
  boardFigure,
  boxesOverlap,
  type DrawingOptions,
  jointFigure,
  jointKinds,
  numberedFigure,
  type SheetEntity,
  strokesOf,
  textBox,
} from '../../src/drawing/index.js';
import { add, directionIn, dot, pointIn, scale } from '../../src/frame/index.js';
import { onceForEach } from '../../src/once.js';
import { type BoardSolid, type Solids, startKernel } from '../../src/solid/index.js';
import { many } from '../properties/seed.js';
import { DRAWN, OPTIONS, solidsAnew, solidsFor } from './drawn-designs.js';
import { contradictions, dimensionsOf, readFigures } from './printed-figures.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

const WAYS: readonly DrawingOptions[] = [
  OPTIONS,
  { units: 'in', projection: 'third-angle' },
  { units: 'dual', projection: 'first-angle' },
];

/** Stools like others that are drawn: in one way for somebody who has just cloned. */
const waysOf = ({ called }: (typeof DRAWN)[number]): readonly DrawingOptions[] =>
  called === 'stool of one tread' || called === 'upright stool' ? WAYS.slice(0, many(1, WAYS.length)) : WAYS;

const CASES = DRAWN.flatMap((drawn) =>
  waysOf(drawn).map((options) => [drawn.called, options.units, options.projection, drawn, options] as const),
);

/** What stands on a page of its own: mm. */
const ROOM = { width: 182, height: 240 };

type Drawing = { readonly kind: string; readonly entities: readonly SheetEntity[] };

const drawn = new Map<string, readonly Drawing[]>();

/** Every drawing of a design, its lower left corner at 0, 0; drawn once for each way. */
function drawings(of: (typeof DRAWN)[number], options: DrawingOptions): readonly Drawing[] {
  const key = JSON.stringify([of.called, options]);
  const known = drawn.get(key) ?? drawAll(of, options);
  drawn.set(key, known);
  return known;
}

const figures = onceForEach((_: BoardSolid) => new Map<DrawingOptions, ReturnType<typeof drawBoard>>());

function drawBoard(solid: BoardSolid, options: DrawingOptions) {
  const figure = boardFigure(solid, options)(ROOM)!;
  return { figure, entities: figure.draw([0, 0]) };
}

/** The drawing of a board, drawn once for each way. */
function drawnBoard(solid: BoardSolid, options: DrawingOptions = OPTIONS): ReturnType<typeof drawBoard> {
  const known = figures(solid);
  const found = known.get(options) ?? drawBoard(solid, options);
  known.set(options, found);
  return found;
}

const entitiesOf = (solid: BoardSolid, options?: DrawingOptions) => drawnBoard(solid, options).entities;

/** The parts drawn apart are told in no unit: drawn once for each design. */
const partsOf = onceForEach((solids: Solids) => numberedFigure(solids, 'drawn apart', ROOM));

function drawAll(
  of: (typeof DRAWN)[number],
  options: DrawingOptions,
  solids = solidsFor(kernel, of),
): readonly Drawing[] {
  const figures = [
    ...[...solids.boards.values()].map((board) => ['board', drawnBoard(board, options).figure] as const),
    ...jointKinds(solids).map((kind) => ['joint', jointFigure(solids, kind, options)(ROOM)!] as const),
    ['assembly', assemblyFigure(solids, options)(ROOM)!] as const,
    ['parts', partsOf(solids)] as const,
  ];
  return figures.map(([kind, figure]) => {
    expect(figure.width).toBeLessThanOrEqual(ROOM.width);
    expect(figure.height).toBeLessThanOrEqual(ROOM.height);
    return { kind, entities: figure.draw([0, 0]) };
  });
}

const textBoxes = (entities: readonly SheetEntity[]): readonly { text: string; box: Box }[] =>
  strokesOf(entities).flatMap((stroke) =>
    stroke.kind === 'text' ? [{ text: stroke.text, box: textBox(stroke) }] : [],
  );

test.each(CASES)(
  "every figure on the sheets of the %s in %s, %s, is the model's to its rounding",
  (...[, , , drawn, options]) => {
    for (const draft of drawings(drawn, options)) {
      expect(contradictions(draft.entities, options.units)).toEqual([]);
    }
  },
);

test.each(CASES)(
  'no two texts of the %s in %s, %s, lie on each other, and none leaves its room',
  (...[, , , drawn, options]) => {
    for (const { kind, entities } of drawings(drawn, options)) {
      const texts = textBoxes(entities);
      expect(texts.length).toBeGreaterThan(2);
      const clashes = texts.flatMap((one, i) =>
        texts
          .slice(0, i)
          .flatMap((other) =>
            boxesOverlap(one.box, other.box) ? [`${kind}: ${one.text} on ${other.text}`] : [],
          ),
      );
      expect(clashes).toEqual([]);
      const off = texts.filter(
        ({ box }) =>
          box.minX < -0.1 || box.minY < -0.1 || box.maxX > ROOM.width + 0.1 || box.maxY > ROOM.height + 0.1,
      );
      expect(off.map(({ text }) => `${kind}: ${text}`)).toEqual([]);
    }
  },
);

/** Sizes a drawing tells twice: a place told again from the same reference, or a part between two places that are told. */
function toldTwice(entities: readonly SheetEntity[]): readonly string[] {
  const told = dimensionsOf(entities).filter(({ unit }) => unit === 'mm');
  const places = told.flatMap(({ what, value }, by) => {
    const [, names, reference] = /^(.*) from (the reference \w+)$/.exec(what) ?? [];
    return names === undefined ? [] : names.split(', ').map((name) => ({ name, reference, value, by }));
  });
  const same = (a: number, b: number) => Math.abs(a - b) < 0.06;
  const again = places.filter(({ name, reference, value, by }, i) =>
    places
      .slice(0, i)
      // two ends, or two edges, each tell the height of what enters them
      .some(
        (one) =>
          one.by !== by &&
          one.reference === reference &&
          same(one.value, value) &&
          (reference !== 'the reference face' || one.name === name),
      ),
  );
  // a part closes a chain where both its ends are told from one reference, or lie on it
  const parts = told.filter(({ what, value }) => {
    const [, from, to] = /^(.*) to (.*)$/.exec(what) ?? [];
    return from !== undefined && to !== undefined && value > 0;
  });
  return [
    ...again.map(({ name, reference }) => `${name} from ${reference}`),
    ...parts.map(({ what }) => what),
  ];
}

test.each(CASES)(
  'no size of a board of the %s in %s, %s, is dimensioned twice, and length and width always once',
  (...[, , , drawn, options]) => {
    for (const solid of solidsFor(kernel, drawn).boards.values()) {
      const entities = entitiesOf(solid, options);
      expect(toldTwice(entities), solid.id).toEqual([]);
      const { length, width, thickness } = solid.board.blank;
      for (const [size, side] of [
        [length, 'end'],
        [width, 'edge'],
        [thickness, 'face'],
      ] as const) {
        const whole = dimensionsOf(entities).filter(
          ({ what, value }) =>
            what.includes(`opposite ${side}`) &&
            what.endsWith(`from the reference ${side}`) &&
            Math.abs(value - size) < 0.06,
        );
        expect(whole, `${solid.id}: ${side}`).toHaveLength(1);
      }
    }
  },
);

test('a size told a second time is found: the same place again, or the part between two places', () => {
  const entities = entitiesOf(solidsFor(kernel, DRAWN[0]!).boards.get('left-side')!);
  const one = dimensionsOf(entities).find(({ what }) => what.includes('M1 end'))!;
  expect(toldTwice([...entities, one])).toHaveLength(one.what.split(', ').length);
  expect(toldTwice([...entities, { ...one, what: 'M1 end to M2 end' }])).toEqual(['M1 end to M2 end']);
});

test.each(DRAWN.filter(({ called }) => called !== 'jig').map((drawn) => [drawn.called, drawn] as const))(
  'both boards of every joint of the %s have its tenons set out from their reference edge and end',
  (_called, drawn) => {
    const solids = solidsFor(kernel, drawn);
    for (const joint of solids.design.joints) {
      for (const id of [joint.a, joint.b]) {
        const solid = solids.boards.get(id)!;
        const dimensions = dimensionsOf(entitiesOf(solid));
        for (const { place } of joint.tenons) {
          // from the joint's own seat, not from the mortise that was cut for it
          const centre = pointIn(solid.place, place.origin);
          const axis = directionIn(solid.place, place.z);
          const references = ['the reference end', 'the reference edge'] as const;
          references.forEach((reference, i) => {
            if (Math.abs(axis[i]!) > 0.9) return;
            const found = dimensions.filter(
              ({ what, value }) =>
                what.endsWith(reference) && what.includes('centre') && Math.abs(value - centre[i]!) < 0.06,
            );
            expect(
              found.map(({ what }) => what),
              `${joint.id} in ${id}, ${centre[i]} from ${reference}`,
            ).toHaveLength(1);
          });
        }
      }
    }
  },
);

test('the ends of a mortise are marked half its length from its middle', () => {
  const solid = solidsFor(kernel, DRAWN[0]!).boards.get('tread')!;
  const dimensions = dimensionsOf(entitiesOf(solid));
  for (const { at, length } of solid.board.mortises) {
    for (const half of [-length / 2, length / 2]) {
      const end = add(at.origin, scale(at.x, half));
      expect(
        dimensions.some(
          ({ what, value }) =>
            what.includes('end from the reference edge') && Math.abs(value - end[1]) < 0.06,
        ),
      ).toBe(true);
    }
  }
});

test('the stop of a running figure stands as far from the reference as the figure says, times the scale', () => {
  for (const [, solid] of solidsFor(kernel, DRAWN[1]!).boards) {
    const { scale: of } = drawnBoard(solid).figure;
    const [one, by] = of.name.split(':').map(Number);
    const rows = dimensionsOf(entitiesOf(solid)).filter(({ what }) =>
      what.endsWith('from the reference end'),
    );
    expect(rows.length).toBeGreaterThan(2);
    const stops = rows.map(({ value, parts }) => {
      // the extension line
      const line = parts.findLast((part) => part.kind === 'line' && part.from[0] === part.to[0]);
      if (line?.kind !== 'line') throw new Error('a running figure has an extension line');
      return { value, along: line.from[0] };
    });
    const [first] = stops;
    for (const { value, along } of stops)
      expect(along - first!.along).toBeCloseTo(((value - first!.value) * one!) / by!, 6);
  }
});

test('a figure that contradicts the model is caught, in any drawing and any unit', () => {
  for (const options of WAYS) {
    const entities = entitiesOf(solidsFor(kernel, DRAWN[0]!).boards.get('left-side')!, options);
    const victims = dimensionsOf(entities).filter(({ unit }) => unit === 'mm');
    expect(victims.length).toBeGreaterThan(10);
    for (const victim of victims) {
      const spoilt = entities.map((entity) =>
        entity === victim
          ? { ...victim, value: victim.value + (options.units === 'mm' ? 0.8 : 1.7) }
          : entity,
      );
      const found = contradictions(spoilt, options.units);
      expect(found.length).toBeGreaterThanOrEqual(1);
      expect(found.every((text) => text.startsWith(victim.what))).toBe(true);
    }
  }
});

test('the table of a board says what its mortises are', () => {
  const { board } = solidsFor(kernel, DRAWN[0]!).boards.get('left-side')!;
  const rows = featureTable(board, OPTIONS.units);
  const [head] = rows;
  board.mortises.forEach((mortise, i) => {
    const row = rows.find(([mark]) => mark === `M${i + 1}`)!;
    const cell = (name: string) => row[head!.indexOf(name)]!;
    const [width, length] = cell('size').split(' × ').map(Number);
    expect(width).toBeCloseTo(mortise.width, 1);
    expect(length).toBeCloseTo(mortise.length, 1);
    expect(Math.abs(readFigures(cell('depth'), 'mm')[0]!.value - mortise.depth)).toBeLessThan(0.0501);
  });
});

test('the same design is drawn the same twice', () => {
  const again = drawAll(DRAWN[1]!, OPTIONS, solidsAnew(kernel, DRAWN[1]!));
  expect(JSON.stringify(again)).toBe(JSON.stringify(drawings(DRAWN[1]!, OPTIONS)));
});

test('long and short point of a raked side stand a bevel run apart: thickness times the tangent of the rake', () => {
  const solid = solidsFor(kernel, DRAWN[0]!).boards.get('left-side')!;
  const dimensions = dimensionsOf(entitiesOf(solid));
  const stop = (what: string) =>
    dimensions.find((one) => one.what === `${what} from the reference end`)!.value;
  const run = 28 * Math.tan(Math.PI / 18);
  // the long point at the top is the board's own end, told once
  const end = dimensions.find(({ what }) => what.includes('opposite end from'))!.value;
  expect(end - stop('B2 on the reference face')).toBeCloseTo(run, 6);
  // the foot's long point is the reference end itself
  expect(stop('B1 on the opposite face')).toBeCloseTo(run, 6);
  const angles = dimensions.filter(({ what }) => what.endsWith('off square')).map(({ value }) => value);
  expect(angles).toHaveLength(2);
  for (const angle of angles) expect(angle).toBeCloseTo(10, 6);
});

test.each(['third-angle', 'first-angle'] as const)(
  'in %s the views stand where that projection has them',
  (projection) => {
    for (const drawn of DRAWN) {
      for (const [, { board }] of solidsFor(kernel, drawn).boards) {
        const [main, ...others] = boardViews(board, projection);
        expect(others.length).toBeGreaterThanOrEqual(2);
        for (const { frame, side } of others) {
          // the direction on the paper in which the viewer of the other view stands
          const towards = [dot(frame.z, main!.frame.x), dot(frame.z, main!.frame.y)].map(
            (one) => Math.round(one) + 0,
          );
          const seenFrom = { '1,0': 'right', '-1,0': 'left', '0,1': 'above', '0,-1': 'below' }[`${towards}`];
          const across = { right: 'left', left: 'right', above: 'below', below: 'above' }[seenFrom as 'left'];
          expect(side).toBe(projection === 'third-angle' ? seenFrom : across);
        }
      }
    }
  },
);

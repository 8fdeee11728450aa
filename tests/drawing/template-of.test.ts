import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeBoard } from '../../src/board/index.js';
import { featureTable } from '../../src/drawing/board/feature-table.js';
import { type Entity, type Layer, type Template, templateOf } from '../../src/drawing/index.js';
import { InputError } from '../../src/errors.js';
import { frame } from '../../src/frame/index.js';
import {
  arcs,
  area,
  bounds,
  contains,
  offset,
  type Profile,
  polygon,
  rectangle,
} from '../../src/profile/index.js';
import { disc, mortise, sampleBoard } from './sample-board.js';

type Kind = Entity['kind'];
type Of<K extends Kind> = Extract<Entity, { kind: K }>;

const on = <K extends Kind>(template: Template, layer: Layer, kind: K): Of<K>[] =>
  template.entities.filter((entity): entity is Of<K> => entity.layer === layer && entity.kind === kind);

const loops = (template: Template, layer: Layer): Profile[] =>
  on(template, layer, 'profile').map((entity) => entity.profile);

const said = (template: Template): string =>
  [...on(template, 'NOTE', 'text'), ...on(template, 'LEGEND', 'text')]
    .map((entity) => entity.text.trim())
    .join(' ');

const flush = templateOf(sampleBoard, { cutter: 8, units: 'mm' });
const bushed = templateOf(sampleBoard, { cutter: 8, bush: 17, units: 'mm' });

/** What a fillet takes from a square corner: r²(1 − π/4). */
const fillet = (radius: number) => radius * radius * (1 - Math.PI / 4);

/** Area of an obround: π·d²/4 + d·(L − d). */
const obroundArea = (length: number, width: number) =>
  (Math.PI * width * width) / 4 + width * (length - width);

test('the outline is cut counter-clockwise, the grip clockwise, both with their own area', () => {
  const [outline, grip] = loops(flush, 'CUT');
  expect(area(outline!)).toBeCloseTo(300 * 120 - 2 * fillet(25), 6);
  expect(area(grip!)).toBeCloseTo(-(60 * 30 - 4 * fillet(10)), 6);
});

test('corners stay arcs of their radius', () => {
  const [outline, grip] = loops(flush, 'CUT');
  expect(arcs(outline!).map((arc) => arc.radius)).toEqual([expect.closeTo(25, 9), expect.closeTo(25, 9)]);
  expect(arcs(grip!).map((arc) => arc.radius)).toEqual(Array(4).fill(expect.closeTo(10, 9)));
});

test('under a guide bush the outline shrinks and the grip grows by half of bush less cutter, arcs with them', () => {
  const [outline, grip] = loops(bushed, 'CUT');
  expect(bounds(outline!)).toEqual({
    minX: expect.closeTo(4.5, 6),
    minY: expect.closeTo(4.5, 6),
    maxX: expect.closeTo(295.5, 6),
    maxY: expect.closeTo(115.5, 6),
  });
  expect(arcs(outline!).map((arc) => arc.radius)).toEqual(Array(2).fill(expect.closeTo(20.5, 6)));
  expect(arcs(grip!).map((arc) => arc.radius)).toEqual(Array(4).fill(expect.closeTo(14.5, 6)));
  expect(area(outline!)).toBeGreaterThan(0);
  expect(area(grip!)).toBeLessThan(0);
});

test('under a guide bush the part itself is on MARK', () => {
  const [outline, grip] = loops(bushed, 'MARK');
  expect(area(outline!)).toBeCloseTo(area(loops(flush, 'CUT')[0]!), 6);
  expect(area(grip!)).toBeCloseTo(area(loops(flush, 'CUT')[1]!), 6);
  expect(loops(flush, 'MARK')).toEqual([]);
});

test('for any bush the centre of the router runs where it would with a bearing', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 3, max: 20, noNaN: true }),
      fc.double({ min: 0.5, max: 30, noNaN: true }),
      (cutter, more) => {
        const radius = 16;
        const outline = polygon([
          { x: 0, y: 0, radius },
          { x: 200, y: 0, radius },
          { x: 230, y: 110, radius },
          { x: 0, y: 90, radius },
        ]);
        const board = makeBoard({ id: 'top', blank: { length: 230, width: 110, thickness: 12 }, outline });
        const bush = cutter + more;
        const [line] = loops(templateOf(board, { cutter, bush, units: 'mm' }), 'CUT');
        const [path] = offset(line!, bush / 2);
        const [wanted] = offset(outline, cutter / 2);
        expect(area(path!)).toBeCloseTo(area(wanted!), 5);
      },
    ),
    { numRuns: 50 },
  );
});

test('a mortise in a wide face is a window of its own size, travelled clockwise', () => {
  const [m1, m2] = loops(flush, 'POCKET');
  for (const window of [m1!, m2!]) expect(area(window)).toBeCloseTo(-obroundArea(40, 8), 6);
  expect(bounds(m1!)).toMatchObject({ minX: 56, maxX: 64, minY: 40, maxY: 80 });
});

test('a window for a guide bush is as wide as the bush and longer by bush less cutter', () => {
  const [window] = loops(bushed, 'POCKET');
  expect(area(window!)).toBeCloseTo(-obroundArea(40 + 9, 17), 6);
});

test('a pocket narrower than the bush but of another width than the outline cutter names its cutter', () => {
  expect(said(bushed)).toMatch(/L1: slot 10 mm x 40 mm, .* window for a cutter of 10 mm/);
  expect(said(bushed)).not.toMatch(/window for a cutter of 8 mm/);
  expect(said(flush)).not.toContain('window for');
  expect(area(loops(bushed, 'CUT')[2]!)).toBeCloseTo(-obroundArea(50 + 7, 17), 6);
});

test('a pocket wider than the bush is followed with the outline cutter', () => {
  const board = {
    ...makeBoard({ id: 'base', blank: { length: 200, width: 100, thickness: 18 } }),
    mortises: [
      mortise({
        id: 'm',
        face: 'opposite-face',
        at: frame([100, 50, 18], [0, 0, 1], [1, 0, 0]),
        width: 30,
        length: 60,
        depth: 9,
      }),
    ],
  };
  const [window] = loops(templateOf(board, { cutter: 8, bush: 17, units: 'mm' }), 'POCKET');
  expect(area(window!)).toBeCloseTo(-obroundArea(69, 39), 6);
});

/** The straight marks that run along y at a given x. */
const upright = (template: Template, x: number) =>
  on(template, 'MARK', 'line').filter(
    (mark) => Math.abs(mark.from[0] - x) < 1e-6 && Math.abs(mark.to[0] - x) < 1e-6,
  );

test('a mortise window has its centre line and a mark across each round end', () => {
  const marks = on(flush, 'MARK', 'line');
  const level = (y: number) =>
    marks.filter(
      (mark) =>
        mark.from[1] === y &&
        mark.to[1] === y &&
        Math.min(mark.from[0], mark.to[0]) < 60 &&
        Math.max(mark.from[0], mark.to[0]) > 60,
    );
  expect(upright(flush, 60)).toHaveLength(1);
  expect([level(40).length, level(80).length]).toEqual([1, 1]);
});

test('the note of a mortise names the face it enters, its depth and its joint', () => {
  expect(said(flush)).toMatch(
    /M1: mortise 8 mm x 40 mm, 15 mm deep, into the opposite face, .* joint rail\/left-side/,
  );
  expect(said(flush)).toMatch(/M2: mortise 8 mm x 40 mm, 12 mm deep, into the reference face,/);
  expect(said(flush)).toContain('M2 from below');
});

test('a mortise in the reference edge is marked across the line at its middle and its two ends', () => {
  for (const [x, inward] of [
    [180, 25],
    [160, 8],
    [200, 8],
  ] as const) {
    const [mark, ...more] = upright(flush, x);
    expect(more).toEqual([]);
    expect([mark!.from[1], mark!.to[1]]).toEqual([-8, expect.closeTo(inward, 9)]);
  }
  expect(said(flush)).toMatch(
    /M3: mortise .*, 25 mm deep, into the reference edge, .* 10\.0 mm above the reference face/,
  );
});

test('a mortise whose length runs through the thickness shows only its width on the edge', () => {
  const board = {
    ...makeBoard({ id: 'rail', blank: { length: 300, width: 60, thickness: 60 } }),
    mortises: [mortise({ id: 'm', face: 'opposite-end', at: frame([300, 20, 30], [1, 0, 0], [0, 0, 1]) })],
  };
  const marks = on(templateOf(board, { cutter: 8, units: 'mm' }), 'MARK', 'line').filter(
    (mark) => mark.from[0] === 308,
  );
  expect(marks.map((mark) => mark.to[1]).sort()).toEqual([16, 20, 24]);
  expect(said(templateOf(board, { cutter: 8, units: 'mm' }))).toContain('its length through the thickness');
});

test('a mortise in an end leaning 10° reaches cos 10° of its depth in plan', () => {
  const centre = on(flush, 'MARK', 'line').filter((mark) => mark.from[1] === 60 && mark.to[1] === 60);
  const inward = Math.max(...centre.map((mark) => (mark.to[0] < 60 ? mark.to[0] : 0)));
  expect(inward).toBeCloseTo(10 * Math.tan(Math.PI / 18) + 30 * Math.cos(Math.PI / 18), 9);
});

test('an end bevelled 10° has a line on each face, thickness × tan 10° apart', () => {
  const run = 20 * Math.tan(Math.PI / 18);
  const ends = upright(flush, run).flatMap((mark) => [mark.from[1], mark.to[1]]);
  expect(ends.sort((a, b) => a - b)).toEqual([expect.closeTo(0, 6), expect.closeTo(120, 6)]);
  // the other one is the end of the outline itself, and no mark lies on it
  expect(upright(flush, 0)).toEqual([]);
  expect(
    loops(flush, 'CUT')[0]!
      .filter(({ x }) => Math.abs(x) < 1e-6)
      .map(({ y }) => y),
  ).toEqual(expect.arrayContaining([expect.closeTo(0, 6), expect.closeTo(120, 6)]));
  expect(said(flush)).toContain('B1 reference face 10°');
  expect(said(flush)).toContain('B1 opposite face 10°');
  expect(said(flush)).toMatch(/B1: bevel foot, 10° off square, .* longer on the opposite face/);
});

test('a bevel cut only between two marks is drawn only there, and only on the face it meets', () => {
  const level = on(flush, 'MARK', 'line').filter((mark) => Math.abs(mark.from[1] - 112) < 1e-6);
  expect(level.map((mark) => [mark.from[0], mark.to[0]].sort((a, b) => a - b))).toEqual([
    [expect.closeTo(60, 6), expect.closeTo(160, 6)],
  ]);
  expect(said(flush)).toMatch(/B2: bevel notch, 45° off square, meets the opposite face only/);
});

test('a counterbored hole is two circles about one centre, and a hole in an edge is none', () => {
  const circles = on(flush, 'DRILL', 'circle');
  expect(circles.map((hole) => [...hole.centre, 2 * hole.radius])).toEqual([
    [150, 90, 8.4],
    [150, 90, 16],
  ]);
  expect(said(flush)).toMatch(/H2: hole 6 mm, 30 mm deep, into the reference edge/);
});

test('a slot through the board is cut, and its open end runs out of the part', () => {
  const slot = loops(flush, 'CUT')[2]!;
  expect(area(slot)).toBeLessThan(0);
  expect(bounds(slot)).toMatchObject({ minX: expect.closeTo(260, 9), minY: 55, maxY: 65 });
  expect(contains(sampleBoard.outline, [bounds(slot).maxX - 5, 60])).toBe('outside');
});

test('the scale bar is 100 mm long', () => {
  const [bar] = on(flush, 'SCALE', 'line');
  expect(Math.hypot(bar!.to[0] - bar!.from[0], bar!.to[1] - bar!.from[1])).toBe(100);
});

test('the title tells the part, its thickness, its material and from where it is seen', () => {
  expect(said(flush)).toMatch(/left side: template, full size, thickness 20\.0 mm/);
  expect(said(flush)).toMatch(/reference face down on the bench, opposite face up, not mirrored/);
  expect(said(flush)).toContain('birch plywood');
});

test('words in inches leave every line where it was; the bar to check the print is 4 in then', () => {
  const inInches = templateOf(sampleBoard, { cutter: 8, units: 'in' });
  const drawn = (template: Template) =>
    template.entities.filter(({ kind, layer }) => kind !== 'text' && layer !== 'SCALE');
  expect(drawn(inInches)).toEqual(drawn(flush));
  const longest = (template: Template) =>
    Math.max(
      ...on(template, 'SCALE', 'line').map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1])),
    );
  expect(longest(inInches)).toBeCloseTo(101.6, 9);
  expect(longest(flush)).toBe(100);
});

test('no words of a row run on past about 240 mm', () => {
  for (const row of [...on(flush, 'NOTE', 'text'), ...on(flush, 'LEGEND', 'text')])
    expect(row.text.length).toBeLessThan(100);
});

test('reference edge and reference end are marked outside the part', () => {
  for (const [name, at] of [
    ['REFERENCE EDGE', 1],
    ['REFERENCE END', 0],
  ] as const) {
    const row = on(flush, 'LEGEND', 'text').find((entity) => entity.text === name);
    expect(row!.at[at]).toBeLessThan(0);
  }
});

test('a bush no larger than the cutter is refused, and so is a cutter without size', () => {
  expect(() => templateOf(disc, { cutter: 8, bush: 8, units: 'mm' })).toThrow(InputError);
  expect(() => templateOf(disc, { cutter: 0, units: 'mm' })).toThrow(InputError);
});

test('a part narrower than the stand-off is refused by name', () => {
  const slip = makeBoard({
    id: 'slip',
    blank: { length: 100, width: 8, thickness: 8 },
    outline: rectangle({ length: 100, width: 8 }),
  });
  expect(() => templateOf(slip, { cutter: 6, bush: 24, units: 'mm' })).toThrow(/slip: .* 9 mm/);
});

test('the title tells the revision of the design, where there is one', () => {
  const told = templateOf(sampleBoard, { cutter: 8, units: 'mm', revision: '0badf00d' });
  expect(said(told)).toContain('rev. 0badf00d');
  expect(said(flush)).not.toContain('rev.');
});

test('a 10° wedge is told by its 10° to the faces, not by the 80° it lies off square', () => {
  const rad = Math.PI / 18;
  const wedge = makeBoard({
    id: 'wedge',
    material: 'white ash',
    blank: { length: 150, width: 45, thickness: 4 + 45 * Math.tan(rad) },
    bevels: [{ id: 'taper', point: [0, 0, 4], normal: [0, -Math.sin(rad), Math.cos(rad)] }],
  });
  expect(said(templateOf(wedge, { cutter: 8, units: 'mm' }))).toMatch(/bevel taper, 10° to the faces/);
  expect(featureTable(wedge, 'mm')[1]).toContain('10° to the faces');
});

/** Of two parallel lines: how far they run within 0.05 mm of each other; 0 for others. */
function sideBySide(a: Of<'line'>, from: readonly [number, number], to: readonly [number, number]): number {
  const [run, x, y] = [Math.hypot(to[0] - from[0], to[1] - from[1]), to[0] - from[0], to[1] - from[1]];
  const aside = [a.from, a.to].map((p) => ((p[0] - from[0]) * y - (p[1] - from[1]) * x) / run);
  if (aside.some((off) => Math.abs(off) > 0.05)) return 0;
  const along = [a.from, a.to].map((p) => ((p[0] - from[0]) * x + (p[1] - from[1]) * y) / run);
  return Math.max(0, Math.min(run, Math.max(...along)) - Math.max(0, Math.min(...along)));
}

test('no mark runs along a line that is cut, with a bearing or a guide bush, nor along another mark', () => {
  for (const template of [flush, bushed]) {
    const marks = on(template, 'MARK', 'line');
    const cut = [...loops(template, 'CUT'), ...loops(template, 'POCKET'), ...loops(template, 'MARK')].flatMap(
      (loop) =>
        loop.map((at, i) => [at, loop[(i + 1) % loop.length]!] as const).filter(([at]) => at.bulge === 0),
    );
    expect(marks.length).toBeGreaterThan(5);
    for (const mark of marks) {
      for (const [at, next] of cut)
        expect(sideBySide(mark, [at.x, at.y], [next.x, next.y])).toBeLessThan(0.1);
      for (const other of marks.filter((one) => one !== mark))
        expect(sideBySide(mark, other.from, other.to)).toBeLessThan(0.1);
    }
  }
});

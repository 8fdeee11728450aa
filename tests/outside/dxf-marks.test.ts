// What a machine and a person make of a template's lines and words, as ezdxf reads them: nothing is followed twice, words stand in
// the part and on no line, and what lies on the far side is dashed (ISO 128-2: hidden edges dashed, centre lines dash and dot).

import { expect } from 'vitest';
import type { Board } from '../../src/board/index.js';
import { type Box, boxesOverlap, textBox } from '../../src/drawing/sheet/index.js';
import { CASES, type Case, type Made, workshop } from './designs.js';
import { EZDXF, testWith } from './programs.js';
import { dxfFilesOf, type ReadDxf, type ReadEntity } from './read-dxf.js';

const made = workshop();

const oneTread = CASES.find(({ called }) => called === 'stool of one tread at a rake of 10°')!;
const twoTreads = CASES.find(({ called }) => called === 'stool of two treads at a rake of 10°')!;

type Point = readonly [x: number, y: number];
type Stretch = readonly [from: Point, to: Point];
type Line = Extract<ReadEntity, { run: unknown }>;
type Text = Extract<ReadEntity, { type: 'TEXT' }>;

const isLine = (one: ReadEntity): one is Line => 'run' in one;

/** Every template of a design, aids too, as read back; lengths in mm. */
const templatesOf = (
  result: Made,
  name: string,
): readonly { readonly id: string; readonly drawing: ReadDxf }[] => {
  const read = [...dxfFilesOf(result)].filter(([path]) => path.includes('/templates/'));
  expect(read.length, name).toBeGreaterThanOrEqual(result.design.boards.length);
  return read.map(([path, drawing]) => ({
    id: path.replace(/^.*templates\//, '').replace(/\.(mm|in)\.dxf$/, ''),
    drawing: drawing.insunits === 1 ? inMm(drawing) : drawing,
  }));
};

const inMm = (drawing: ReadDxf): ReadDxf => ({
  ...drawing,
  entities: drawing.entities.map((one): ReadEntity => {
    const mm = ([x, y]: Point): Point => [x * 25.4, y * 25.4];
    if (isLine(one)) return { ...one, run: one.run.map(mm) };
    return one.type === 'TEXT' ? { ...one, at: mm(one.at), height: one.height * 25.4 } : one;
  }),
});

const stretches = ({ run }: Line): readonly Stretch[] => run.slice(1).map((to, i): Stretch => [run[i]!, to]);

/** Distance from a point to a stretch. */
function distance([x, y]: Point, [[ax, ay], [bx, by]]: Stretch): number {
  const [dx, dy] = [bx - ax, by - ay];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / size));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** The longest stretch of a mark within 0.01 mm of other lines, mm, found by going along it in steps of a fifth of a mm. */
function runTwice(mark: Line, all: readonly Stretch[]): number {
  return Math.max(
    ...stretches(mark).map(([[ax, ay], [bx, by]]) => {
      const others = all.filter(
        ([p, q]) =>
          Math.min(p[0], q[0]) < Math.max(ax, bx) + 1 &&
          Math.max(p[0], q[0]) > Math.min(ax, bx) - 1 &&
          Math.min(p[1], q[1]) < Math.max(ay, by) + 1 &&
          Math.max(p[1], q[1]) > Math.min(ay, by) - 1,
      );
      const run = Math.hypot(bx - ax, by - ay);
      const steps = Math.ceil(run * 5);
      let [longest, covered] = [0, 0];
      for (let i = 0; i <= steps; i += 1) {
        const point: Point = [ax + ((bx - ax) * i) / steps, ay + ((by - ay) * i) / steps];
        covered = others.some((other) => distance(point, other) < 0.01) ? covered + 1 : 0;
        longest = Math.max(longest, covered);
      }
      return (longest * run) / Math.max(1, steps);
    }),
  );
}

/** A mark across the round end of a pocket of 30 mm touches it for no longer than this, 2·√(2·15·0.01), and a step; mm. */
const TOUCH = 1.3;

const boxOf = ({ at, text, height, rotation }: Text): Box =>
  textBox({ at, text, height, rotationDeg: rotation, anchor: 'start' });

/** Even-odd: a ray to the right from the point crosses a closed line an odd number of times. */
const inside = ([x, y]: Point, loop: Line): boolean =>
  stretches(loop).filter(
    ([[ax, ay], [bx, by]]) => ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay),
  ).length %
    2 ===
  1;

/** Whether a stretch comes into a box, tried at points a tenth of a mm apart. */
const comesInto = ([[ax, ay], [bx, by]]: Stretch, box: Box): boolean => {
  if (Math.max(ax, bx) < box.minX || Math.min(ax, bx) > box.maxX) return false;
  if (Math.max(ay, by) < box.minY || Math.min(ay, by) > box.maxY) return false;
  const steps = Math.ceil(Math.hypot(bx - ax, by - ay) * 10) + 1;
  return Array.from({ length: steps + 1 }, (_, i) => i / steps).some((t) => {
    const [x, y] = [ax + (bx - ax) * t, ay + (by - ay) * t];
    return x > box.minX && x < box.maxX && y > box.minY && y < box.maxY;
  });
};

const corners = ({ minX, minY, maxX, maxY }: Box): readonly Point[] => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];

/** Words of the other unit are longer or shorter and the lines the same: one unit for the others is enough. */
const WAYS: readonly {
  readonly design: Case;
  readonly units: 'mm' | 'in';
  readonly curves: 'arcs' | 'segments';
}[] = [
  { design: oneTread, units: 'mm', curves: 'arcs' },
  { design: oneTread, units: 'in', curves: 'segments' },
  { design: twoTreads, units: 'in', curves: 'arcs' },
  { design: CASES[0]!, units: 'in', curves: 'arcs' },
  { design: CASES[1]!, units: 'mm', curves: 'arcs' },
];

for (const { design, units, curves } of WAYS) {
  testWith(
    EZDXF,
    `templates of the ${design.called} in ${units}, ${curves}: nothing is followed twice, words stand in the part and free, the far side is dashed`,
    async () => {
      const result = await made(design, { only: ['dxf'], units, curves });
      let far = 0;
      for (const { id, drawing } of templatesOf(result, design.called)) {
        markedOnce(id, drawing);
        wordsInPart(id, drawing);
        const perMm = units === 'mm' ? 1 : 1 / 25.4;
        expect(drawing.linetypes).toMatchObject({
          FAR_SIDE: [3, -1.5].map((dash) => expect.closeTo(dash * perMm, 5)),
          CENTRE_LINE: [8, -1.5, 0.5, -1.5].map((dash) => expect.closeTo(dash * perMm, 5)),
        });
        const board = result.design.boards.find((placed) => placed.board.id === id)?.board;
        if (!board) continue;
        const dashed = drawing.entities.filter(
          (one) => isLine(one) && one.linetype === 'FAR_SIDE' && one.layer !== 'MARK',
        );
        expect(dashed.length, id).toBe(fromBelow(board));
        far += dashed.length;
      }
      // a frame is joined at its ends only
      if (design !== CASES[1]) expect(far).toBeGreaterThan(0);
    },
  );
}

function markedOnce(id: string, { entities }: ReadDxf): void {
  const lines = entities.filter(isLine);
  const taken = lines.filter(({ layer }) => /^(CUT|POCKET|DRILL)$/.test(layer)).flatMap(stretches);
  for (const mark of lines.filter(({ layer }) => layer === 'MARK')) {
    expect(runTwice(mark, taken), `${id}: ${JSON.stringify(mark.run)}`).toBeLessThan(TOUCH);
    taken.push(...stretches(mark));
  }
}

function wordsInPart(id: string, { entities }: ReadDxf): void {
  const lines = entities.filter(isLine);
  const closed = lines.filter(({ layer, type }) => type !== 'LINE' && /^(CUT|POCKET|DRILL)$/.test(layer));
  const all = lines.flatMap(stretches);
  const texts = entities.filter((one): one is Text => one.type === 'TEXT');
  const notes = texts.filter(({ layer }) => layer === 'NOTE');
  expect(notes.length, id).toBeGreaterThan(0);
  for (const note of notes) {
    const box = boxOf(note);
    const where = `${id}: ${note.text}`;
    // in the outline and in nothing that is taken out
    for (const corner of corners(box))
      expect(
        closed.filter((loop) => inside(corner, loop)).map(({ layer }) => layer),
        where,
      ).toEqual(['CUT']);
    expect(
      all.filter((one) => comesInto(one, box)),
      where,
    ).toEqual([]);
    expect(
      texts.filter((other) => other !== note && boxesOverlap(boxOf(other), box)),
      where,
    ).toEqual([]);
  }
}

/** Pockets, and what widens a hole, on the reference face; what goes through is seen from both sides. */
const fromBelow = ({ mortises, slots, holes, grooves }: Board): number => {
  const below = ({ face }: { readonly face: string }) => face === 'reference-face';
  return [
    ...mortises.filter(below),
    ...slots.filter((slot) => below(slot) && slot.depth !== 'through'),
    ...grooves.filter(below),
    ...holes.filter((hole) => below(hole) && hole.depth !== 'through'),
    ...holes
      .filter(below)
      .flatMap(({ counterbore, countersink }) => [counterbore, countersink].filter((one) => one)),
  ].length;
};

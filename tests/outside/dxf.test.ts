// Checked against ezdxf, a second reader of DXF, and its audit; unit codes against the DXF Reference (HEADER variables:
// $INSUNITS 4 = millimetres, 1 = inches; $MEASUREMENT 1 = metric, 0 = English; $ACADVER AC1021 = 2007, AC1015 = 2000);
// pockets against the closed form of an obround, π·d²/4 + d·(L − d).

import { expect } from 'vitest';
import type { Board, Slot } from '../../src/board/index.js';
import { LAYERS } from '../../src/drawing/index.js';
import { arcs, area, polygonDeficit } from '../../src/profile/index.js';
import { CASES, type Made, QUICK_KINDS, READ_BACK, workshop } from './designs.js';
import { EZDXF, testWith } from './programs.js';
import { dxfFilesOf, faceVolume, type ReadDxf, type ReadPolyline } from './read-dxf.js';

const made = workshop();

/** A square of 1 mm in square inches. */
const IN2 = 1 / 25.4 ** 2;

/** Corners are rounded as they are written: up to this far from where they are meant, mm. */
const GRID = 1e-5;

const wide = ({ face }: { readonly face: string }): boolean => /^(reference|opposite)-face$/.test(face);

const obroundArea = (length: number, width: number): number =>
  (Math.PI * width ** 2) / 4 + width * (length - width);

/** A template lets the cutter run out of an open end by its own width. */
const slotArea = ({ length, width, openAt }: Slot): number =>
  obroundArea(length + (openAt === undefined ? 0 : width), width);

/** Areas of the closed lines of a layer, smallest first: what stays is positive, what is taken out negative. */
const meantAreas = (board: Board, layer: 'CUT' | 'POCKET'): readonly number[] => {
  const slots = board.slots.filter(wide);
  const through = (cut: boolean) => slots.filter(({ depth }) => (depth === 'through') === cut);
  return (
    layer === 'CUT'
      ? [
          Math.abs(area(board.outline)),
          ...board.openings.map(({ outline }) => -Math.abs(area(outline))),
          ...through(true).map((slot) => -slotArea(slot)),
        ]
      : [
          ...board.mortises.filter(wide).map(({ length, width }) => -obroundArea(length, width)),
          ...through(false).map((slot) => -slotArea(slot)),
        ]
  ).toSorted((a, b) => a - b);
};

/** Radii of all arcs of a layer, smallest first. */
const meantRadii = (board: Board, layer: 'CUT' | 'POCKET' | 'DRILL'): readonly number[] => {
  const slots = board.slots.filter(wide).map((slot) => ({ ...slot, through: slot.depth === 'through' }));
  const ends = (of: readonly { readonly width: number }[]) =>
    of.flatMap(({ width }) => [width / 2, width / 2]);
  const found = {
    CUT: [
      ...[board.outline, ...board.openings.map(({ outline }) => outline)].flatMap((outline) =>
        arcs(outline).map(({ radius }) => radius),
      ),
      ...ends(slots.filter(({ through }) => through)),
    ],
    POCKET: ends([...board.mortises.filter(wide), ...slots.filter(({ through }) => !through)]),
    DRILL: board.holes
      .filter(wide)
      .flatMap(({ diameter, counterbore, countersink }) =>
        [diameter, counterbore?.diameter, countersink?.diameter].flatMap((d) => (d ? [d / 2] : [])),
      ),
  };
  return found[layer].toSorted((a, b) => a - b);
};

const lines = (drawing: ReadDxf, layer?: string): readonly ReadPolyline[] =>
  drawing.entities.filter(
    (entity) => entity.type === 'LWPOLYLINE' && (layer === undefined || entity.layer === layer),
  ) as readonly ReadPolyline[];

/** Every template of a design with the board it is of. */
function templates(result: Made): readonly { readonly board: Board; readonly drawing: ReadDxf }[] {
  const read = [...dxfFilesOf(result)];
  return result.design.boards.map(({ board }) => ({
    board,
    drawing: read.find(([path]) => path.includes(`/templates/${board.id}.`))![1],
  }));
}

const near = (values: readonly number[], by: number) => values.map((value) => expect.closeTo(value, by));

const sorted = (values: readonly number[]) => values.toSorted((a, b) => a - b);

/** A sound drawing of declared layers, all of whose polylines are closed once. */
function sound({ board, drawing }: { readonly board: Board; readonly drawing: ReadDxf }): void {
  expect(drawing.errors, board.id).toEqual([]);
  expect(drawing.fixes, board.id).toEqual([]);
  expect(drawing.layers, board.id).toEqual(expect.arrayContaining([...LAYERS]));
  expect(
    drawing.used.filter((layer) => !(LAYERS as readonly string[]).includes(layer)),
    board.id,
  ).toEqual([]);
  const closed = lines(drawing);
  expect(closed.length, board.id).toBeGreaterThan(0);
  expect(
    closed.filter(({ layer }) => layer === 'CUT' || layer === 'POCKET').every((line) => line.closed),
    board.id,
  ).toBe(true);
  expect(closed.filter(({ repeated }) => repeated > 0).length, board.id).toBe(0);
}

for (const design of READ_BACK) {
  testWith(
    EZDXF,
    `the templates of the ${design.called} read back sound, in mm, with the boards' areas and radii`,
    async () => {
      for (const { board, drawing } of templates(await made(design, { only: ['dxf'] }))) {
        sound({ board, drawing });
        expect(drawing).toMatchObject({ version: 'AC1021', insunits: 4, measurement: 1 });
        for (const layer of ['CUT', 'POCKET'] as const) {
          const found = lines(drawing, layer);
          expect(sorted(found.map((line) => line.area)), `${board.id} ${layer}`).toEqual(
            meantAreas(board, layer).map((meant) => expect.closeTo(meant, 2)),
          );
          expect(sorted(found.flatMap(({ radii }) => radii)), `${board.id} ${layer}`).toEqual(
            near(meantRadii(board, layer), 4),
          );
        }
        const drilled = drawing.entities.flatMap((entity) =>
          entity.type === 'CIRCLE' ? [entity.radius] : [],
        );
        expect(sorted(drilled), board.id).toEqual(near(meantRadii(board, 'DRILL'), 4));
      }
    },
  );

  testWith(
    EZDXF,
    `the faces of the ${design.called} read back sound, in mm, a layer for each piece with its volume`,
    async () => {
      const result = await made(design, { only: ['faces'] });
      const [, drawing] = [...dxfFilesOf(result)].find(([path]) => path.includes('/faces/'))!;
      expect(drawing.errors).toEqual([]);
      expect(drawing.fixes).toEqual([]);
      expect(drawing.insunits).toBe(4);
      const tenons = result.design.joints.flatMap((joint) => joint.tenons.map(({ id }) => id));
      const pieces = [
        ...result.design.boards.map(({ board }) => board.id),
        ...tenons.map((id) => id.replaceAll('/', '-')),
        ...result.design.hardware.map(({ id }) => id),
      ];
      expect(drawing.used).toEqual(pieces.toSorted());
      for (const { id, volumeMm3, blank } of result.summary.boards) {
        const surface =
          4 * (blank.length * blank.width + blank.width * blank.thickness + blank.thickness * blank.length);
        const found = faceVolume(drawing.entities.filter(({ layer }) => layer === id));
        expect(Math.abs(found - volumeMm3), `${id}: ${found}, told ${volumeMm3}`).toBeLessThan(
          surface * GRID,
        );
      }
    },
  );
}

for (const design of [CASES[0]!, CASES[1]!, CASES.at(-1)!]) {
  testWith(
    EZDXF,
    `every DXF file written for the ${design.called} reads back without a fault, in mm`,
    async () => {
      // that no kind left out writes one, the frame shows
      const result = await made(design, design === CASES[1] ? {} : { only: QUICK_KINDS });
      const read = dxfFilesOf(result);
      expect(read.size).toBeGreaterThan(result.design.boards.length);
      for (const [path, { errors, fixes, insunits }] of read)
        expect({ errors, fixes, insunits }, path).toEqual({ errors: [], fixes: [], insunits: 4 });
    },
  );
}

for (const design of [CASES[0]!, CASES.at(-1)!]) {
  testWith(
    EZDXF,
    `templates of the ${design.called} in inches say so and are 25.4 times smaller`,
    async () => {
      for (const { board, drawing } of templates(await made(design, { only: ['dxf'], units: 'in' }))) {
        sound({ board, drawing });
        expect(drawing).toMatchObject({ insunits: 1, measurement: 0 });
        for (const layer of ['CUT', 'POCKET'] as const) {
          expect(sorted(lines(drawing, layer).map((line) => line.area)), `${board.id} ${layer}`).toEqual(
            near(
              meantAreas(board, layer).map((meant) => meant * IN2),
              4,
            ),
          );
        }
      }
    },
  );

  testWith(EZDXF, `templates of the ${design.called} in straight pieces lose only the facets`, async () => {
    const straight = await made(design, { only: ['dxf'], curves: 'segments' });
    for (const { board, drawing } of templates(straight)) {
      sound({ board, drawing });
      expect(drawing).toMatchObject({ insunits: 4, measurement: 1 });
      expect(lines(drawing).flatMap(({ radii }) => radii)).toEqual([]);
      const outline = lines(drawing, 'CUT').filter((line) => line.area > 0);
      expect(outline).toHaveLength(1);
      const meant = Math.abs(area(board.outline)) - polygonDeficit(board.outline);
      const around = 2 * (board.blank.length + board.blank.width);
      expect(Math.abs(outline[0]!.area - meant), board.id).toBeLessThan(around * GRID);
    }
  });
}

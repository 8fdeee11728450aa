import type { IDxf } from 'dxf-parser';
import { expect, test } from 'vitest';
import { LAYERS, type Template, templateOf } from '../../src/drawing/index.js';
import { templateDxf, templateFileName } from '../../src/files/templates/template-dxf.js';
import { arcs, area, type Profile, polygonDeficit } from '../../src/profile/index.js';
import { sampleBoard } from '../drawing/sample-board.js';
import { parseDxf } from './parse-dxf.js';

const template = templateOf(sampleBoard, { cutter: 8, bush: 17, units: 'mm' });
const mm = { units: 'mm', curves: 'arcs', failed: false } as const;

interface Polyline {
  readonly type: string;
  readonly layer: string;
  readonly shape: boolean;
  readonly handle: string;
  readonly vertices: readonly { x: number; y: number; bulge?: number }[];
}

const polylines = (drawing: IDxf) =>
  (drawing.entities as unknown as Polyline[]).filter((entity) => entity.type === 'LWPOLYLINE');

const profiles = (from: Template): Profile[] =>
  from.entities.flatMap((entity) => (entity.kind === 'profile' ? [entity.profile] : []));

/** Shoelace and r²(θ − sin θ)/2 with θ = 4·atan(bulge), from the numbers in the file. */
function fileArea({ vertices }: Polyline): number {
  return vertices.reduce((sum, { x, y, bulge = 0 }, i) => {
    const next = vertices[(i + 1) % vertices.length]!;
    const turn = 4 * Math.atan(bulge);
    const segment =
      bulge === 0 ? 0 : fileRadius(x - next.x, y - next.y, bulge) ** 2 * (turn - Math.sin(turn));
    return sum + (x * next.y - next.x * y + segment) / 2;
  }, 0);
}

const fileRadius = (dx: number, dy: number, bulge: number) =>
  (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));

const fileRadii = ({ vertices }: Polyline): number[] =>
  vertices.flatMap(({ x, y, bulge = 0 }, i) => {
    const next = vertices[(i + 1) % vertices.length]!;
    return bulge === 0 ? [] : [fileRadius(x - next.x, y - next.y, bulge)];
  });

test('the file is AC1021 in millimetres, metric, with every layer declared', () => {
  const drawing = parseDxf(templateDxf(template, mm));
  expect(drawing.header).toMatchObject({ $ACADVER: 'AC1021', $INSUNITS: 4, $MEASUREMENT: 1 });
  expect(Object.keys(drawing.tables.layer.layers)).toEqual(expect.arrayContaining([...LAYERS]));
});

test('the code page is named: a reader that repairs files takes AC1021 for UTF-8 only then (ezdxf 0.18, recover)', () => {
  expect(parseDxf(templateDxf(template, mm)).header).toMatchObject({ $DWGCODEPAGE: 'ANSI_1252' });
});

test('every closed line reads back closed, with its area and the radius of each arc', () => {
  const found = polylines(parseDxf(templateDxf(template, mm)));
  const meant = profiles(template);
  expect(found).toHaveLength(meant.length);
  found.forEach((line, i) => {
    expect(line.shape).toBe(true);
    expect(line.vertices).toHaveLength(meant[i]!.length);
    expect(fileArea(line)).toBeCloseTo(area(meant[i]!), 2);
    expect(fileRadii(line)).toEqual(arcs(meant[i]!).map((arc) => expect.closeTo(arc.radius, 4)));
  });
});

test('no vertex stands on the next one, the last on the first included', () => {
  for (const curves of ['arcs', 'segments'] as const) {
    for (const line of polylines(parseDxf(templateDxf(template, { ...mm, curves })))) {
      const gaps = line.vertices.map((at, i) => {
        const next = line.vertices[(i + 1) % line.vertices.length]!;
        return Math.hypot(next.x - at.x, next.y - at.y);
      });
      expect(Math.min(...gaps)).toBeGreaterThan(1e-3);
    }
  }
});

test('in inches the file says so, in its name too, and is 25.4 times smaller', () => {
  const drawing = parseDxf(templateDxf(template, { ...mm, units: 'in' }));
  expect(drawing.header).toMatchObject({ $INSUNITS: 1, $MEASUREMENT: 0 });
  const [outline] = polylines(drawing);
  expect(fileArea(outline!)).toBeCloseTo(area(profiles(template)[0]!) / 25.4 ** 2, 5);
  expect(fileRadii(outline!)).toEqual(Array(2).fill(expect.closeTo(20.5 / 25.4, 6)));
  expect(templateFileName(template, 'in')).toBe('left-side.in.dxf');
  expect(templateFileName(template, 'mm')).toBe('left-side.mm.dxf');
});

test('with straight pieces no arc is left, layers and units stay, and no area is lost but the facets', () => {
  const drawing = parseDxf(templateDxf(template, { ...mm, curves: 'segments' }));
  expect(drawing.header).toMatchObject({ $INSUNITS: 4, $MEASUREMENT: 1 });
  expect(Object.keys(drawing.tables.layer.layers)).toEqual(expect.arrayContaining([...LAYERS]));
  expect(drawing.entities.map((entity) => entity.type)).not.toContain('CIRCLE');
  const closed = polylines(drawing).filter((line) => line.shape);
  expect(closed.flatMap(fileRadii)).toEqual([]);
  const [outline] = closed.filter((line) => line.layer === 'CUT');
  const meant = profiles(template)[0]!;
  // points are rounded to 1e-6 mm
  expect(Math.abs(fileArea(outline!) - area(meant) + polygonDeficit(meant))).toBeLessThan(1e-6 * 820);
});

test('both ways draw the same lines on the same layers', () => {
  const count = (curves: 'arcs' | 'segments', layer: string) =>
    parseDxf(templateDxf(template, { ...mm, curves })).entities.filter((entity) => entity.layer === layer)
      .length;
  for (const layer of LAYERS) {
    expect(count('segments', layer), layer).toBe(count('arcs', layer));
    expect(count('arcs', layer), layer).toBe(
      template.entities.filter((entity) => entity.layer === layer).length,
    );
  }
});

test('a design that failed its checks says so in the file, another does not', () => {
  for (const curves of ['arcs', 'segments'] as const) {
    const words = (failed: boolean) =>
      (
        parseDxf(templateDxf(template, { ...mm, curves, failed })).entities as unknown as { text?: string }[]
      ).map((entity) => entity.text);
    expect(words(true)).toContain('FAILED CHECKS');
    expect(words(false)).not.toContain('FAILED CHECKS');
  }
});

test('the same template is the same bytes however many were written before', () => {
  for (const curves of ['arcs', 'segments'] as const) {
    const first = templateDxf(template, { ...mm, curves });
    templateDxf(
      { board: 'other', entities: [...template.entities, ...template.entities] },
      { ...mm, curves },
    );
    expect(templateDxf(template, { ...mm, curves })).toEqual(first);
  }
});

test('no number is written with an exponent or as minus zero', () => {
  for (const curves of ['arcs', 'segments'] as const) {
    const lines = new TextDecoder().decode(templateDxf(template, { ...mm, curves })).split('\n');
    const start = lines.indexOf('ENTITIES');
    expect(start).toBeGreaterThan(0);
    expect(
      lines.slice(start).filter((row) => /^-?\d[\d.]*e[-+]/i.test(row) || /^-0(\.0*)?$/.test(row)),
    ).toEqual([]);
  }
});

test('a line break in a name cannot break the file', () => {
  const odd: Template = {
    board: 'x',
    entities: [
      { layer: 'NOTE', kind: 'text', at: [0, 0], height: 5, text: 'a\r\n  0\nCIRCLE', rotationDeg: 0 },
      ...template.entities,
    ],
  };
  for (const curves of ['arcs', 'segments'] as const) {
    expect(parseDxf(templateDxf(odd, { ...mm, curves })).entities).toHaveLength(odd.entities.length);
  }
});

import { describe, expect, test } from 'vitest';
import { sheetsDxf } from '../../src/files/papers/sheets-dxf.js';
import { sheetsSvg } from '../../src/files/papers/sheets-svg.js';
import { INCH, speaker } from '../../src/length/index.js';
import { type LayoutPart, lumberLayouts, type Shop, sheetLayouts } from '../../src/shop/index.js';
import { aShop } from '../shop/a-shop.js';
import { parseDxf } from './parse-dxf.js';

const say = speaker('mm');
const paper = { say, revision: '1a2b3c' };

const shop: Shop = {
  ...aShop,
  sheets: [{ name: 'birch plywood', length: 2440, width: 1220, thickness: 12 }],
  lumber: [{ thickness: 32, width: 150, length: 2400, count: 3 }],
};

const parts: readonly LayoutPart[] = [
  {
    mark: 'P',
    name: 'plate & "frame" <1>',
    material: 'birch plywood',
    length: 700,
    width: 400,
    thickness: 12,
    scrap: false,
  },
  {
    mark: 'Q',
    name: 'side',
    material: 'birch plywood',
    length: 500,
    width: 300,
    thickness: 12,
    scrap: false,
  },
  { mark: 'R', name: 'rail', material: 'white ash', length: 900, width: 70, thickness: 30, scrap: false },
];

const layouts = [...sheetLayouts(parts, shop, say), ...lumberLayouts(parts, shop, say).layouts];
const pieces = layouts.flatMap(({ plan }) => plan.pieces);

describe('the drawing of the layouts', () => {
  const svg = sheetsSvg(layouts, paper);
  const attribute = (element: string, name: string) => new RegExp(`${name}="([^"]*)"`).exec(element)?.[1];
  test('is as large in mm as its view box, with no padding', () => {
    const [width, height] = ['width', 'height'].map(
      (side) => attribute(svg.slice(svg.indexOf('<svg')), side)!,
    );
    expect(attribute(svg, 'viewBox')).toBe(`0 0 ${width!.replace('mm', '')} ${height!.replace('mm', '')}`);
    expect(width).toMatch(/^\d+(\.\d+)?mm$/);
  });

  test('states its scale, and every part measures that scale', () => {
    const scale = Number(/drawn 1 : (\d+)/.exec(svg)![1]);
    const drawn = [...svg.matchAll(/<path class="visible" data-part="\w+" d="M([^Z]*)Z"\/>/g)].map(
      ([, d]) => {
        const corners = d!.split('L').map((corner) => corner.split(' ').map(Number));
        return [0, 1].map((axis) => {
          const along = corners.map((corner) => corner[axis]!);
          return Math.round((Math.max(...along) - Math.min(...along)) * scale * 10) / 10;
        });
      },
    );
    expect(drawn.toSorted()).toEqual(
      [
        [700, 400],
        [500, 300],
        [900, 70],
      ].toSorted(),
    );
  });

  test('numbers every cut in a heavy ring, and names every offcut, on which no grain is drawn', () => {
    const count = (pattern: RegExp) => [...svg.matchAll(pattern)].length;
    expect(count(/<circle class="visible"/g)).toBe(pieces.reduce((sum, { cuts }) => sum + cuts.length, 0));
    for (const { id } of pieces.flatMap(({ offcuts }) => offcuts)) expect(svg).toContain(`>${id}<`);
    // grain stands on parts and on the pictures of cuts that end one, and lies along the stock
    const plain = sheetsSvg(
      layouts.map((layout) => ({
        ...layout,
        plan: { ...layout.plan, pieces: layout.plan.pieces.map((one) => ({ ...one, parts: [], cuts: [] })) },
      })),
      paper,
    );
    expect(svg).toContain('class="hatching"');
    expect(plain).not.toContain('class="hatching"');
  });

  test('lists every cut with its fence setting and carries the revision', () => {
    for (const { cuts } of pieces)
      for (const { number, direction, at, near } of cuts)
        if (near.kind !== 'nothing') expect(svg).toContain(`${number}  ${direction} at ${say.length(at)}`);
    expect(svg).toContain('revision 1a2b3c');
  });

  test('is black on white', () => {
    const colours = [...svg.matchAll(/(?:fill|stroke)[:=]"?([#\w()]+)/g)].map(([, colour]) => colour);
    expect([...new Set(colours)].toSorted()).toEqual(['#111', '#fff', 'none']);
  });

  test('keeps marks of markup out of the names of parts', () => {
    expect(svg).toContain('plate &amp; &quot;frame&quot; &lt;1&gt;');
  });

  test('of nothing says that there is nothing', () => {
    expect(sheetsSvg([], paper)).toContain('Nothing to lay out.');
  });
});

interface Polyline {
  readonly type: string;
  readonly layer: string;
  readonly vertices: readonly { x: number; y: number }[];
}

describe.each([
  ['mm', 1, 4],
  ['in', 1 / INCH, 1],
] as const)('the DXF of the layouts in %s', (units, perMm, insunits) => {
  const drawing = parseDxf(sheetsDxf(layouts, units, paper));
  const lines = drawing.entities as unknown as Polyline[];

  test('names its unit and draws every part full size on the layer CUT', () => {
    expect(drawing.header.$INSUNITS).toBe(insunits);
    const sizes = lines
      .filter(({ type, layer }) => type === 'LWPOLYLINE' && layer === 'CUT')
      .map(({ vertices }) =>
        (['x', 'y'] as const).map((axis) => {
          const along = vertices.map((vertex) => vertex[axis] / perMm);
          return Math.round((Math.max(...along) - Math.min(...along)) * 1000) / 1000;
        }),
      );
    expect(sizes.toSorted()).toEqual(
      [
        [700, 400],
        [500, 300],
        [900, 70],
      ].toSorted(),
    );
  });

  test('draws the middle of every saw cut, beside every outline by half a kerf or more, and a bar of 100 mm', () => {
    const cuts = pieces.reduce((sum, piece) => sum + piece.cuts.length, 0);
    const marks = lines.filter(({ type, layer }) => type === 'LINE' && layer === 'MARK');
    expect(marks).toHaveLength(cuts);
    const outlines = lines
      .filter(({ type, layer }) => type === 'LWPOLYLINE' && layer === 'CUT')
      .flatMap(({ vertices }) =>
        vertices.map((from, i) => [from, vertices[(i + 1) % vertices.length]!] as const),
      );
    const kerf = layouts[0]!.kerf;
    for (const { vertices } of marks) {
      const along = vertices[0]!.x === vertices[1]!.x ? 'x' : 'y';
      const across = along === 'x' ? 'y' : 'x';
      for (const [from, to] of outlines) {
        if (from[along] !== to[along]) continue;
        const [lo, hi] = [from, to].map((p) => p[across]).toSorted((a, b) => a - b);
        const [low, high] = vertices.map((p) => p[across]).toSorted((a, b) => a - b);
        if (hi! <= low! || lo! >= high!) continue;
        expect(Math.abs(from[along] - vertices[0]![along]) / perMm).toBeGreaterThan(kerf / 2 - 1e-3);
      }
    }
    const [bar] = lines.filter(({ type, layer }) => type === 'LINE' && layer === 'SCALE');
    expect((bar!.vertices[1]!.x - bar!.vertices[0]!.x) / perMm).toBeCloseTo(100, 5);
  });
});

import { expect, test } from 'vitest';
import type { Sheet } from '../../src/drawing/index.js';
import { sheetSvg } from '../../src/files/svg/sheet-svg.js';

const sheet: Sheet = {
  id: 'sample',
  title: 'R & D <sample>',
  width: 210,
  height: 297,
  scale: '1:1',
  entities: [
    { kind: 'line', line: 'visible', from: [10, 20], to: [110, 20] },
    { kind: 'arc', line: 'visible', centre: [50, 100], radius: 10, startDeg: 0, sweepDeg: 90 },
    { kind: 'arc', line: 'hidden', centre: [50, 100], radius: 10, startDeg: 0, sweepDeg: 270 },
    { kind: 'circle', line: 'centre', centre: [30, 40], radius: 2.5 },
    {
      kind: 'polyline',
      line: 'dimension',
      points: [
        [0, 0],
        [1, 2],
        [3, 0],
      ],
      closed: true,
      fill: 'ink',
    },
    { kind: 'text', at: [20, 30], text: 'Ø8 <½">', height: 2.5, anchor: 'middle', rotationDeg: 90 },
  ],
};

const svg = sheetSvg(sheet);
const paths = [...svg.matchAll(/ d="([^"]+)"/g)].map(([, d]) => d!);

test('a sheet is as large as its paper, in mm, with nothing around it', () => {
  expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
});

test('y runs down: what is 20 mm above the lower edge is 277 mm below the upper one', () => {
  expect(paths[0]).toBe('M10 277L110 277');
});

test('an arc starts and ends where it should and passes on the right side', () => {
  const arcs = paths.filter((d) => d.includes('A'));
  const read = (d: string) => d.match(/-?\d+(\.\d+)?/g)!.map(Number);
  // a quarter from 3 o'clock to 12 o'clock; up on the paper is a smaller y
  expect(read(arcs[0]!)).toEqual([60, 197, 10, 10, 0, 0, 0, 50, 187]);
  // three quarters: the large way round, ending at 6 o'clock
  expect(read(arcs[1]!)).toEqual([60, 197, 10, 10, 0, 1, 0, 50, 207]);
});

test('text stays text, with its signs escaped, turned as asked and as high as asked', () => {
  expect(svg).toMatch(
    /<text x="20" y="267" font-size="3\.429" text-anchor="middle" transform="rotate\(-90 20 267\)">Ø8 &lt;½&quot;&gt;<\/text>/,
  );
  expect(svg).toContain('<title>R &amp; D &lt;sample&gt;</title>');
});

test('visible lines are twice as wide as hidden ones (ISO 128-2), hidden and centre lines are dashed', () => {
  const width = (name: string) => Number(new RegExp(`\\.${name}\\{stroke-width:([\\d.]+)`).exec(svg)![1]);
  // 0.35 and 0.18 mm are neighbours but one in the standard's series, whose steps are rounded
  expect(width('visible') / width('hidden')).toBeGreaterThan(1.9);
  expect(width('visible') / width('hidden')).toBeLessThan(2.1);
  expect(svg).toMatch(/\.hidden\{[^}]*stroke-dasharray/);
  expect(svg).toMatch(/\.centre\{[^}]*stroke-dasharray/);
  expect(svg).not.toMatch(/\.visible\{[^}]*stroke-dasharray/);
});

test('the same sheet is the same bytes', () => {
  expect(sheetSvg(sheet)).toBe(svg);
});

// Checked against admesh, a program that repairs STL files: it must find nothing to repair.

import { expect } from 'vitest';
import { CASES, type Made, READ_BACK, workshop } from './designs.js';
import { ADMESH, printed, testWith } from './programs.js';

const made = workshop();

/** A row of the report: `Edges fixed :  0`, or `Number of facets :  540  540` before and after repair. */
function numbers(report: string, row: string): readonly number[] {
  const found = new RegExp(`^${row}\\s*:\\s*(\\d+)(?:\\s+(\\d+))?`, 'm').exec(report);
  if (!found) throw new Error(`admesh prints no row '${row}':\n${report}`);
  return found.slice(1).flatMap((digits) => (digits === undefined ? [] : [Number(digits)]));
}

/**
 * Every repair of the surface admesh tells of. Its row `Normals fixed` is left to stl.test.ts, which works normals out in
 * double precision: admesh does so in single, and by its own rounding finds those of long slivers wrong.
 */
const REPAIRS = [
  'Degenerate facets',
  'Edges fixed',
  'Facets removed',
  'Facets added',
  'Facets reversed',
  'Backwards edges',
] as const;

/** What admesh finds in a file; all of `repairs` are 0 in a sound one. */
function look(path: string) {
  const report = printed(ADMESH, path);
  return {
    parts: numbers(report, 'Number of parts')[0],
    facets: numbers(report, 'Number of facets'),
    disconnected: numbers(report, 'Total disconnected facets'),
    repairs: Object.fromEntries(REPAIRS.map((row) => [row, numbers(report, row)[0]])),
  };
}

const NONE = Object.fromEntries(REPAIRS.map((row) => [row, 0]));

/** Bodies of the whole design: each board, tenon and piece of hardware is closed by itself. */
const bodies = ({ design }: Made): number =>
  design.boards.length +
  design.joints.reduce((sum, joint) => sum + joint.tenons.length, 0) +
  design.hardware.length;

/** Reads every solid of a design: none needs repair, and the whole has as many closed parts as bodies. */
function sound(result: Made): void {
  const files = result.files.map((file) => file.path).filter((path) => path.endsWith('.stl'));
  const kinds = new Set(
    result.design.joints.flatMap((joint) =>
      joint.tenons.map(({ thickness, width, length }) => [thickness, width, length].join()),
    ),
  );
  expect(files.length).toBeGreaterThanOrEqual(result.design.boards.length + Math.min(kinds.size, 1) + 2);
  for (const path of files) {
    const whole = /(assembly|exploded)\.mm\.stl$/.test(path);
    const { parts, facets, disconnected, repairs } = look(path);
    expect(repairs, path).toEqual(NONE);
    expect(disconnected, path).toEqual([0, 0]);
    expect(facets[1], path).toBe(facets[0]);
    expect(parts, path).toBe(whole ? bodies(result) : 1);
  }
}

for (const design of READ_BACK) {
  testWith(ADMESH, `no solid of the ${design.called} needs repair, and each body is one part`, async () => {
    sound(await made(design, { only: ['stl'] }));
  });
}

testWith(ADMESH, 'solids written as text need no repair either', async () => {
  sound(await made(CASES.at(-1)!, { only: ['stl'], format: 'ascii' }));
});

// Checked against the published layout of binary STL (80 bytes, a count, 50 bytes a triangle, little-endian:
// rpdrc.ic.polyu.edu.hk "stl_binary_format"; kaitai.io format gallery, stl.ksy), against the divergence theorem and
// against Euler's formula.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { Board } from '../../src/board/index.js';
import { type Case, type Made, READ_BACK, workshop } from './designs.js';
import { readStl, type Surface, surface } from './read-stl.js';

const made = workshop();

const solidsOf = (of: Case): Promise<Made> => made(of, { only: ['stl'] });

const read = ({ folder }: Made, name: string): Surface =>
  surface(readStl(readFileSync(path.join(folder, 'stl', `${name}.mm.stl`))));

/** Single precision holds a coordinate to a 2^24th of it; a corner may be rounded in two steps. */
const gridOf = ({ size }: Surface): number => Math.max(...size) / 2 ** 23;

/** A volume whose faces each stand off by at most the grid. */
const allowance = (of: Surface): number => of.area * gridOf(of);

/** Handles of a board: every way through it that is closed all round. */
const waysThrough = ({ openings, holes, slots }: Board): number =>
  openings.length +
  holes.filter(({ depth }) => depth === 'through').length +
  slots.filter(({ depth, openAt }) => depth === 'through' && openAt === undefined).length;

for (const design of READ_BACK) {
  test(`every solid of the ${design.called} is 84 bytes and 50 more for each triangle`, async () => {
    const { files } = await solidsOf(design);
    const solids = files.filter((file) => file.path.endsWith('.stl'));
    expect(solids.length).toBeGreaterThan(3);
    for (const { path: file, bytes } of solids) {
      const content = readFileSync(file);
      expect(content.length, file).toBe(84 + 50 * content.readUInt32LE(80));
      expect(content.length, file).toBe(bytes);
      expect(content.subarray(0, 5).toString('latin1').toLowerCase(), file).not.toBe('solid');
    }
  });

  test(`the triangles of each board of the ${design.called} enclose the volume the summary tells`, async () => {
    const result = await solidsOf(design);
    for (const { id, volumeMm3 } of result.summary.boards) {
      const found = read(result, id);
      expect(Math.abs(found.volume - volumeMm3), `${id}: ${found.volume}, told ${volumeMm3}`).toBeLessThan(
        allowance(found),
      );
    }
  });

  test(`every edge of the ${design.called} is shared by two triangles that run along it in opposite directions`, async () => {
    const result = await solidsOf(design);
    for (const { path: file } of result.files.filter((one) => one.path.endsWith('.stl'))) {
      const found = surface(readStl(readFileSync(file)));
      expect(found.openEdges, file).toBe(0);
      expect(found.wrongNormals, file).toBe(0);
    }
  });

  test(`V − E + F of each board of the ${design.called} is 2(1 − g), g the ways through it`, async () => {
    const result = await solidsOf(design);
    for (const { board } of result.design.boards) {
      const { corners, edges, triangles } = read(result, board.id);
      expect(corners - edges + triangles, board.id).toBe(2 * (1 - waysThrough(board)));
    }
  });
}

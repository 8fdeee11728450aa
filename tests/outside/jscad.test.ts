// Checked against the booleans and the volume of @jscad/modeling, a second engine: it builds every board from the board's
// data and shares nothing with our solids but the facets of arcs.

import { expect, test } from 'vitest';
import { boardByJscad, jscadVolume } from './board-by-jscad.js';
import { READ_BACK, workshop } from './designs.js';

const made = workshop();

/** Of the volume: what two engines in double precision may differ by. */
const RELATIVE = 1e-6;

for (const design of READ_BACK) {
  test(`a second engine finds the same volume for every board of the ${design.called}`, async () => {
    const { design: parts, summary } = await made(design, { only: ['stl'] });
    expect(summary.boards).toHaveLength(parts.boards.length);
    for (const { board } of parts.boards) {
      const ours = summary.boards.find(({ id }) => id === board.id)!.volumeMm3;
      const second = jscadVolume(boardByJscad(board));
      expect(Math.abs(ours / second - 1), `${board.id}: ${ours} and ${second} mm³`).toBeLessThan(RELATIVE);
    }
  });
}

import { afterAll, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { previewMoves } from '../../src/files/page/preview-moves.js';
import { readParameters } from '../../src/model/index.js';
import { provedGlueUp } from '../../src/shop/index.js';
import { box, gap, sharedVolume, solidsOf, startKernel } from '../../src/solid/index.js';
import { AT_FIRST, offsetOf } from '../../src/viewer/over/choices.js';
import { builtPiece, shippedPiece } from '../notation/built-piece.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

const DESIGNS: readonly (readonly [name: string, design: () => Design])[] = [
  ['stool', () => stool.build(readParameters(stool, {}, 'mm'))],
  [
    'bedside cabinet, whose shelves come between two sides',
    () => builtPiece(shippedPiece('bedside-cabinet')),
  ],
];

test.each(DESIGNS)(
  'before a %s is put together no board stands in another and every tenon stands free, and all is together after',
  (_, design) => {
    const solids = solidsOf(kernel, design());
    const { glueUp } = provedGlueUp(solids);
    const moves = previewMoves(solids, glueUp);
    const bodies = [...solids.boards, ...solids.tenons].map(([id, { body }]) => ({ id, body }));
    const data = { ...moves, pieces: bodies.map(({ id }) => ({ id, apart: [0, 0, 0] as const })) };
    const at = (step: number, along: number) =>
      bodies.map(({ id, body }) => ({
        id,
        body: kernel.keep(body.translate([...offsetOf(data, { ...AT_FIRST, step, along }, id)])),
      }));
    const apart = at(0, 0);
    apart.forEach((one, i) => {
      for (const other of apart.slice(i + 1)) {
        const pair = `${one.id} and ${other.id}`;
        // boards that only touch may go on touching
        const free = solids.tenons.has(one.id) || solids.tenons.has(other.id);
        if (free) expect(gap(one.body, other.body, 1), pair).toBeGreaterThan(0.5);
        else expect(sharedVolume(one.body, other.body), pair).toBeLessThan(0.01);
      }
    });
    const last = moves.first.length + moves.steps.length - 1;
    at(last, 1).forEach(({ body }, i) => {
      expect(box(body)).toEqual(box(bodies[i]!.body));
    });
  },
);

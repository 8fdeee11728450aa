import { expect, test } from 'vitest';
import { quickFigures } from '../../src/checks/verdict/quick-figures.js';
import { WALL_REACH } from '../../src/solid/index.js';
import { sampledDesigns } from '../properties/sampled-designs.js';
import { many, SEED } from '../properties/seed.js';
import { measured } from './sample-design.js';

/** Of the cutter's radius: the ring the data put round it stands out by half a percent. */
const RING = 0.1;

test(`for all mortises no wall is told thicker by the data than it is on the solids, and most as thick (seed ${SEED})`, async () => {
  const tally = { walls: 0, near: 0 };
  for (const { name, design } of sampledDesigns(many(8, 60), SEED)) {
    if (!design) continue;
    const { tenons, open } = quickFigures(design);
    const solid = new Map((await measured(design)).map((one) => [one.tenon.id, one]));
    for (const { tenon, mortises } of tenons)
      for (const [i, { board, mortise, wall }] of mortises.entries()) {
        if (open.includes(`walls of ${mortise.id} in ${board}`)) continue;
        const there = solid.get(tenon.id)!.mortises[i]!.wall;
        expect(wall, `${name}: ${tenon.id} in ${board}`).toBeLessThanOrEqual(there + 1e-6);
        if (there >= WALL_REACH) continue;
        tally.walls += 1;
        if (wall > there - RING) tally.near += 1;
      }
  }
  expect(tally.near).toBeGreaterThan(tally.walls / 2);
});

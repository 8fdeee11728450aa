import { expect, test } from 'vitest';
import { makeBoard } from '../../src/board/index.js';
import { quickFigures } from '../../src/checks/verdict/quick-figures.js';
import { wallsByData } from '../../src/checks/verdict/quick-walls.js';
import { polygon } from '../../src/profile/index.js';
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

test('the corner of an opening that points at the flank of a mortise is as near as it stands', () => {
  const blank = { length: 300, width: 120, thickness: 40 };
  const corners = [
    { x: 150, y: 72 },
    { x: 180, y: 100 },
    { x: 120, y: 100 },
  ];
  const board = makeBoard({ id: 'board', blank, openings: [{ id: 'opening', outline: polygon(corners) }] });
  const mortise = {
    id: 'mortise',
    face: 'opposite-face',
    at: { origin: [150, 60, 40], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
    length: 60,
    width: 12,
    depth: 15,
    joint: 'joint',
    tenon: 'tenon',
  } as const;
  // 12 from middle to corner, 6 of them air
  const { wall } = wallsByData({ ...board, mortises: [mortise] }).get(mortise)!;
  expect(wall).toBeLessThanOrEqual(6);
  expect(wall).toBeGreaterThan(6 - RING);
});

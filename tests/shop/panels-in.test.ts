import { afterAll, beforeAll, expect, test } from 'vitest';
import { benchOf, runChecks } from '../../src/checks/index.js';
import { add, scale, unit, type Vec3 } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { panelEntries } from '../../src/shop/glue-up/panel-entries.js';
import { freedomOf, provedGlueUp } from '../../src/shop/index.js';
import { type Kernel, sharedVolume, solidsOf, startKernel } from '../../src/solid/index.js';
import { type DoorChoices, panelledDoor } from '../designs/panelled-door.js';
import { smallTable } from '../designs/small-table.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const upOf = (choices: DoorChoices = {}) => {
  const solids = solidsOf(kernel, panelledDoor(choices));
  return { solids, ...provedGlueUp(solids) };
};

test('a panel goes in before the last stile closes on it, and every step is free when it is walked in small paces', () => {
  const { solids, glueUp } = upOf();
  expect(glueUp.conflicts).toEqual([]);
  expect(glueUp.loose).toEqual([]);
  const last = glueUp.steps.at(-1)!;
  expect(last.moving.length + last.still.length).toBe(5);
  expect(last.moving).not.toContain('panel');
  expect(last.panels).toEqual(['panel']);
  const own = glueUp.steps.find(({ moving }) => moving.includes('panel'))!;
  expect(own.joints).toEqual([]);
  expect(own.panels).toEqual(['panel']);
  // walked as a person would look: both groups apart, then nearer and nearer
  for (const step of glueUp.steps) {
    for (let left = step.travel; left >= 0; left -= step.travel / 12) {
      const by = scale(step.direction, -left);
      for (const moving of step.moving) {
        const body = solids.boards.get(moving)!.body.translate([...by]);
        for (const still of step.still)
          expect(
            sharedVolume(body, solids.boards.get(still)!.body),
            `${step.id} ${moving} ${still}`,
          ).toBeLessThan(0.01);
        body.delete();
      }
    }
  }
});

test('a panel goes deeper into its groove or along it, never out through the floor or a wall', () => {
  for (const entry of panelEntries(panelledDoor())) {
    const out = {
      'left-stile': [-1, 0, 0],
      'right-stile': [1, 0, 0],
      'top-rail': [0, 0, 1],
      'bottom-rail': [0, 0, -1],
    }[entry.receiver] as unknown as Vec3;
    const along: Vec3 = [out[2], 0, out[0]];
    const freedom = (travel: Vec3) => freedomOf(entry, travel).freedom;
    expect(freedom(out), entry.receiver).toBe('free');
    expect(freedom(scale(out, -1)), entry.receiver).toBe('locked');
    expect([freedom(along), freedom(scale(along, -1))]).toEqual(['free', 'free']);
    expect([freedom([0, 1, 0]), freedom([0, -1, 0])]).toEqual(['locked', 'locked']);
    // a lean that the air beside the tongue takes: 0.1 over 7 or 9 of depth
    expect(freedom(unit(add(out, [0, 0.01, 0])))).toBe('free');
    expect(freedom(unit(add(out, [0, 0.02, 0])))).toBe('locked');
  }
});

test('the way of a panel into its groove begins where it is quite out of it', () => {
  const { solids, glueUp } = upOf();
  const step = glueUp.steps.find(({ moving }) => moving.includes('panel'))!;
  const panel = solids.boards.get('panel')!.body.boundingBox();
  const start = panel.max[0]! - step.direction[0]! * step.travel;
  const begun = panel.min[0]! - step.direction[0]! * step.travel;
  const rails = solids.boards.get('top-rail')!.body.boundingBox();
  expect(start < rails.min[0]! || begun > rails.max[0]! - 14).toBe(true);
});

test('a panel shut out by the slant of its joints is found, and longer grooves let it in', () => {
  const slanted: DoorChoices = { joints: { axis: [1, 0, 0.3] } };
  const found = runChecks(benchOf(upOf(slanted).solids, speaker('mm'))).find(
    ({ code }) => code === 'no-glue-up-order',
  )!;
  expect(found.message).toMatch(/on the way .*panel and right-stile.* meet/);
  expect(found.remedy).toMatch(/stop the grooves later, past the panel/);
  const cured = upOf({ ...slanted, past: 2 });
  expect(cured.glueUp.conflicts).toEqual([]);
  expect(cured.glueUp.steps.length).toBe(4);
});

test('a top held by buttons is put on last, and is not called loose', () => {
  const solids = solidsOf(kernel, smallTable());
  const { glueUp } = provedGlueUp(solids);
  expect(glueUp.loose).toEqual([]);
  expect(glueUp.steps.flatMap(({ moving, still }) => [...moving, ...still])).not.toContain('top');
  expect(glueUp.fixings.map(({ id, held, to, direction }) => ({ id, held, to, direction }))).toEqual([
    {
      id: 'F1',
      held: 'top',
      to: ['front-apron', 'back-apron', 'left-apron', 'right-apron'],
      direction: [-0, -0, -1],
    },
  ]);
  expect(glueUp.fixings[0]!.fastenings).toHaveLength(10);
});

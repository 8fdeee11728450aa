import { afterAll, expect, test } from 'vitest';
import { type Hatch, sectionEntities, sectionOf } from '../../src/drawing/index.js';
import { scale } from '../../src/frame/index.js';
import { regionArea } from '../../src/profile/index.js';
import { startKernel } from '../../src/solid/index.js';
import { DRAWN, solidsFor } from './drawn-designs.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

const solids = solidsFor(kernel, DRAWN[0]!);
const joint = solids.design.joints.find(({ id }) => id === 'tread/left-side')!;
const tenon = joint.tenons[0]!;
const { origin, x, y, z } = tenon.place;
const window = { minX: -60, maxX: 60, minY: -50, maxY: 60 };
const section = sectionOf(solids, { origin, x, y: z, z: scale(y, -1) }, window);
const areaOf = (part: string) =>
  section.surfaces
    .filter((one) => one.part === part)
    .reduce((sum, { region }) => sum + regionArea(region), 0);

test('a tenon cut along its middle is its width by its length', () => {
  expect(areaOf(tenon.id)).toBeCloseTo(tenon.width * tenon.length, 0);
});

test('a board cut along a mortise lacks the mortise', () => {
  const tread = solids.boards.get('tread')!.board;
  const mortise = tread.mortises.find((one) => one.tenon === tenon.id)!;
  // the window is wider than the mortise on both sides; the neighbouring mortise shows in it too
  const other = tread.mortises.find((one) => one.tenon === joint.tenons[1]!.id)!;
  const seat = mortise.at.origin[1];
  const next = Math.abs(other.at.origin[1] - seat) - other.length / 2;
  const shown = Math.min(seat, 60) + Math.min(tread.blank.width - seat, 60);
  const wood = shown * tread.blank.thickness - mortise.depth * (mortise.length + (60 - next));
  expect(areaOf('tread')).toBeCloseTo(wood, 0);
});

test('hatching fills what is cut: its length times its spacing is the area', () => {
  const hatches = sectionEntities(section, [0, 0], 1).filter((one): one is Hatch => one.kind === 'hatch');
  const tread = hatches.find(({ part }) => part === 'tread')!;
  const run = tread.parts.reduce(
    (sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]),
    0,
  );
  expect(Math.abs(run * 3 - areaOf('tread')) / areaOf('tread')).toBeLessThan(0.02);
});

test('the two boards of a joint are hatched different ways', () => {
  const hatches = sectionEntities(section, [0, 0], 1).filter((one): one is Hatch => one.kind === 'hatch');
  const angle = (part: string) => hatches.find((one) => one.part === part)!.angleDeg;
  expect(angle('tread')).not.toBe(angle('left-side'));
  expect(angle(tenon.id)).not.toBe(angle('tread'));
});

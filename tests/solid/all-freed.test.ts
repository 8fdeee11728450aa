import { beforeAll, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import jigModel from '../../models/jig.js';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { benchInShop, benchOf, runChecks } from '../../src/checks/index.js';
import { WORLD } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { gate, meshOf, solidsOf, startKernel } from '../../src/solid/index.js';
import { BUILDS_KEPT, prism } from '../../src/solid/kernel.js';
import { section } from '../../src/solid/measure.js';
import { sample, withMortises } from '../checks/sample-design.js';
import { handedOutAnew, handedOutSince, left, watchKernel } from './handed-out.js';

const freed = (body: object): boolean => (body as { isDeleted(): boolean }).isDeleted();

/** So many builds ask for nothing. */
const othersEnd = async (builds: number): Promise<void> => {
  for (let i = 0; i < builds; i += 1) (await startKernel()).dispose();
};

beforeAll(watchKernel);

test('the count sees what is left behind', async () => {
  const kernel = await startKernel();
  handedOutAnew();
  const moved = kernel.wasm.Manifold.cube([1, 2, 3]).translate([1, 0, 0]);
  expect(left()).toHaveLength(2);
  moved.delete();
  expect(left()).toHaveLength(1);
  kernel.dispose();
});

const broken = withMortises(sample(), 'shelf', (mortise) => ({ ...mortise, depth: mortise.depth + 40 }));

test('an outline, a prism of it and a section leave no vector of points', async () => {
  const kernel = await startKernel();
  handedOutAnew();
  // no other test's size: what is known is not made
  const body = prism(
    kernel,
    [
      [
        [0, 0],
        [40.7, 0],
        [40.7, 30.3],
        [0, 30.3],
      ],
    ],
    0,
    20.9,
    undefined,
  );
  expect(section(body, { ...WORLD, origin: [0, 0, 10] })).toHaveLength(1);
  body.delete();
  expect(handedOutSince()).toBeGreaterThan(5);
  expect(left((thing) => 'push_back' in thing)).toEqual([]);
  kernel.dispose();
});

test.each<[what: string, design: Design]>([
  ['a stool', stool.build(readParameters(stool, {}, 'mm'))],
  ['a stool with two treads', stool.build(readParameters(stool, { treads: 2 }, 'mm'))],
  ['a frame', frameModel.build(readParameters(frameModel, {}, 'mm'))],
  ['a jig', jigModel.build(readParameters(jigModel, {}, 'mm'))],
  ['a joint whose mortise breaks through', broken],
])('after the verdict on %s nothing the kernel made is left', async (_, design) => {
  const jig = jigModel.build(readParameters(jigModel, {}, 'mm'));
  handedOutAnew();
  const kernel = await startKernel();
  const solids = solidsOf(kernel, design);
  gate(solids);
  runChecks(benchInShop(benchOf(solids, speaker('mm')), builtInShop('mm'), jig));
  for (const { own } of solids.boards.values()) meshOf(own);
  expect(handedOutSince()).toBeGreaterThan(20);
  kernel.dispose();
  await othersEnd(BUILDS_KEPT);
  expect(left()).toEqual([]);
});

test('a board that stays as it is keeps its body for the next build, and one that does not is freed some builds later', async () => {
  const bodies = async (length: number) => {
    const kernel = await startKernel();
    const { boards } = solidsOf(kernel, frameModel.build(readParameters(frameModel, { length }, 'mm')));
    kernel.dispose();
    return [boards.get('left-rail')!.own, boards.get('front-rail')!.own] as const;
  };
  // lengths of no other test: a kernel left open elsewhere keeps the bodies it asked for
  const [low, high] = [await bodies(613.7), await bodies(651.3)];
  expect(high[0]).toBe(low[0]);
  expect(high[1]).not.toBe(low[1]);
  // put back in time
  expect((await bodies(613.7))[1]).toBe(low[1]);
  for (let i = 0; i < BUILDS_KEPT; i += 1) {
    expect(freed(low[1])).toBe(false);
    await bodies(651.3);
  }
  expect([low[0], low[1], high[1]].map(freed)).toEqual([false, true, false]);
});

test('a body two builds asked for lives until both have ended', async () => {
  const [one, other] = [await startKernel(), await startKernel()];
  const of = (kernel: typeof one) => kernel.shape('a cube', () => kernel.wasm.Manifold.cube([1, 1, 1]));
  const cube = of(one);
  expect(of(other)).toBe(cube);
  one.dispose();
  await othersEnd(BUILDS_KEPT);
  expect(freed(cube)).toBe(false);
  other.dispose();
  await othersEnd(BUILDS_KEPT);
  expect(freed(cube)).toBe(true);
});

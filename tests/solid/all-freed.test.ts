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

interface Handle {
  isDeleted(): boolean;
}

const freed = (body: object): boolean => (body as Handle).isDeleted();

/** So many builds ask for nothing. */
const othersEnd = async (builds: number): Promise<void> => {
  for (let i = 0; i < builds; i += 1) (await startKernel()).dispose();
};

/** Every body, cross-section and vector the kernel handed out. */
const handedOut = new Set<Handle>();
/** The last function that handed one out, for the message. */
const by = new Map<Handle, string>();

beforeAll(async () => {
  const kernel = await startKernel();
  const { Manifold, CrossSection } = kernel.wasm;
  const kinds = [Manifold, CrossSection];
  const note = (name: string, result: unknown): void => {
    for (const one of Array.isArray(result) ? result : [result]) {
      // vectors of the library's own have no types, but can be added to
      if (kinds.some((kind) => one instanceof kind) || (one instanceof Object && 'push_back' in one)) {
        handedOut.add(one as Handle);
        by.set(one as Handle, name);
      }
    }
  };
  const watch = (owner: object): void => {
    for (const name of Object.getOwnPropertyNames(owner)) {
      const own = Object.getOwnPropertyDescriptor(owner, name);
      if (name === 'constructor' || typeof own?.value !== 'function' || !own.writable) continue;
      const was = own.value as (...args: unknown[]) => unknown;
      Object.defineProperty(owner, name, {
        ...own,
        value: new Proxy(was, {
          apply(target, self, args) {
            const result = Reflect.apply(target, self, args);
            note(name, result);
            return result;
          },
          construct(target, args, newTarget) {
            const result = Reflect.construct(target, args, newTarget) as object;
            note(`new ${name}`, result);
            return result;
          },
        }),
      });
    }
  };
  const cube = Manifold.cube([1, 1, 1]);
  const cut = cube.slice(0);
  const { Vector2_vec2: Vectors } = kernel.wasm as unknown as { Vector2_vec2: { prototype: object } };
  for (const of of [cube, cut]) watch(Object.getPrototypeOf(of) as object);
  watch(Vectors.prototype);
  for (const kind of kinds) watch(kind);
  watch(kernel.wasm);
  cube.delete();
  cut.delete();
  kernel.dispose();
});

test('the count sees what is left behind', async () => {
  const kernel = await startKernel();
  handedOut.clear();
  const left = kernel.wasm.Manifold.cube([1, 2, 3]).translate([1, 0, 0]);
  expect([...handedOut].filter((one) => !one.isDeleted())).toHaveLength(2);
  left.delete();
  expect([...handedOut].filter((one) => !one.isDeleted())).toHaveLength(1);
  kernel.dispose();
});

const broken = withMortises(sample(), 'shelf', (mortise) => ({ ...mortise, depth: mortise.depth + 40 }));

test('an outline, a prism of it and a section leave no vector of points', async () => {
  const kernel = await startKernel();
  handedOut.clear();
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
  const left = [...handedOut].filter((one) => !one.isDeleted() && 'push_back' in one);
  expect(handedOut.size).toBeGreaterThan(5);
  expect(left.map((one) => by.get(one))).toEqual([]);
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
  handedOut.clear();
  const kernel = await startKernel();
  const solids = solidsOf(kernel, design);
  gate(solids);
  runChecks(benchInShop(benchOf(solids, speaker('mm')), builtInShop('mm'), jig));
  for (const { own } of solids.boards.values()) meshOf(own);
  expect(handedOut.size).toBeGreaterThan(20);
  kernel.dispose();
  await othersEnd(BUILDS_KEPT);
  const left = [...handedOut].filter((one) => !one.isDeleted()).map((one) => by.get(one));
  expect(left).toEqual([]);
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

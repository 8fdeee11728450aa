import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Mortise, mouthOf } from '../../src/board/index.js';
import { sweptBound } from '../../src/checks/index.js';
import { moved } from '../../src/frame/index.js';
import { obround, regionOf } from '../../src/profile/index.js';
import {
  belowFace,
  type Kernel,
  mortiseCavities,
  prism,
  sharedVolume,
  solidsOf,
  startKernel,
} from '../../src/solid/index.js';
import { CUT_RELATIVE, CUTTER_LEAD, SKIN } from '../../src/tolerances.js';
import { seed } from '../properties/seed.js';
import { sample } from './sample-design.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

/** From far below what rounding does to what a person sees. */
const off = fc
  .tuple(fc.integer({ min: -8, max: 0 }), fc.double({ min: -1, max: 1, noNaN: true }))
  .map(([power, share]) => share * 10 ** power);

test('for all ways a set-up is off, a cut passed by its bound differs from its mortise by no more on the solids', () => {
  const board = solidsOf(kernel, sample()).boards.get('upright')!;
  const [mortise] = board.board.mortises as [Mortise];
  const cavity = mortiseCavities(kernel, board).get(mortise)!;
  const { width, length, depth, at } = mortise;
  let [passed, refused] = [0, 0];
  fc.assert(
    fc.property(off, off, off, off, off, (x, y, z, longer, deeper) => {
      const setUp = {
        place: moved(at, [x, y, z]),
        travel: (length - width) / 2 + longer,
        depth: depth + deeper,
      };
      const bound = sweptBound(setUp, mortise, cavity);
      const path = obround({ length: 2 * setUp.travel + width, width });
      const cut = mortise.faceNormal
        ? belowFace(
            prism(kernel, regionOf(path), -setUp.depth, CUTTER_LEAD, setUp.place),
            at.origin,
            mouthOf(mortise).normal,
            -SKIN,
          )
        : prism(kernel, regionOf(path), -setUp.depth, -SKIN, setUp.place);
      const differs = cut.volume() + cavity.volume - 2 * sharedVolume(cut, cavity.body());
      cut.delete();
      const limit = CUT_RELATIVE * cavity.volume;
      if (bound !== undefined && bound <= limit) {
        passed += 1;
        expect(differs).toBeLessThanOrEqual(Math.max(bound, 0) + 1e-6 * cavity.volume);
      } else refused += 1;
      if (differs > limit) expect(bound === undefined || bound > limit).toBe(true);
    }),
    seed(200),
  );
  expect(passed).toBeGreaterThan(0);
  expect(refused).toBeGreaterThan(50);
});

test('a set-up that stands where it should is passed without cutting anything', () => {
  for (const options of [{}, { axis: 'along b' as const }]) {
    for (const board of solidsOf(kernel, sample(options)).boards.values()) {
      for (const [mortise, cavity] of mortiseCavities(kernel, board)) {
        const { at, length, width, depth } = mortise;
        const bound = sweptBound({ place: at, travel: (length - width) / 2, depth }, mortise, cavity);
        expect(bound).toBeLessThan(CUT_RELATIVE * cavity.volume);
      }
    }
  }
});

import { describe, expect, test } from 'vitest';
import { makeBoard, planeRegion } from '../../src/board/index.js';
import { frame, type Vec3 } from '../../src/frame/index.js';
import { circle, regionArea, regionBounds } from '../../src/profile/index.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const [L, W, T] = [300, 100, 30];
const plain = makeBoard({ id: 'plain', blank: { length: L, width: W, thickness: T } });
const sectionArea = (board: typeof plain, at: Vec3, normal: Vec3, along: Vec3 = [0, 1, 0]) =>
  regionArea(planeRegion(board, frame(at, normal, along)));

describe('a section of a plain board', () => {
  test('along the grain is length × width at every depth, and nothing outside the wood', () => {
    for (const z of [0, 0.001, 15, 30])
      expect(sectionArea(plain, [0, 0, z], [0, 0, 1])).toBeCloseTo(L * W, 3);
    for (const z of [-0.01, 30.01])
      expect(planeRegion(plain, frame([0, 0, z], [0, 0, 1], [1, 0, 0]))).toEqual([]);
  });

  test('across the grain is width × thickness', () => {
    for (const x of [1, 150, 299]) expect(sectionArea(plain, [x, 0, 0], [1, 0, 0])).toBeCloseTo(W * T, 3);
    expect(sectionArea(plain, [301, 0, 0], [1, 0, 0])).toBe(0);
  });

  test.each([1, 10, 45, 80, 89])(
    'leaning by %i° across the grain is width × thickness / cosine',
    (degrees) => {
      const lean = rad(degrees);
      // long enough that the plane leaves through both wide faces
      const long = makeBoard({ id: 'long', blank: { length: 6000, width: W, thickness: T } });
      const area = sectionArea(long, [3000, 0, T / 2], [Math.cos(lean), 0, Math.sin(lean)]);
      expect(area).toBeCloseTo((W * T) / Math.cos(lean), 2);
    },
  );

  test.each([5, 30, 60])(
    'square to the faces and turned by %i° is as long as the board is wide over the cosine',
    (degrees) => {
      const turn = rad(degrees);
      const area = sectionArea(plain, [150, 50, 0], [Math.cos(turn), Math.sin(turn), 0], [0, 0, 1]);
      expect(area).toBeCloseTo((W / Math.cos(turn)) * T, 3);
    },
  );

  test('keeps its area when it is seen from the other side', () => {
    for (const normal of [
      [0, 0, 1],
      [1, 0, 0],
      [0.6, 0, 0.8],
      [0.36, 0.48, 0.8],
    ] as const) {
      const back: Vec3 = [-normal[0], -normal[1], -normal[2]];
      const along: Vec3 = [0, 1, 0];
      const front = sectionArea(plain, [150, 50, 15], normal, along);
      expect(front).toBeGreaterThan(0);
      expect(sectionArea(plain, [150, 50, 15], back, along)).toBeCloseTo(front, 3);
    }
  });
});

test('a section beside an opening is in two parts', () => {
  const open = makeBoard({
    id: 'open',
    blank: { length: L, width: W, thickness: T },
    openings: [{ id: 'hand', outline: circle({ diameter: 40, centre: [150, 50] }) }],
  });
  const region = planeRegion(open, frame([150, 0, 0], [1, 0, 0], [0, 1, 0]));
  expect(region).toHaveLength(2);
  expect(regionArea(region)).toBeCloseTo((W - 40) * T, 0);
  // 12 mm off its middle the circle is 32 wide: 12, 16, 20
  expect(sectionArea(open, [162, 0, 0], [1, 0, 0])).toBeCloseTo((W - 32) * T, 0);
});

test('a level section of a raked board moves along with its depth and keeps its size', () => {
  const rho = rad(12);
  const level: Vec3 = [Math.cos(rho), 0, -Math.sin(rho)];
  const raked = makeBoard({
    id: 'raked',
    blank: { length: L, width: W, thickness: T },
    bevels: [{ id: 'top', point: [L, 0, T], normal: level }],
  });
  for (const depth of [0, 5, 40, 100]) {
    const at: Vec3 = [L - depth * level[0], 0, T - depth * level[2]];
    const seat = frame([L, 0, T], level, [0, 1, 0]);
    const region = planeRegion(raked, { ...seat, origin: at });
    expect(regionArea(region)).toBeCloseTo((W * T) / Math.cos(rho), 3);
    const { minY, maxY } = regionBounds(region);
    // across the seat the wood moves sideways by depth × tan rake
    const drift = depth * Math.tan(rho);
    expect(maxY - minY).toBeCloseTo(T / Math.cos(rho), 6);
    expect(Math.min(Math.abs(minY), Math.abs(maxY))).toBeCloseTo(drift === 0 ? 0 : Math.abs(drift), 6);
  }
});

test('a bevel cut across a section takes the part beyond it', () => {
  const chamfered = makeBoard({
    id: 'chamfered',
    blank: { length: L, width: W, thickness: T },
    bevels: [{ id: 'chamfer', point: [0, 0, 10], normal: [0, -Math.SQRT1_2, -Math.SQRT1_2] }],
  });
  // a 10 × 10 triangle off one corner of the cross-section
  expect(sectionArea(chamfered, [150, 0, 0], [1, 0, 0])).toBeCloseTo(W * T - 50, 3);
  expect(sectionArea(chamfered, [0, 0, 4], [0, 0, 1])).toBeCloseTo(L * (W - 6), 3);
});

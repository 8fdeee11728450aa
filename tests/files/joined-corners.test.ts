import { expect, test } from 'vitest';
import { joinedCorners } from '../../src/files/solids/joined-corners.js';
import { boxMesh } from './box-mesh.js';

/** A box with the edge from corner 0 to corner 1 split by two more corners, `apart` from each other. */
function splitBox(apart: number) {
  const box = boxMesh(100, 60, 20);
  const positions = [...box.positions, 50, 0, 0, 50 + apart, 0, 0];
  // the two faces at that edge are fans over 0, 8, 9, 1 now: [3,2,1,0] below and [0,1,5,4] in front
  const others = [...box.triangles].slice(6, 12).concat([...box.triangles].slice(18));
  const below = [1, 9, 2, 9, 8, 2, 8, 3, 2, 8, 0, 3];
  const front = [0, 8, 4, 8, 9, 4, 9, 5, 4, 9, 1, 5];
  return { positions, triangles: Uint32Array.from([...others, ...below, ...front]) };
}

/** Six times the volume of a closed surface, by the divergence theorem. */
const volume = (positions: readonly number[], triangles: Uint32Array): number => {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((j) =>
      positions.slice(3 * triangles[i + j]!, 3 * triangles[i + j]! + 3),
    ) as [number[], number[], number[]];
    sum += a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) + a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!);
    sum += a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
  }
  return sum / 6;
};

test('two corners a ten-millionth of a millimetre apart become one, and the two triangles between them go', () => {
  const { positions, triangles } = splitBox(1e-7);
  expect(volume(positions, triangles)).toBeCloseTo(100 * 60 * 20, 3);
  const joined = joinedCorners(positions, triangles);
  expect(joined.triangles.length).toBe(triangles.length - 6);
  expect(joined.corner[9]).toBe(8);
  expect(volume(positions, joined.triangles)).toBeCloseTo(100 * 60 * 20, 3);
});

test('corners a hundredth apart are two', () => {
  const { positions, triangles } = splitBox(0.01);
  expect(joinedCorners(positions, triangles).triangles).toBe(triangles);
});

test('a surface that joining would tear or fold stays as it is', () => {
  // a plate thinner than anyone can tell: joined, its two faces would lie in each other
  const plate = boxMesh(100, 60, 1e-8);
  // the upper face split along the same diagonal as the lower one
  const triangles = Uint32Array.from([
    ...plate.triangles.slice(0, 6),
    4,
    5,
    7,
    5,
    6,
    7,
    ...plate.triangles.slice(12),
  ]);
  const joined = joinedCorners(plate.positions, triangles);
  expect(joined.triangles).toBe(triangles);
  expect([...joined.corner]).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
});

import { expect, test } from 'vitest';
import { smoothNormals } from '../../src/viewer/piece/smooth-normals.js';
import { boxMesh } from '../files/box-mesh.js';

test('every corner of a box keeps the normals of its three faces', () => {
  const { positions, triangles } = boxMesh(100, 60, 20);
  const normals = smoothNormals(Float32Array.from(positions), triangles);
  expect(normals).toHaveLength(3 * triangles.length);
  for (let i = 0; i < normals.length; i += 3) {
    const parts = [...normals.subarray(i, i + 3)].map(Math.abs).sort();
    expect(parts).toEqual([0, 0, 1]);
  }
});

test('round a cylinder normals point away from its axis, though its facets are flat', () => {
  const sides = 40;
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i < sides; i += 1) {
    const turn = (2 * Math.PI * i) / sides;
    positions.push(10 * Math.cos(turn), 10 * Math.sin(turn), 0, 10 * Math.cos(turn), 10 * Math.sin(turn), 30);
    const [a, b, c, d] = [2 * i, (2 * i + 2) % (2 * sides), (2 * i + 3) % (2 * sides), 2 * i + 1];
    triangles.push(a, b, c, a, c, d);
  }
  const normals = smoothNormals(Float32Array.from(positions), triangles);
  triangles.forEach((corner, i) => {
    const [x, y] = [positions[3 * corner]! / 10, positions[3 * corner + 1]! / 10];
    // facets of both sides meet at a corner; one has two triangles there and one has one: at most a third of 9° aside
    expect(normals[3 * i]! * x + normals[3 * i + 1]! * y).toBeGreaterThan(Math.cos((3 * Math.PI) / 180));
    expect(normals[3 * i + 2]!).toBeCloseTo(0, 6);
  });
});

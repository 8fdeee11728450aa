import type { Mesh } from '../../src/solid/mesh.js';

/** A box of length × width × thickness from the origin: 8 corners, 12 triangles, outward. */
export const boxMesh = (length: number, width: number, thickness: number, precise = true): Mesh => {
  const positions: number[] = [];
  for (const z of [0, thickness])
    for (const [x, y] of [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ]) {
      positions.push(x!, y!, z);
    }
  const quads = [
    [3, 2, 1, 0],
    [4, 5, 6, 7],
    [0, 1, 5, 4],
    [1, 2, 6, 5],
    [2, 3, 7, 6],
    [3, 0, 4, 7],
  ];
  return {
    positions: precise ? Float64Array.from(positions) : Float32Array.from(positions),
    triangles: Uint32Array.from(quads.flatMap(([a, b, c, d]) => [a!, b!, c!, a!, c!, d!])),
  };
};

import { OutputError } from '../../errors.js';
import type { Mesh } from '../../solid/index.js';

/**
 * Refuses a mesh that no file can hold.
 *
 * @throws OutputError when it has no triangles or a coordinate that is not a finite number
 */
export function requireMesh(name: string, { positions, triangles }: Mesh): void {
  if (triangles.length === 0 || triangles.length % 3 !== 0) {
    throw new OutputError(
      'mesh-empty',
      `the solid of ${name} has ${triangles.length / 3} triangles, at least 4 enclose a body: build the part again before writing it`,
    );
  }
  for (const index of triangles) {
    const [x, y, z] = [positions[3 * index], positions[3 * index + 1], positions[3 * index + 2]];
    if (Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(z)) continue;
    throw new OutputError(
      'mesh-not-finite',
      `the solid of ${name} has a corner at ${x}, ${y}, ${z}, every coordinate must be a finite number of mm: check the sizes of the part`,
    );
  }
}

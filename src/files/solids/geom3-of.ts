import jscad from '@jscad/modeling';
import { OutputError } from '../../errors.js';
import type { Mesh } from '../../solid/index.js';

export const { geom3 } = jscad.geometries;
const { poly3 } = jscad.geometries;

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

/**
 * The mesh as the modelling library's solid, one polygon a triangle: the form its serializers read.
 *
 * @throws OutputError as `requireMesh`
 */
export function geom3Of(name: string, mesh: Mesh): ReturnType<typeof geom3.create> {
  requireMesh(name, mesh);
  const { positions, triangles } = mesh;
  const corner = (index: number): [number, number, number] => [
    positions[3 * index]!,
    positions[3 * index + 1]!,
    positions[3 * index + 2]!,
  ];
  const polygons = [];
  for (let i = 0; i < triangles.length; i += 3) {
    polygons.push(
      poly3.create([corner(triangles[i]!), corner(triangles[i + 1]!), corner(triangles[i + 2]!)]),
    );
  }
  return geom3.create(polygons);
}

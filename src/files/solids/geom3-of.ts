import jscad from '@jscad/modeling';
import { OutputError } from '../../errors.js';
import type { Mesh } from '../../solid/index.js';

const { geom3, poly3 } = jscad.geometries;

/**
 * The mesh as the modelling library's solid, one polygon a triangle: the form its serializers read.
 *
 * @throws OutputError when the mesh has no triangles or a coordinate that is not a finite number
 */
export function geom3Of(name: string, mesh: Mesh): ReturnType<typeof geom3.create> {
  const { positions, triangles } = mesh;
  if (triangles.length === 0 || triangles.length % 3 !== 0) {
    throw new OutputError(
      'mesh-empty',
      `the solid of ${name} has ${triangles.length / 3} triangles, at least 4 enclose a body: build the part again before writing it`,
    );
  }
  const corner = (index: number): [number, number, number] => {
    const at: [number, number, number] = [
      positions[3 * index] ?? Number.NaN,
      positions[3 * index + 1] ?? Number.NaN,
      positions[3 * index + 2] ?? Number.NaN,
    ];
    if (at.every(Number.isFinite)) return at;
    throw new OutputError(
      'mesh-not-finite',
      `the solid of ${name} has a corner at ${at.join(', ')}, every coordinate must be a finite number of mm: check the sizes of the part`,
    );
  };
  const polygons = [];
  for (let i = 0; i < triangles.length; i += 3) {
    polygons.push(
      poly3.create([corner(triangles[i]!), corner(triangles[i + 1]!), corner(triangles[i + 2]!)]),
    );
  }
  return geom3.create(polygons);
}

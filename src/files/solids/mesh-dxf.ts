import { point3d } from '@tarikjabiri/dxf';
import { OutputError } from '../../errors.js';
import type { Mesh } from '../../solid/index.js';
import { dxfBytes, dxfScale, emptyDrawing, rounded } from '../dxf/index.js';
import { requireMesh } from './require-mesh.js';

/** A solid and the layer its faces go on: letters, digits and hyphens. */
export interface NamedMesh {
  readonly name: string;
  readonly mesh: Mesh;
}

/**
 * Solids as one DXF file of 3DFACE triangles in mm (`$INSUNITS` 4), a layer for each piece; a face's fourth corner is its third
 * (DXF Reference, 3DFACE).
 *
 * @throws OutputError without pieces, or for a mesh that is empty or not finite
 */
export function meshDxf(pieces: readonly NamedMesh[]): Uint8Array {
  if (pieces.length === 0) {
    throw new OutputError(
      'nothing-to-draw',
      'the 3D DXF has 0 pieces, at least 1 is needed: add a board to the design',
    );
  }
  const names = new Set(pieces.map(({ name }) => name));
  const drawing = emptyDrawing(
    dxfScale('mm'),
    [...names].map((name) => ({ name, colour: 7 })),
  );
  for (const { name, mesh } of pieces) {
    requireMesh(name, mesh);
    const { positions, triangles } = mesh;
    const corners = Array.from({ length: positions.length / 3 }, (_, i) => {
      const [x, y, z] = [0, 1, 2].map((axis) => rounded(positions[3 * i + axis]!, 6));
      return point3d(x!, y!, z!);
    });
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((corner) => corners[triangles[t + corner]!]!);
      drawing.add3dFace(a!, b!, c!, c!, { layerName: name });
    }
  }
  return dxfBytes(drawing);
}

import serializer from '@jscad/dxf-serializer';
import jscad from '@jscad/modeling';
import { OutputError } from '../../errors.js';
import type { Mesh } from '../../solid/index.js';
import { pairsOf, rounded, textOf, withHeader, withLayers } from '../dxf/index.js';
import { requireMesh } from './require-mesh.js';

/** A solid and the layer its faces go on: letters, digits and hyphens. */
export interface NamedMesh {
  readonly name: string;
  readonly mesh: Mesh;
}

/**
 * Solids as one DXF file of 3DFACE triangles in mm (`$INSUNITS` 4), a layer for each piece.
 *
 * What stands round the faces is the serializer's. The faces are our own: it knows only layer 0, and it snaps corners to a grid
 * and joins what it takes for open there, where these are the kernel's own corners.
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
  let count = 0;
  const faces = pieces.map((piece) => facesOf(piece, () => handle(count++))).join('');
  const layers = [...new Set(pieces.map((piece) => piece.name))].map((name) => ({ name, colour: 7 }));
  const [empty = ''] = serializer.serialize({ geom3To: '3dface' }, jscad.geometries.geom3.create());
  const frame = withHeader(withLayers(pairsOf(empty), layers, handle(count)), '$INSUNITS', '70', '4');
  return new TextEncoder().encode(textOf(frame).replace(SECTION, (start) => start + faces));
}

/** Where the faces stand in the serializer's text. */
const SECTION = '  2\nENTITIES\n';

/** A face for each triangle (DXF Reference, 3DFACE); its fourth corner is its third. */
function facesOf({ name, mesh }: NamedMesh, next: () => string): string {
  requireMesh(name, mesh);
  const { positions, triangles } = mesh;
  const corners = Array.from({ length: positions.length / 3 }, (_, i) =>
    [0, 1, 2].map((axis) => rounded(positions[3 * i + axis]!, 6)),
  );
  let text = '';
  for (let t = 0; t < triangles.length; t += 3) {
    text += `  0\n3DFACE\n  5\n${next()}\n100\nAcDbEntity\n  8\n${name}\n 62\n256\n100\nAcDbFace\n 70\n0\n`;
    for (let corner = 0; corner < 4; corner += 1) {
      const [x, y, z] = corners[triangles[t + Math.min(corner, 2)]!]!;
      text += ` 1${corner}\n${x}\n 2${corner}\n${y}\n 3${corner}\n${z}\n`;
    }
  }
  return text;
}

/** Above every handle the serializer's tables use. */
const FIRST_HANDLE = 0x10000;
const handle = (index: number): string => (FIRST_HANDLE + index).toString(16).toUpperCase();

import serializer from '@jscad/dxf-serializer';
import { OutputError } from '../errors.js';
import type { Mesh } from '../solid/index.js';
import { withLayers } from './dxf-layers.js';
import { rounded } from './dxf-number.js';
import { entitiesOf, type Pair, pairsOf, sectionOf, textOf, withHeader } from './dxf-pairs.js';
import { geom3Of } from './geom3-of.js';

/** A solid and the layer its faces go on: letters, digits and hyphens. */
export interface NamedMesh {
  readonly name: string;
  readonly mesh: Mesh;
}

/**
 * Solids as one DXF file of 3DFACE triangles in mm (`$INSUNITS` 4), a layer for each piece.
 *
 * The serializer knows only layer 0; the layers are set in its text afterwards.
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
  const sheets = pieces.map(({ name, mesh }) => pairsOf(serialized(name, mesh)));
  const faces = sheets.flatMap((sheet, i) =>
    entitiesOf(sectionOf(sheet, 'ENTITIES').content).map((face) => on(face, pieces[i]!.name)),
  );
  const numbered = faces.flatMap((face, i) =>
    face.map((pair): Pair => (pair[0] === '5' ? ['5', handle(i)] : pair)),
  );
  const frame = sectionOf(sheets[0]!, 'ENTITIES');
  const layers = [...new Set(pieces.map((piece) => piece.name))].map((name) => ({ name, colour: 7 }));
  const whole = withLayers([...frame.before, ...numbered, ...frame.after], layers, handle(faces.length));
  return new TextEncoder().encode(textOf(withHeader(whole, '$INSUNITS', '70', '4')));
}

const serialized = (name: string, mesh: Mesh): string =>
  serializer.serialize({ geom3To: '3dface' }, geom3Of(name, mesh))[0] ?? '';

const on = (entity: readonly Pair[], layer: string): Pair[] =>
  entity.map((pair): Pair => {
    if (pair[0] === '8') return ['8', layer];
    return COORDINATE.test(pair[0]) ? [pair[0], String(rounded(Number(pair[1]), 6))] : pair;
  });

/** x, y and z of a face's four corners. */
const COORDINATE = /^[123][0-3]$/;

/** Above every handle the serializer's tables use. */
const FIRST_HANDLE = 0x10000;
const handle = (index: number): string => (FIRST_HANDLE + index).toString(16).toUpperCase();

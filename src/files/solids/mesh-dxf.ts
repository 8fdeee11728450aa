import serializer from '@jscad/dxf-serializer';
import { OutputError } from '../../errors.js';
import type { Mesh } from '../../solid/index.js';
import { pairsOf, rounded, textOf, withHeader, withLayers } from '../dxf/index.js';
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
  let count = 0;
  const next = () => handle(count++);
  const sheets = pieces.map(({ name, mesh }) => sheetOf(serialized(name, mesh)));
  const faces = sheets.map((sheet, i) => onLayer(sheet.faces, pieces[i]!.name, next)).join('');
  const layers = [...new Set(pieces.map((piece) => piece.name))].map((name) => ({ name, colour: 7 }));
  const frame = withHeader(
    withLayers(pairsOf(sheets[0]!.frame), layers, handle(count)),
    '$INSUNITS',
    '70',
    '4',
  );
  return new TextEncoder().encode(textOf(frame).replace(SECTION, (start) => start + faces));
}

const serialized = (name: string, mesh: Mesh): string =>
  serializer.serialize({ geom3To: '3dface' }, geom3Of(name, mesh))[0] ?? '';

/** Where the faces stand in the serializer's text. */
const SECTION = '  2\nENTITIES\n';
const SECTION_END = '  0\nENDSEC\n';

/** The serializer's text as its faces and what stands round them. */
function sheetOf(text: string): { frame: string; faces: string } {
  const start = text.indexOf(SECTION) + SECTION.length;
  const end = text.indexOf(SECTION_END, start);
  if (start < SECTION.length || end < 0) throw new RangeError('the DXF text has no section ENTITIES');
  return { frame: text.slice(0, start) + text.slice(end), faces: text.slice(start, end) };
}

/** Faces on a layer, each with a handle of its own; the text is millions of letters long, so it is walked once. */
function onLayer(faces: string, layer: string, next: () => string): string {
  const shown = new Map<string, string>();
  const lines = faces.split('\n');
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = lines[i]!.trimStart();
    lines[i] = code.padStart(3);
    if (code === '5') lines[i + 1] = next();
    else if (code === '8') lines[i + 1] = layer;
    else if (COORDINATE.test(code)) {
      // corners are shared: each number is rounded once
      const value = lines[i + 1]!;
      const known = shown.get(value) ?? String(rounded(Number(value), 6));
      shown.set(value, known);
      lines[i + 1] = known;
    }
  }
  return lines.join('\n');
}

/** x, y and z of a face's four corners. */
const COORDINATE = /^[123][0-3]$/;

/** Above every handle the serializer's tables use. */
const FIRST_HANDLE = 0x10000;
const handle = (index: number): string => (FIRST_HANDLE + index).toString(16).toUpperCase();

import { serializeText } from '@jscad/stl-serializer/CSGToStla.js';
import { serializeBinary } from '@jscad/stl-serializer/CSGToStlb.js';
import type { Mesh } from '../../solid/index.js';
import { correctNormals, withCorrectNormals } from './facet-normals.js';
import { geom3Of } from './geom3-of.js';
import { joinedCorners } from './joined-corners.js';

/** Bytes before the triangle count of a binary file. */
const HEADER = 80;

/**
 * A part as an STL file, mm, outward normals.
 *
 * The format states no unit: the header (binary) or the `solid` line (ascii) carries the part's name and `mm`. Corners are the
 * kernel's own in single precision, as the format wants them; those that are then one are written as one. The serializer's own
 * front door snaps them to a grid of 1e-5 of the part's size first and joins what it takes for open there: it is passed by.
 *
 * @param name printed; letters outside ASCII become `?`, the rest is cut to fit the header
 * @param format binary: 84 + 50 n bytes for n triangles
 * @throws OutputError for a mesh without triangles or with coordinates that are not finite
 */
export function stl(name: string, mesh: Mesh, format: 'binary' | 'ascii'): Uint8Array {
  const body = geom3Of(name, asWritten(mesh));
  const title = titled(name);
  if (format === 'ascii') {
    const [text = ''] = serializeText([body], {});
    return new TextEncoder().encode(
      withCorrectNormals(text)
        .replace(/^solid .*$/m, `solid ${title}`)
        .replace(/^endsolid .*$/m, `endsolid ${title}`),
    );
  }
  const pieces = serializeBinary([body], {}).map((piece) => new Uint8Array(piece));
  const bytes = new Uint8Array(pieces.reduce((size, piece) => size + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  // A reader tells the two formats apart by the word `solid` at the start, so a binary header must not begin with it.
  const header = /^solid/i.test(title) ? `part ${title}` : title;
  bytes.fill(0, 0, HEADER);
  bytes.set(new TextEncoder().encode(header), 0);
  correctNormals(bytes);
  return bytes;
}

/** The mesh in single precision, without the triangles that have two corners in one spot there. */
function asWritten({ positions, triangles }: Mesh): Mesh {
  const rounded = Float32Array.from(positions);
  const joined = joinedCorners(rounded, triangles);
  return { positions: rounded, triangles: joined.triangles };
}

/** `left-side mm`, printable ASCII, short enough for the header with `part ` before it. */
const titled = (name: string): string => `${name.replace(/[^\x20-\x7e]/g, '?').slice(0, 70)} mm`;

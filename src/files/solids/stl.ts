import type { Mesh } from '../../solid/index.js';
import { facetNormal } from './facet-normal.js';
import { joinedCorners } from './joined-corners.js';
import { requireMesh } from './require-mesh.js';

/** Bytes of a binary file's header, before its first facet, and of one facet. */
const [HEADER, START, FACET] = [80, 84, 50];

/**
 * A part as an STL file, mm, outward normals.
 *
 * The format states no unit: the header (binary) or the `solid` line (ascii) carries the part's name and `mm`. Corners are the
 * kernel's own in single precision, as the format wants them; those that are then one are written as one.
 *
 * @param name printed; letters outside ASCII become `?`, the rest is cut to fit the header
 * @param format binary: 84 + 50 n bytes for n triangles
 * @throws OutputError for a mesh without triangles or with coordinates that are not finite
 */
export function stl(name: string, mesh: Mesh, format: 'binary' | 'ascii'): Uint8Array {
  requireMesh(name, mesh);
  const facets = facetsOf(mesh);
  return format === 'ascii' ? text(titled(name), facets) : binary(titled(name), facets);
}

/** Nine figures a facet, in single precision; without those that have two corners in one spot there. */
function facetsOf({ positions, triangles }: Mesh): readonly Float32Array[] {
  const rounded = Float32Array.from(positions);
  const kept = joinedCorners(rounded, triangles).triangles;
  return Array.from({ length: kept.length / 3 }, (_, facet) => {
    const corners = new Float32Array(9);
    for (let i = 0; i < 9; i += 1) corners[i] = rounded[3 * kept[3 * facet + Math.floor(i / 3)]! + (i % 3)]!;
    return corners;
  });
}

function binary(title: string, facets: readonly Float32Array[]): Uint8Array {
  const bytes = new Uint8Array(START + FACET * facets.length);
  const view = new DataView(bytes.buffer);
  // A reader tells the two formats apart by the word `solid` at the start, so a binary header must not begin with it.
  bytes.set(new TextEncoder().encode(/^solid/i.test(title) ? `part ${title}` : title), 0);
  view.setUint32(HEADER, facets.length, true);
  facets.forEach((corners, facet) => {
    const at = START + FACET * facet;
    facetNormal(corners).forEach((figure, i) => {
      view.setFloat32(at + 4 * i, figure, true);
    });
    for (let i = 0; i < 9; i += 1) view.setFloat32(at + 12 + 4 * i, corners[i]!, true);
  });
  return bytes;
}

function text(title: string, facets: readonly Float32Array[]): Uint8Array {
  const lines = facets.flatMap((corners) => [
    `facet normal ${facetNormal(corners).join(' ')}`,
    'outer loop',
    ...[0, 3, 6].map((i) => `vertex ${corners.subarray(i, i + 3).join(' ')}`),
    'endloop',
    'endfacet',
  ]);
  return new TextEncoder().encode([`solid ${title}`, ...lines, `endsolid ${title}`, ''].join('\n'));
}

/** `left-side mm`, printable ASCII, short enough for the header with `part ` before it. */
const titled = (name: string): string => `${name.replace(/[^\x20-\x7e]/g, '?').slice(0, 70)} mm`;

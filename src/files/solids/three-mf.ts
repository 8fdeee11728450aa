import { strToU8, type Zippable, zipSync } from 'fflate';
import { fixed } from '../../length/index.js';
import { svgText } from '../svg/index.js';
import type { Piece } from './piece.js';

/** The 3MF core specification's names (3MF Consortium, core specification 1.3). */
const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const MODEL_TYPE = 'application/vnd.ms-package.3dmanufacturing-3dmodel+xml';
const RELATION = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';

/** The first moment a ZIP entry can carry: the same bytes on every run. */
const NO_TIME = '1980-01-01T00:00:00';

/** An assembly as 3MF: millimetres, one object a piece with its name and colour. */
export function threeMf(title: string, pieces: readonly Piece[]): Uint8Array {
  const entry = (text: string): [Uint8Array, { mtime: string }] => [strToU8(text), { mtime: NO_TIME }];
  const files: Zippable = {
    '[Content_Types].xml': entry(
      `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="${MODEL_TYPE}"/></Types>`,
    ),
    '_rels/.rels': entry(
      `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="${RELATION}"/></Relationships>`,
    ),
    '3D/3dmodel.model': entry(model(title, pieces)),
  };
  return zipSync(files);
}

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n';

function model(title: string, pieces: readonly Piece[]): string {
  const colours = [...new Set(pieces.map((piece) => piece.colour))];
  const materials = colours.map(
    (colour, i) => `<base name="material ${i + 1}" displaycolor="${colour.toUpperCase()}"/>`,
  );
  // resource ids start at 1, and 1 is the list of materials
  const objects = pieces.map((piece, i) => object(piece, i + 2, colours.indexOf(piece.colour)));
  const items = pieces.map((_, i) => `<item objectid="${i + 2}"/>`);
  return [
    `${HEAD}<model unit="millimeter" xml:lang="en-US" xmlns="${CORE}">`,
    `<metadata name="Title">${svgText(title)}</metadata>`,
    `<resources><basematerials id="1">${materials.join('')}</basematerials>`,
    ...objects,
    `</resources><build>${items.join('')}</build></model>`,
  ].join('\n');
}

function object(piece: Piece, id: number, material: number): string {
  const { positions, triangles } = piece.mesh;
  const vertices: string[] = [];
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i]!, positions[i + 1]!, positions[i + 2]!].map((at) => fixed(at, 5));
    vertices.push(`<vertex x="${x}" y="${y}" z="${z}"/>`);
  }
  const faces: string[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    faces.push(`<triangle v1="${triangles[i]}" v2="${triangles[i + 1]}" v3="${triangles[i + 2]}"/>`);
  }
  return `<object id="${id}" type="model" name="${svgText(piece.name)}" pid="1" pindex="${material}"><mesh><vertices>${vertices.join('')}</vertices><triangles>${faces.join('')}</triangles></mesh></object>`;
}

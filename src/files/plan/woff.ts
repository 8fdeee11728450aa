import { unzlibSync } from 'fflate';

/** Tables that outlines, widths and the map from letters to glyphs need; ligatures and kerning stay behind. */
const KEPT: ReadonlySet<string> = new Set([
  'cmap',
  'cvt ',
  'fpgm',
  'glyf',
  'head',
  'hhea',
  'hmtx',
  'loca',
  'maxp',
  'name',
  'OS/2',
  'post',
  'prep',
]);

const WOFF = 0x774f4646;
const HEADER = 44;
const ENTRY = 20;

/** A table of a font, unpacked. */
export interface FontTable {
  readonly tag: string;
  readonly checksum: number;
  readonly bytes: Uint8Array;
}

/** What kind of outlines the font in a WOFF file has, as its header says. */
export const flavorOf = ({ buffer, byteOffset }: Uint8Array): number =>
  new DataView(buffer, byteOffset).getUint32(4);

/**
 * The tables of the font in a WOFF file that a plan needs (W3C Recommendation WOFF File Format 1.0, sections 3 to 5).
 *
 * @throws RangeError when the bytes are no WOFF file: the font of this program is damaged
 */
export function fontTables(
  woff: Uint8Array,
  unzip: (packed: Uint8Array) => Uint8Array = unzlibSync,
): readonly FontTable[] {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.byteLength < HEADER || from.getUint32(0) !== WOFF)
    throw new RangeError('the font is no WOFF file');
  return Array.from({ length: from.getUint16(12) }, (_, i) => HEADER + i * ENTRY).flatMap((at) => {
    const tag = String.fromCharCode(...woff.subarray(at, at + 4));
    if (!KEPT.has(tag)) return [];
    const [offset, packed, length] = [4, 8, 12].map((by) => from.getUint32(at + by)) as [
      number,
      number,
      number,
    ];
    const bytes = woff.subarray(offset, offset + packed);
    return [{ tag, checksum: from.getUint32(at + 16), bytes: packed === length ? bytes : unzip(bytes) }];
  });
}

/**
 * The font in a WOFF file as the plain file it was packed from (W3C Recommendation WOFF File Format 1.0, sections 3 to 5),
 * without what it knows of ligatures and kerning: letters are then as wide as the sheets reckon, and a PDF reads back letter
 * by letter; and without the names of its glyphs, which no PDF of a plan tells.
 *
 * @throws RangeError when the bytes are no WOFF file: the font of this program is damaged
 */
export function sfntOf(woff: Uint8Array, unzip: (packed: Uint8Array) => Uint8Array = unzlibSync): Uint8Array {
  const tables = fontTables(woff, unzip).map((table) => (table.tag === 'post' ? nameless(table) : table));
  const start = 12 + 16 * tables.length;
  const padded = (length: number) => (length + 3) & ~3;
  const font = new Uint8Array(tables.reduce((sum, { bytes }) => sum + padded(bytes.length), start));
  const to = new DataView(font.buffer);
  to.setUint32(0, flavorOf(woff));
  to.setUint16(4, tables.length);
  const power = 2 ** Math.floor(Math.log2(tables.length));
  to.setUint16(6, power * 16);
  to.setUint16(8, Math.log2(power));
  to.setUint16(10, (tables.length - power) * 16);
  let offset = start;
  tables.forEach(({ tag, checksum, bytes }, i) => {
    const at = 12 + i * 16;
    font.set(
      [...tag].map((letter) => letter.charCodeAt(0)),
      at,
    );
    to.setUint32(at + 4, checksum);
    to.setUint32(at + 8, offset);
    to.setUint32(at + 12, bytes.length);
    font.set(bytes, offset);
    offset += padded(bytes.length);
  });
  return font;
}

const POST_HEADER = 32;

/** The table `post` as version 3, which names no glyph (OpenType, post): its library would read thousands of names. */
function nameless({ tag, bytes }: FontTable): FontTable {
  const header = bytes.slice(0, POST_HEADER);
  const view = new DataView(header.buffer);
  view.setUint32(0, 0x00030000);
  let checksum = 0;
  for (let at = 0; at < POST_HEADER; at += 4) checksum = (checksum + view.getUint32(at)) >>> 0;
  return { tag, checksum, bytes: header };
}

// Checked against the OpenType specification, chapter "Organization of an OpenType font": the table directory is sorted by
// tag, and a table's checksum is the sum of its 32-bit words.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { sfntOf } from '../../src/files/plan/woff.js';

const require = createRequire(import.meta.url);
const woff = readFileSync(require.resolve('@fontsource/dejavu-sans/files/dejavu-sans-latin-400-normal.woff'));

interface Entry {
  readonly tag: string;
  readonly checksum: number;
  readonly offset: number;
  readonly length: number;
}

function directory(font: Uint8Array): readonly Entry[] {
  const view = new DataView(font.buffer, font.byteOffset);
  return Array.from({ length: view.getUint16(4) }, (_, i) => {
    const at = 12 + 16 * i;
    return {
      tag: String.fromCharCode(...font.subarray(at, at + 4)),
      checksum: view.getUint32(at + 4),
      offset: view.getUint32(at + 8),
      length: view.getUint32(at + 12),
    };
  });
}

test('the unpacked font has its tables sorted, whole and with the checksums of the directory', () => {
  const font = sfntOf(woff);
  const view = new DataView(font.buffer);
  const entries = directory(font);
  expect(entries.map(({ tag }) => tag)).toEqual(entries.map(({ tag }) => tag).toSorted());
  expect(entries.map(({ tag }) => tag)).toEqual(expect.arrayContaining(['cmap', 'glyf', 'hmtx', 'loca']));
  for (const { tag, checksum, offset, length } of entries) {
    let sum = 0;
    for (let i = offset; i < offset + length; i += 4) sum = (sum + view.getUint32(i)) >>> 0;
    // the font's own checksum inside `head` counts as 0
    if (tag === 'head') sum = (sum - view.getUint32(offset + 8)) >>> 0;
    expect(sum, tag).toBe(checksum);
  }
});

test("the system's own way of unpacking gives the same font", () => {
  // as buffers: byte by byte, `toEqual` takes seconds over a font
  expect(Buffer.from(sfntOf(woff, inflateSync)).equals(Buffer.from(sfntOf(woff)))).toBe(true);
});

test('ligatures and kerning stay behind, so that letters are as wide as the sheets reckon', () => {
  const tags = directory(sfntOf(woff)).map(({ tag }) => tag);
  for (const tag of ['GSUB', 'GPOS', 'kern']) expect(tags).not.toContain(tag);
});

test('bytes that are no WOFF file are refused', () => {
  expect(() => sfntOf(new Uint8Array(100))).toThrow(RangeError);
});

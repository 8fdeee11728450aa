// The fonts of the plan for a page: outlines of letters that no plan is written in are taken out of the file. Every glyph keeps its
// number and its width, so that a plan made with the small font is the plan made with the whole one.
import { flavorOf, fontTables } from '../dist/src/files/plan/woff.js';

/** First and last code points: letters of Europe and Vietnam, and the signs of print, workshops and sums. */
const KEPT = [
  [0x20, 0x24f],
  [0x2b0, 0x45f],
  [0x1e00, 0x1eff],
  [0x2010, 0x20bf],
  [0x2100, 0x21af],
  [0x2200, 0x226f],
  [0x2300, 0x2335],
  [0x25a0, 0x25ff],
  [0x2610, 0x2617],
  [0x2713, 0x2718],
];

/** @returns a WOFF file whose tables are not packed: it is packed with all else */
export function smallFont(woff) {
  const tables = new Map(
    // emptied in place below: a copy
    fontTables(woff).map(({ tag, checksum, bytes }) => [tag, { checksum, bytes: bytes.slice() }]),
  );
  const of = (tag) => new DataView(tables.get(tag).bytes.buffer, tables.get(tag).bytes.byteOffset);
  const [head, glyf, loca] = [of('head'), of('glyf'), of('loca')];
  const count = of('maxp').getUint16(4);
  const wide = head.getInt16(50) === 1;
  const start = (glyph) => (wide ? loca.getUint32(4 * glyph) : 2 * loca.getUint16(2 * glyph));
  const kept = new Set([0]);
  const keep = (glyph) => {
    if (kept.has(glyph)) return;
    kept.add(glyph);
    const [from, to] = [start(glyph), start(glyph + 1)];
    // a letter with an accent is made of others
    if (to === from || glyf.getInt16(from) >= 0) return;
    for (let at = from + 10, flags = 0x20; flags & 0x20; ) {
      flags = glyf.getUint16(at);
      keep(glyf.getUint16(at + 2));
      at += 4 + (flags & 1 ? 4 : 2) + (flags & 8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0);
    }
  };
  for (const glyph of glyphsOf(of('cmap'))) keep(glyph);
  const whole = tables.get('glyf').bytes;
  // emptied in place: the places of all that is left stay what they are
  for (let glyph = 0; glyph < count; glyph += 1)
    if (!kept.has(glyph)) whole.fill(0, start(glyph), start(glyph + 1));
  // names of glyphs are for who draws fonts (OpenType, "post" of version 3 has none)
  const post = tables.get('post');
  post.bytes = post.bytes.slice(0, 32);
  new DataView(post.bytes.buffer).setUint32(0, 0x30000);
  return woffOf(flavorOf(woff), tables);
}

/** The glyphs of the letters that are kept, by the map of format 4 (OpenType, "cmap"). */
function* glyphsOf(cmap) {
  for (let i = 0; i < cmap.getUint16(2); i += 1) {
    const at = cmap.getUint32(8 + 8 * i);
    if (cmap.getUint16(at) !== 4) continue;
    const segments = cmap.getUint16(at + 6) / 2;
    const [ends, starts] = [at + 14, at + 16 + 2 * segments];
    for (let s = 0; s < segments; s += 1) {
      const [end, from] = [cmap.getUint16(ends + 2 * s), cmap.getUint16(starts + 2 * s)];
      const delta = cmap.getUint16(starts + 2 * (segments + s));
      const slot = starts + 2 * (2 * segments + s);
      const offset = cmap.getUint16(slot);
      for (const [first, last] of KEPT)
        for (let code = Math.max(first, from); code <= Math.min(last, end); code += 1) {
          const glyph = offset === 0 ? code : cmap.getUint16(slot + offset + 2 * (code - from));
          if (glyph !== 0) yield (glyph + delta) & 0xffff;
        }
    }
  }
}

/** W3C Recommendation WOFF File Format 1.0, sections 3 to 5. */
function woffOf(flavor, tables) {
  const padded = (length) => (length + 3) & ~3;
  const size = [...tables.values()].reduce(
    (sum, { bytes }) => sum + padded(bytes.length),
    44 + 20 * tables.size,
  );
  const out = new Uint8Array(size);
  const to = new DataView(out.buffer);
  to.setUint32(0, 0x774f4646);
  to.setUint32(4, flavor);
  to.setUint32(8, size);
  to.setUint16(12, tables.size);
  let [entry, offset] = [44, 44 + 20 * tables.size];
  for (const [tag, { bytes, checksum }] of tables) {
    out.set(
      [...tag].map((letter) => letter.charCodeAt(0)),
      entry,
    );
    for (const [i, value] of [offset, bytes.length, bytes.length, checksum].entries())
      to.setUint32(entry + 4 + 4 * i, value);
    out.set(bytes, offset);
    [entry, offset] = [entry + 20, offset + padded(bytes.length)];
  }
  return out;
}

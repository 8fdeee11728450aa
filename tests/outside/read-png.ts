import { inflateSync } from 'node:zlib';

export type Rgb = readonly [red: number, green: number, blue: number];

/** A picture by its pixels, rows from the top. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixel: (x: number, y: number) => Rgb;
  /** Number of pixels for which something holds. */
  readonly count: (of: (pixel: Rgb) => boolean) => number;
}

/** Reads a PNG file of 8 bits a channel, in colour, not interlaced (ISO/IEC 15948). */
export function readPng(file: Uint8Array): Picture {
  const png = Buffer.from(file);
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  const channels = png[25] === 6 ? 4 : 3;
  if (png[24] !== 8 || (png[25] !== 2 && png[25] !== 6) || png[28] !== 0)
    throw new Error('another kind of PNG');
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    if (png.toString('latin1', at + 4, at + 8) !== 'IDAT') continue;
    parts.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  }
  const out = unfiltered(inflateSync(Buffer.concat(parts)), width * channels, height, channels);
  const pixel = (x: number, y: number): Rgb => {
    const at = (y * width + x) * channels;
    return [out[at]!, out[at + 1]!, out[at + 2]!];
  };
  const count: Picture['count'] = (of) => {
    let sum = 0;
    for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) sum += of(pixel(x, y)) ? 1 : 0;
    return sum;
  };
  return { width, height, pixel, count };
}

/** Undoes the filter each row is written with: none, left, up, their mean, or the nearest of three. */
function unfiltered(raw: Buffer, row: number, height: number, channels: number): Uint8Array {
  const out = new Uint8Array(row * height);
  for (let y = 0; y < height; y += 1) {
    const filter = raw[y * (row + 1)]!;
    for (let x = 0; x < row; x += 1) {
      const at = y * row + x;
      const a = x >= channels ? out[at - channels]! : 0;
      const b = y > 0 ? out[at - row]! : 0;
      const c = x >= channels && y > 0 ? out[at - row - channels]! : 0;
      const p = a + b - c;
      const [pa, pb, pc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
      const nearest = pa <= pb && pa <= pc ? a : pb <= pc ? b : c;
      out[at] = raw[y * (row + 1) + 1 + x]! + [0, a, b, (a + b) >> 1, nearest][filter]!;
    }
  }
  return out;
}

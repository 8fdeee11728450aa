import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';

const require = createRequire(import.meta.url);

/** The font of every picture and plan: DejaVu Sans, free to embed. */
export const FONT_FAMILY = 'DejaVu Sans';

let started: Promise<void> | undefined;

const start = async (): Promise<void> =>
  initWasm(await readFile(require.resolve('@resvg/resvg-wasm/index_bg.wasm')));

/**
 * An SVG picture as PNG on white, with our own font: the same bytes on every machine.
 *
 * @param svg whole document; its width gives the height
 * @param pixels width of the picture
 */
export async function png(svg: string, pixels: number): Promise<Uint8Array> {
  started ??= start();
  const [font] = await Promise.all([
    readFile(require.resolve('@fontsource/dejavu-sans/files/dejavu-sans-latin-400-normal.woff2')),
    started,
  ]);
  const picture = new Resvg(svg, {
    background: '#ffffff',
    fitTo: { mode: 'width', value: pixels },
    font: { fontBuffers: [new Uint8Array(font)], defaultFontFamily: FONT_FAMILY },
  });
  try {
    return picture.render().asPng();
  } finally {
    picture.free();
  }
}

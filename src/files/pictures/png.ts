import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { PictureMaker } from '../made/index.js';

/** The font of every picture and plan: DejaVu Sans, free to embed. */
const FONT_FAMILY = 'DejaVu Sans';

let started: Promise<void> | undefined;

/**
 * An SVG picture as PNG on white, with our own font: the same bytes on every machine.
 *
 * @param svg whole document; its width gives the height
 * @param pixels width of the picture
 */
export async function png(svg: string, pixels: number, { wasm, font }: PictureMaker): Promise<Uint8Array> {
  started ??= initWasm(wasm);
  await started;
  const picture = new Resvg(svg, {
    background: '#ffffff',
    fitTo: { mode: 'width', value: pixels },
    font: { fontBuffers: [font], defaultFontFamily: FONT_FAMILY },
  });
  try {
    return picture.render().asPng();
  } finally {
    picture.free();
  }
}

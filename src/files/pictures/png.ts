import { initWasm, Resvg } from '@resvg/resvg-wasm';

let started: Promise<void> | undefined;

/**
 * An SVG picture without words as PNG on white: the same bytes on every machine.
 *
 * @param svg whole document; its width gives the height
 * @param pixels width of the picture
 */
export async function png(svg: string, pixels: number, wasm: Uint8Array): Promise<Uint8Array> {
  started ??= initWasm(wasm);
  await started;
  const picture = new Resvg(svg, {
    background: '#ffffff',
    fitTo: { mode: 'width', value: pixels },
  });
  try {
    return picture.render().asPng();
  } finally {
    picture.free();
  }
}

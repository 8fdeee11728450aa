import { initWasm, Resvg } from '@resvg/resvg-wasm';

let started: Promise<void> | undefined;

/**
 * An SVG picture without words as PNG on white: the same bytes on every machine.
 *
 * @param svg whole document; its width gives the height
 * @param pixels width of the picture
 */
export async function png(svg: string, pixels: number, wasm: Uint8Array): Promise<Uint8Array> {
  started ??= withoutFetching(() => initWasm(wasm));
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

/** The library asks whether it was handed one of these: Node loads all it has for fetching only to say no. */
const FETCHED = ['Request', 'Response'];

/** Hides from an act what is only made when it is asked for. */
async function withoutFetching(act: () => Promise<void>): Promise<void> {
  const hidden = FETCHED.flatMap((name) => {
    const own = Object.getOwnPropertyDescriptor(globalThis, name);
    return own?.get && own.configurable ? [{ name, own }] : [];
  });
  for (const { name, own } of hidden)
    Object.defineProperty(globalThis, name, { ...own, get: () => undefined });
  try {
    await act();
  } finally {
    for (const { name, own } of hidden) Object.defineProperty(globalThis, name, own);
  }
}

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Supplies } from '../files/index.js';
import { packageFolder } from './package-folder.js';

/** Where the build leaves the preview page's script, from the package's own folder. */
const VIEWER = 'dist/viewer.js';

/** The script of a living plan, the engine that works in it, and what draws its pictures. */
const LIVING = {
  page: 'dist/living.js',
  engine: 'dist/living-engine.txt',
  renderer: 'dist/living-renderer.txt',
};

const FONT = '@fontsource/dejavu-sans/files/dejavu-sans-latin';

const require = createRequire(import.meta.url);

const installed = async (path: string): Promise<Uint8Array> =>
  new Uint8Array(await readFile(require.resolve(path)));

/** What writers need, from the disk. */
export const SUPPLIES: Supplies = {
  planFonts: async () => {
    const [plain, bold, { inflateSync }] = await Promise.all([
      installed(`${FONT}-400-normal.woff`),
      installed(`${FONT}-700-normal.woff`),
      import('node:zlib'),
    ]);
    return { plain, bold, unzip: (packed) => new Uint8Array(inflateSync(packed)) };
  },
  renderer: () => installed('@resvg/resvg-wasm/index_bg.wasm'),
  viewerScript: () => built(VIEWER),
  livingScripts: async (pictures) => {
    const [page, engine] = await Promise.all([built(LIVING.page), built(LIVING.engine)]);
    return { page, engine, ...(pictures && { renderer: await built(LIVING.renderer) }) };
  },
};

/** @throws Error when the script was not built: a fault of the installation */
async function built(file: string): Promise<string> {
  const path = fileURLToPath(new URL(file, packageFolder()));
  try {
    return await readFile(path, 'utf8');
  } catch (cause) {
    throw new Error(`a page needs ${path}, which cannot be read: run 'npm run build'`, { cause });
  }
}

import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/** Where the build leaves the preview page's script, from the package's own folder. */
const PACKED = 'dist/viewer.js';

/**
 * The packed script of the preview page; it stands in the package, whether this runs from the sources or from what was built.
 *
 * @throws Error when it was not built: a fault of the installation
 */
export async function viewerScript(): Promise<string> {
  const path = fileURLToPath(new URL(PACKED, await packageFolder()));
  try {
    return await readFile(path, 'utf8');
  } catch (cause) {
    throw new Error(`the preview page needs ${path}, which cannot be read: run 'npm run build'`, { cause });
  }
}

/** The nearest folder above this file that holds a package.json. */
async function packageFolder(): Promise<URL> {
  let folder = new URL('./', import.meta.url);
  for (;;) {
    const found = await readFile(new URL('package.json', folder)).catch(() => undefined);
    if (found !== undefined) return folder;
    const above = new URL('../', folder);
    if (above.href === folder.href) throw new Error(`no package.json above ${import.meta.url}`);
    folder = above;
  }
}

import { readFile } from 'node:fs/promises';

/** The version in the package's own package.json, which is the nearest one above this file. */
export async function version(): Promise<string> {
  let folder = new URL('./', import.meta.url);
  for (;;) {
    const found = await readFile(new URL('package.json', folder), 'utf8').catch(() => undefined);
    if (found !== undefined) return (JSON.parse(found) as { version: string }).version;
    const above = new URL('../', folder);
    if (above.href === folder.href) throw new Error(`no package.json above ${import.meta.url}`);
    folder = above;
  }
}

import { existsSync } from 'node:fs';

/** The program's own folder, from its sources or built: the nearest one above this file that holds a package.json. */
export function packageFolder(): URL {
  let folder = new URL('./', import.meta.url);
  while (!existsSync(new URL('package.json', folder))) {
    const above = new URL('../', folder);
    if (above.href === folder.href) throw new Error(`no package.json above ${import.meta.url}`);
    folder = above;
  }
  return folder;
}

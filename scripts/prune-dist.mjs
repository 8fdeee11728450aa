// Deletes from dist what the compiler made of a source that is gone: a model taken away must not be listed any more.
// Nothing else is touched, so that a program running from dist meanwhile keeps its files.
import { existsSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');

for (const folder of ['src', 'models']) {
  const built = path.join(root, 'dist', folder);
  if (!existsSync(built)) continue;
  for (const name of readdirSync(built, { recursive: true, encoding: 'utf8' })) {
    const stem = /^(.*?)(\.d\.ts|\.js)$/.exec(name)?.[1];
    if (stem === undefined) continue;
    const sources = [`${stem}.ts`, `${stem}.d.ts`].map((file) => path.join(root, folder, file));
    if (!sources.some(existsSync)) rmSync(path.join(built, name));
  }
}

// Remakes the pictures of the README from the program's own output: node scripts/pictures.mjs (after npm run build).
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-pictures-'));
const program = path.join(root, 'dist/src/cli/bin.js');

const drawn = (name) =>
  execFileSync(process.execPath, [program, 'make', name, '--only', 'pictures', '--quiet', '--out', out]);

for (const model of ['stool', 'jig']) {
  drawn(model);
  for (const view of ['isometric', 'exploded']) {
    copyFileSync(
      path.join(out, model, 'pictures', `${view}.png`),
      path.join(root, 'docs', `${model}-${view}.png`),
    );
  }
}
// the gallery: every piece that is shipped, as it stands
const gallery = path.join(root, 'docs/pieces');
mkdirSync(gallery, { recursive: true });
for (const file of readdirSync(path.join(root, 'pieces')).sort()) {
  const name = path.basename(file, '.yaml');
  drawn(name);
  copyFileSync(path.join(out, name, 'pictures', 'isometric.svg'), path.join(gallery, `${name}.svg`));
}
rmSync(out, { recursive: true });

// Remakes the pictures of the README from the program's own output: node scripts/pictures.mjs (after npm run build).
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-pictures-'));
const program = path.join(root, 'dist/src/cli/bin.js');

for (const model of ['stool', 'jig']) {
  execFileSync(process.execPath, [program, 'make', model, '--only', 'pictures', '--quiet', '--out', out]);
  for (const view of ['isometric', 'exploded']) {
    copyFileSync(
      path.join(out, model, 'pictures', `${view}.png`),
      path.join(root, 'docs', `${model}-${view}.png`),
    );
  }
}
rmSync(out, { recursive: true });

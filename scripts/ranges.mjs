// Finds anew the ranges that shipped models and pieces state for themselves, and writes docs/ranges.md. After `npm run build`:
//   node scripts/ranges.mjs [name …]      finds those of all, or of these, by the command range; some minutes each
//   node scripts/ranges.mjs --page        writes the page alone, from the files that are there
// A file in shared/ranges is what the command wrote, unchanged: the plan of that design carries it as long as its design is the same.
import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
const folder = path.join(root, 'shared/ranges');
mkdirSync(folder, { recursive: true });
const asked = process.argv.slice(2);
const shipped = [
  'stool',
  'frame',
  'jig',
  ...readdirSync(path.join(root, 'pieces'))
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => file.replace(/\.yaml$/, '')),
];
const names = asked.includes('--page') ? [] : asked.length > 0 ? asked : shipped;
const out = mkdtempSync(path.join(tmpdir(), 'ranges-'));
for (const name of names) {
  const bin = path.join(root, 'dist/src/cli/bin.js');
  execFileSync(process.execPath, [bin, 'range', name, '--cures', '--out', out], { stdio: 'inherit' });
  copyFileSync(path.join(out, `${name}-range/ranges.json`), path.join(folder, `${name}.json`));
}

const { rangePaper } = await import(path.join(root, 'dist/src/range/index.js'));
const { speaker } = await import(path.join(root, 'dist/src/length/index.js'));
const { markdown } = await import(path.join(root, 'dist/src/files/index.js'));
const told = shipped.filter((name) => existsSync(path.join(folder, `${name}.json`)));
const parts = told.map((name) => {
  const { about: _, ...ranges } = JSON.parse(readFileSync(path.join(folder, `${name}.json`), 'utf8'));
  const [, , ...blocks] = rangePaper(ranges, speaker('mm')).alone;
  return `## ${name}\n\n${ranges.tried} designs were judged in full.\n\n${markdown(blocks).replaceAll(/^## /gm, '### ')}`;
});
writeFileSync(
  path.join(root, 'docs/ranges.md'),
  `# How far the dimensions of each shipped design may be changed

Written by \`node scripts/ranges.mjs\` from what \`tenonwright range <name> --cures\` found: each dimension was moved by itself while the
others stayed as they come or followed it, in the built-in shop. A full verdict stands on either side of every end; between the
values that were tried nothing is claimed. The plan of a design made as it comes carries the same page.

${parts.join('\n')}`,
);

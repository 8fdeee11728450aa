// Plants small faults in the code, one after the other, and runs the tests that should see them: `npm run faults`, by hand.
// A fault that no test sees is a survivor. `npm run faults -- feed wedge` tries only those whose name holds one of the words.
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { FAULTS } from './faults.mjs';

process.chdir(join(import.meta.dirname, '../..'));

const words = process.argv.slice(2);
const chosen = FAULTS.filter(({ name }) => words.length === 0 || words.some((word) => name.includes(word)));

let planted;
const mend = () => {
  if (planted) writeFileSync(planted.file, planted.text);
  planted = undefined;
};
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => {
    mend();
    process.exit(1);
  });

const survivors = [];
const lost = [];
for (const [i, { name, file, from, to, tests }] of chosen.entries()) {
  const text = readFileSync(file, 'utf8');
  const places = text.split(from).length - 1;
  if (places !== 1) {
    lost.push(`${name}: '${from}' stands ${places} times in ${file}`);
    continue;
  }
  planted = { file, text };
  try {
    writeFileSync(
      file,
      text.replace(from, () => to),
    );
    const started = Date.now();
    const { status } = spawnSync(
      process.execPath,
      ['node_modules/vitest/vitest.mjs', 'run', '--bail=1', '--maxWorkers=2', ...tests],
      { encoding: 'utf8', env: { ...process.env, TENONWRIGHT_BUILT: '1' } },
    );
    const seen = status !== 0;
    if (!seen) survivors.push(name);
    console.log(
      `${i + 1}/${chosen.length} ${seen ? 'seen' : 'SURVIVED'} ${name} (${Math.round((Date.now() - started) / 1000)} s)`,
    );
  } finally {
    mend();
  }
}

for (const one of lost) console.log(`not planted: ${one}`);
for (const name of survivors) console.log(`survived: ${name}`);
const tried = chosen.length - lost.length;
console.log(`${tried} faults planted, ${tried - survivors.length} seen, ${survivors.length} survived`);
process.exitCode = survivors.length > 0 || lost.length > 0 ? 1 : 0;

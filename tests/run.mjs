// What `npm test` runs: types, lint and format, then every test; the last line is the tally of all of them.

import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import process from 'node:process';

process.chdir(join(import.meta.dirname, '..'));

const passed = [];
const failed = [];
const leftOut = new Map();

// side by side: the program is built on one core before the first test
await Promise.all([
  step('types', ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.json', '--noEmit']),
  step('lint and format', ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.']),
  tests(),
]);
report();

/** Runs one check that passes or fails as a whole; what it says is said when it ends. */
async function step(name, command) {
  const said = [];
  const status = await run(command, (part) => said.push(part));
  console.log(`\n== ${name}\n${said.join('')}`);
  (status === 0 ? passed : failed).push(name);
}

/** Runs the tests and counts them by the runner's own report; a run without a report is one failure. */
async function tests() {
  const folder = mkdtempSync(join(tmpdir(), 'tenonwright-tests-'));
  const report = join(folder, 'tests.json');
  try {
    const status = await run([
      'node_modules/vitest/vitest.mjs',
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...process.argv.slice(2),
    ]);
    const before = failed.length;
    const counted = count(report);
    if (counted === 0) failed.push('tests: no test was run');
    else if (status !== 0 && failed.length === before)
      failed.push(`tests: the run ended with ${status}, see above`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Takes a report apart. @returns number of tests in it */
function count(path) {
  let counted = 0;
  for (const file of read(path)) {
    const name = relative(process.cwd(), file.name);
    for (const test of file.assertionResults) {
      counted += 1;
      const title = `${name}: ${test.fullName}`;
      const reason = test.meta?.leftOut;
      if (test.status === 'passed') passed.push(title);
      else if (test.status === 'failed') failed.push(title);
      else if (reason === undefined) failed.push(`${title} (${test.status}, and no reason is given)`);
      else leftOut.set(reason, (leftOut.get(reason) ?? 0) + 1);
    }
    const told = file.assertionResults.some((test) => test.status === 'failed');
    if (file.status === 'failed' && !told) failed.push(`${name}: ${file.message || 'could not be run'}`);
  }
  return counted;
}

function read(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).testResults;
  } catch (error) {
    console.error(`the report of the tests cannot be read: ${error.message}`);
    return [];
  }
}

/** @param hear takes what it says; without it that is said at once */
function run(command, hear) {
  const to = hear ? 'pipe' : 'inherit';
  const child = spawn(process.execPath, command, { stdio: ['ignore', to, to] });
  for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', hear);
  return new Promise((ended) => {
    child.on('error', (error) => console.error(error.message));
    child.on('close', (status, signal) => ended(status ?? signal ?? 1));
  });
}

function report() {
  if (leftOut.size > 0) console.log('\nLeft out:');
  for (const [reason, tests] of leftOut) console.log(`- ${reason} (${tests} checks)`);
  if (failed.length > 0) console.log('\nFailed:');
  for (const name of failed) console.log(`- ${name}`);
  process.exitCode = failed.length > 0 ? 1 : 0;
  console.log(`\n${passed.length} passed, ${failed.length} failed`);
}

// A run of ranges killed again and again and started anew comes to the same as one that was left alone. Run by hand, after
// `npm run build`:
//   node tests/range/killed.mjs [kills]
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const kills = Number(process.argv[2] ?? 50);
const program = path.resolve(import.meta.dirname, '../../dist/src/cli/bin.js');
const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-killed-'));
const line = (out) => [
  program,
  'range',
  'frame',
  '--width',
  '210',
  '--across',
  'width,rail-width',
  '--quiet',
  '--out',
  path.join(folder, out),
];
const read = (out) => readFileSync(path.join(folder, out, 'frame-range/ranges.json'), 'utf8');

const start = performance.now();
if (spawnSync(process.execPath, line('whole'), { stdio: 'inherit' }).status !== 0) process.exit(1);
const whole = performance.now() - start;
let killed = 0;
for (let state = 1; ; ) {
  state = (state * 48_271) % 2_147_483_647;
  const run = spawn(process.execPath, line('killed'), { stdio: 'inherit' });
  const wait = 300 + (whole / 12) * (state / 2_147_483_647);
  const timer = killed < kills ? setTimeout(() => run.kill('SIGKILL'), wait) : undefined;
  const status = await new Promise((done) => run.on('exit', done));
  clearTimeout(timer);
  if (status !== null) break;
  killed += 1;
}
const same = read('killed') === read('whole');
console.log(`${killed} kills: ${same ? 'the same to the byte' : 'NOT the same'}`);
rmSync(folder, { recursive: true, force: true });
process.exitCode = same ? 0 : 1;

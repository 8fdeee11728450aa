/**
 * How long the program takes, and how that grows: whole runs beside the same boards made with the modelling library alone
 * (stock.mjs, no checks), verdicts in one process and in two workers (verdict.mjs), and designs of more and more joints
 * (grid.mjs). Writes docs/speed.md.
 *
 * npm run speed [runs] [folder of another built copy, whose verdicts are taken in turn with ours]; figures only, nothing here can
 * fail.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir, totalmem } from 'node:os';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import stool from '../../dist/models/stool.js';
import { exploded } from '../../dist/src/assembly/index.js';
import { settleEngine } from '../../dist/src/cli/engine.js';
import { readParameters } from '../../dist/src/model/index.js';

const RUNS = Number(process.argv[2] ?? 7);
const OTHER = process.argv[3] === undefined ? undefined : resolve(process.argv[3], 'dist/');
const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'tenonwright-speed-'));

/** One run as a process of its own: seconds on the clock, seconds of processor, MB at its fullest, what it printed. */
async function measured(args) {
  const start = performance.now();
  const child = spawn(process.execPath, ['--import', './tests/speed/peak.mjs', ...args], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit', 'pipe'],
  });
  const [printed, used, status] = await Promise.all([
    textOf(child.stdout),
    textOf(child.stdio[3]),
    new Promise((done) => child.on('close', done)),
  ]);
  const wall = (performance.now() - start) / 1000;
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with status ${status}\n${printed}`);
  const { maxRSS, cpu } = JSON.parse(used);
  return { wall, cpu: cpu / 1e6, memory: maxRSS / 1024, printed };
}

async function textOf(stream) {
  let text = '';
  for await (const piece of stream) text += piece;
  return text;
}

function median(numbers) {
  const sorted = numbers.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 ? sorted[Math.floor(half)] : (sorted[half - 1] + sorted[half]) / 2;
}

/** Runs in turn, A B A B, so that a change of the machine's pace meets all of them; the first round only warms up. */
async function inTurn(commands) {
  const runs = commands.map(() => []);
  for (let round = 0; round <= RUNS; round += 1) {
    for (const [i, args] of commands.entries()) {
      const run = await measured(args);
      if (round > 0) runs[i].push(run);
    }
  }
  return runs;
}

const medians = (runs) => ({
  wall: median(runs.map((run) => run.wall)),
  cpu: median(runs.map((run) => run.cpu)),
  memory: median(runs.map((run) => run.memory)),
});

// as the program does that starts such workers
settleEngine();

/** The same verdicts in one worker, and in two at once: how many times as many designs in the same time. */
async function inWorkers(number, verdicts) {
  const dist = pathToFileURL(join(root, 'dist/')).href;
  const workers = Array.from(
    { length: number },
    () => new Worker(new URL('verdict.mjs', import.meta.url), { workerData: [dist, verdicts] }),
  );
  const next = (worker) =>
    new Promise((done, fail) => {
      worker.once('message', done);
      worker.once('error', fail);
    });
  await Promise.all(workers.map(next));
  const start = performance.now();
  const done = workers.map(next);
  for (const worker of workers) worker.postMessage('go');
  await Promise.all(done);
  const seconds = (performance.now() - start) / 1000;
  await Promise.all(workers.map((worker) => worker.terminate()));
  return (2 * number * verdicts) / seconds;
}

const make = (kinds, ...design) => {
  const where = ['--out', folder, '--quiet', ...(kinds ? ['--only', kinds] : [])];
  return ['dist/src/cli/bin.js', 'make', ...design, ...where];
};
const table = (head, rows) =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

/** The stool as data, and how far apart its boards stand when it is taken apart. */
function stoolAsData() {
  const file = join(folder, 'stool.json');
  const design = stool.build(readParameters(stool, {}, 'mm'));
  writeFileSync(file, JSON.stringify({ design, apart: Object.fromEntries(exploded(design)) }));
  return file;
}

/** Whole runs: name, command. The second is what the others are compared with. */
const WHOLE = [
  ['`make stool --only stl,dxf,shop`, all checks', make('stl,dxf,shop', 'stool')],
  [
    'the stock way: boards, assembly, templates; no checks',
    ['tests/speed/stock.mjs', stoolAsData(), join(folder, 'stock')],
  ],
  ['`make stool`, everything', make(undefined, 'stool')],
  ['`check stool`', ['dist/src/cli/bin.js', 'check', 'stool', '--quiet']],
  ['`make stool --treads 2 --only stl,dxf,shop`', make('stl,dxf,shop', 'stool', '--treads', '2')],
  ['`make jig --only stl,dxf,shop`', make('stl,dxf,shop', 'jig')],
];

async function wholeRuns() {
  const runs = await inTurn(WHOLE.map(([, args]) => args));
  const stock = medians(runs[1]);
  return table(
    ['whole process', 'clock', 'processor', 'memory', 'processor, of the stock way'],
    runs.map((each, i) => {
      const { wall, cpu, memory } = medians(each);
      return [
        WHOLE[i][0],
        `${wall.toFixed(2)} s`,
        `${cpu.toFixed(2)} s`,
        `${memory.toFixed(0)} MB`,
        (cpu / stock.cpu).toFixed(2),
      ];
    }),
  );
}

async function verdicts() {
  const copies = [['this program', join(root, 'dist/')], ...(OTHER ? [['the other copy', OTHER]] : [])];
  const runs = await inTurn(copies.map(([, dist]) => ['tests/speed/verdict.mjs', `${dist}/`, '40']));
  const told = runs.map((each) => each.map(({ printed }) => JSON.parse(printed)));
  const of = (i, what, by = 'processor') => median(told[i].map((one) => one[what][by]));
  const [one, two] = [await inWorkers(1, 60), await inWorkers(2, 60)];
  const row = (name, what) => [
    name,
    `${of(0, what, 'clock').toFixed(1)} ms`,
    `${of(0, what).toFixed(1)} ms`,
    (1000 / of(0, what)).toFixed(1),
    OTHER ? `${(of(0, what) / of(1, what)).toFixed(2)} of ${of(1, what).toFixed(1)} ms` : '–',
  ];
  const rows = table(
    ['verdicts on the stool, one process, warm', 'clock', 'processor', 'a second of it', 'of the other copy'],
    [
      row('full verdict, the same stool again', 'again'),
      row('full verdict, another height each time', 'dragged'),
      row('quick verdict', 'quick'),
    ],
  );
  return `${rows}\n\nTwo workers judge ${(two / one).toFixed(2)} times as many designs as one in the same time.`;
}

async function growth() {
  const rows = [];
  for (const joints of [10, 100, 500, 1000]) {
    const { printed, memory } = await measured(['tests/speed/grid.mjs', String(joints)]);
    const { joints: made, errors: _, ...stages } = JSON.parse(printed);
    const seconds = Object.values(stages);
    const whole = seconds.reduce((sum, one) => sum + one, 0);
    rows.push([
      made,
      ...seconds.map((one) => one.toFixed(2)),
      ((whole / made) * 1000).toFixed(2),
      `${memory.toFixed(0)} MB`,
    ]);
  }
  return table(
    ['joints of a lattice', 'design', 'solids', 'measures', 'bench', 'checks', 'ms a joint', 'memory'],
    rows,
  );
}

try {
  const [{ model = 'unknown processor' } = {}] = cpus();
  const text = `# How fast it is

Written by \`npm run speed\`: medians of ${RUNS} runs taken in turn. Seconds of the lattice are of processor.

${model.trim()}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GB; Node ${process.version}.

${await wholeRuns()}

${await verdicts()}

${await growth()}
`;
  writeFileSync(join(root, 'docs/speed.md'), text);
  console.log(text);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

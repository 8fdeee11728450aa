/**
 * How long the program takes: `make stool` with all checks, with and without the papers of the bench and the plan, beside the same boards
 * made with the modelling library alone (stock.mjs, no checks); other designs; and growth with the number of joints (grid.mjs).
 *
 * npm run speed [runs]; figures only, nothing here can fail.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const RUNS = Number(process.argv[2] ?? 7);
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
    new Promise((resolve) => child.on('close', resolve)),
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

const medians = (runs) => ({
  wall: median(runs.map((run) => run.wall)),
  cpu: median(runs.map((run) => run.cpu)),
  memory: median(runs.map((run) => run.memory)),
});

/** Runs in turn, A B A B, so that a change of the machine's pace meets all of them; the first round only warms up. */
async function inTurn(commands) {
  const runs = commands.map(() => []);
  for (let round = 0; round <= RUNS; round += 1) {
    for (const [i, args] of commands.entries()) {
      const run = await measured(args);
      if (round > 0) runs[i].push(run);
    }
  }
  return runs.map(medians);
}

const row = (name, cells) =>
  console.log(`${name.padEnd(28)}${cells.map((cell) => cell.padStart(11)).join('')}`);
const figures = ({ wall, cpu, memory }) => [
  `${wall.toFixed(3)} s`,
  `${cpu.toFixed(3)} s`,
  `${memory.toFixed(0)} MB`,
];

const CUTTING = 'stl,dxf,faces';
const UNPRINTED = `${CUTTING},shop,3mf,glb,pictures`;
const make = (kinds, ...design) => {
  const where = ['--out', folder, '--quiet', '--only', kinds];
  return ['dist/src/cli/bin.js', 'make', ...design, ...where];
};
const ratio = (a, b) => [a.wall / b.wall, a.cpu / b.cpu, a.memory / b.memory].map((part) => part.toFixed(2));

try {
  console.log(`node ${process.version}, ${cpus().length} cores; medians of ${RUNS} runs in turn\n`);
  const [bare, papers, stock, two, jig, unprinted, whole] = await inTurn([
    make(CUTTING, 'stool'),
    make(`${CUTTING},shop`, 'stool'),
    ['tests/speed/stock.mjs', 'stool', join(folder, 'stock')],
    make(`${CUTTING},shop`, 'stool', '--treads', '2'),
    make(`${CUTTING},shop`, 'jig'),
    make(UNPRINTED, 'stool'),
    make(`${UNPRINTED},plan,page`, 'stool'),
  ]);
  row('all checks in each make', ['wall', 'processor', 'memory']);
  row('stool, no papers', figures(bare));
  row('stool, shop papers', figures(papers));
  row('stock stool, no checks', figures(stock));
  row('papers / no papers', ratio(papers, bare));
  row('papers / stock', ratio(papers, stock));
  row('two treads, shop papers', figures(two));
  row('jig, shop papers', figures(jig));
  row('stool, no plan, no page', figures(unprinted));
  row('stool, everything', figures(whole));
  row('everything / no plan, page', ratio(whole, unprinted));

  console.log('\ngrid of rails, seconds and milliseconds a joint');
  row('joints', ['design', 'solids', 'measures', 'bench', 'checks', 'ms a joint', 'memory']);
  for (const joints of [10, 100, 500]) {
    const { printed, memory } = await measured(['tests/speed/grid.mjs', String(joints)]);
    const { joints: made, errors: _, ...stages } = JSON.parse(printed);
    const seconds = Object.values(stages);
    const whole = seconds.reduce((sum, one) => sum + one, 0);
    row(String(made), [
      ...seconds.map((one) => one.toFixed(3)),
      ((whole / made) * 1000).toFixed(2),
      `${memory.toFixed(0)} MB`,
    ]);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/**
 * Random designs of every model, judged in full by two workers: none may end in a fault of the program, no body may be open,
 * none may be called sound by its quick verdict where the full one finds an error, and memory may not grow.
 *
 * npm run soak [designs] [seed]; prints the tally (also when it is interrupted), and ends with 1 when something of that is not so.
 */
import { readdirSync } from 'node:fs';
import process from 'node:process';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { settleEngine } from '../../dist/src/cli/engine.js';
import { fractions } from '../fractions.mjs';

const [designs = '2000', seed = '1'] = process.argv.slice(2);
const WORKERS = 2;

/** Memory may differ by this much between the first tenth of the designs and the last, MB: what is kept for speed is bounded. */
const GROWTH = 150;

/** What must not be counted even once. */
const UNTOLD = 'quick verdicts that told no error where the full verdict tells one';
const WRONG = ['faults', 'open bodies', UNTOLD];

if (isMainThread) {
  // as the program does that starts such workers
  settleEngine();
  await conduct();
} else await work(workerData);

async function conduct() {
  const each = Math.ceil(Number(designs) / WORKERS);
  const tallies = Array.from({ length: WORKERS }, () => ({}));
  const memory = [];
  process.once('SIGINT', () => process.exit(conclude(tallies, memory)));
  await Promise.all(
    tallies.map(
      (_, i) =>
        new Promise((done, fail) => {
          const worker = new Worker(new URL(import.meta.url), {
            workerData: { count: each, seed: Number(seed) + i },
          });
          worker.on('message', ({ tally, told }) => {
            tallies[i] = tally;
            if (told) console.log(told);
            memory.push(process.memoryUsage().rss / 2 ** 20);
          });
          worker.on('error', fail);
          worker.on('exit', done);
        }),
    ),
  );
  process.exitCode = conclude(tallies, memory);
}

/** Prints what was seen so far; the exit status. */
function conclude(tallies, memory) {
  const whole = {};
  for (const tally of tallies) {
    for (const [name, number] of Object.entries(tally)) whole[name] = (whole[name] ?? 0) + number;
  }
  const tenth = Math.max(1, Math.floor(memory.length / 10));
  const [first, last] = [memory.slice(tenth, 2 * tenth), memory.slice(-tenth)].map((part) =>
    Math.max(...part, 0),
  );
  console.log(JSON.stringify(whole, undefined, 2));
  console.log(`memory: ${first.toFixed(0)} MB after a tenth, ${last.toFixed(0)} MB at the end`);
  const wrong = WRONG.some((name) => whole[name] > 0);
  return wrong || last - first > GROWTH ? 1 : 0;
}

async function work({ count, seed: from }) {
  const of = (path) => import(new URL(`../../dist/${path}`, import.meta.url).href);
  const names = readdirSync(new URL('../../dist/models/', import.meta.url))
    .filter((name) => name.endsWith('.js'))
    .map((name) => name.slice(0, -3));
  const models = await Promise.all(names.map(async (name) => (await of(`models/${name}.js`)).default));
  const { readParameters, parameterMeta } = await of('src/model/index.js');
  const solid = await of('src/solid/index.js');
  const checks = await of('src/checks/index.js');
  const { speaker } = await of('src/length/index.js');
  const { builtInShop, jigAtHand } = await of('src/shop/index.js');
  const shop = builtInShop('mm');
  const say = speaker('mm');
  const jigModel = models[names.indexOf('jig')];
  const jig = jigModel.build(readParameters(jigModel, {}, 'mm'));
  const tools = { shop, plate: jigAtHand(jig).plate.thickness };
  const random = fractions(from);
  const tally = { designs: 0, refused: 0, bodies: 0, ...Object.fromEntries(WRONG.map((name) => [name, 0])) };
  const add = (name) => {
    tally[name] = (tally[name] ?? 0) + 1;
  };
  for (let i = 0; i < count; i += 1) {
    const at = i % models.length;
    const raw = randomValues(models[at], parameterMeta, random);
    let told;
    const kernel = await solid.startKernel();
    try {
      const design = models[at].build(readParameters(models[at], raw, 'mm'));
      const solids = solid.solidsOf(kernel, design);
      solid.gate(solids);
      const found = checks.runChecks(checks.benchInShop(checks.benchOf(solids, say), shop, jig));
      for (const level of new Set(found.map((finding) => finding.level))) add(`with ${level}s`);
      const quick = checks.quickVerdict(design, say, tools);
      const errors = found.filter(({ level }) => level === 'error');
      if (quick.sound) add('called sound by the quick verdict');
      if (quick.sound && errors.length > 0) {
        add(UNTOLD);
        told = `untold ${errors.map(({ code }) => code).join(', ')}: ${names[at]} ${JSON.stringify(raw)}`;
      }
      for (const { id, body } of solid.allSolids(solids)) {
        tally.bodies += 1;
        if (body.status() === 'NoError' && closed(solid.meshOf(body).triangles)) continue;
        add('open bodies');
        told = `open body ${id}: ${names[at]} ${JSON.stringify(raw)}`;
      }
      add('designs');
      add(names[at]);
    } catch (error) {
      if (isRefusal(error)) add('refused');
      else {
        add('faults');
        told = `fault: ${names[at]} ${JSON.stringify(raw)}\n${error.stack}`;
      }
    } finally {
      kernel.dispose();
    }
    if (told || i % 50 === 49 || i === count - 1) parentPort.postMessage({ tally, told });
  }
}

/** A refusal can be put into the person's words. */
function isRefusal(error) {
  return typeof error?.explain === 'function';
}

/** Every edge is run once each way. */
function closed(triangles) {
  const corners = triangles.reduce((most, corner) => Math.max(most, corner), 0) + 1;
  const run = new Set();
  for (let i = 0; i < triangles.length; i += 1)
    run.add(triangles[i] * corners + triangles[i % 3 === 2 ? i - 2 : i + 1]);
  if (run.size !== triangles.length) return false;
  for (const edge of run) if (!run.has((edge % corners) * corners + Math.floor(edge / corners))) return false;
  return true;
}

/** Values of some of a model's parameters: most near their default, some anywhere in their range. */
function randomValues(model, parameterMeta, random) {
  const values = {};
  for (const [name, schema] of Object.entries(model.parameters.shape)) {
    const meta = parameterMeta(name, schema);
    if (random() > 0.35) continue;
    if (meta.choices) values[name] = meta.choices[Math.floor(random() * meta.choices.length)];
    else if (meta.kind === 'flag') values[name] = random() < 0.5;
    else if (meta.min !== undefined && meta.max !== undefined && meta.default !== undefined) {
      const range = (meta.max - meta.min) * (random() < 0.8 ? 0.2 : 1);
      const value = Math.min(meta.max, Math.max(meta.min, meta.default + (random() - 0.5) * range));
      values[name] = meta.kind === 'count' ? Math.round(value) : Math.round(value * 10) / 10;
    }
  }
  return values;
}

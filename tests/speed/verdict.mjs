/**
 * Full verdicts one after the other in one process, as while a person tries sizes: stools of a tread and a little more each time.
 *
 * node tests/speed/verdict.mjs <built folder> <verdicts> prints milliseconds of processor and of the clock as JSON: the median
 * of a verdict once the program is warm, of a quick verdict where there is one, and those of all.
 */
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { verdictsBy } from './verdicts.mjs';

const [dist, count] = isMainThread
  ? [pathToFileURL(process.argv[2]).href, Number(process.argv[3])]
  : workerData;
const judge = await verdictsBy(dist);
const of = (path) => import(new URL(path, dist).href);
const { default: stool } = await of('models/stool.js');
const { readParameters } = await of('src/model/index.js');
const { quickVerdict } = await of('src/checks/index.js');
const { speaker } = await of('src/length/index.js');

const stoolOf = (i) => stool.build(readParameters(stool, { height: 225 + (i % 40) / 4 }, 'mm'));
const processor = (work) => {
  const before = process.cpuUsage();
  const done = work();
  const used = () => {
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  };
  return done instanceof Promise ? done.then(used) : used();
};
const median = (numbers) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1];

const WARM = 20;
for (let i = 0; i < WARM; i += 1) await judge(stoolOf(i));
parentPort?.postMessage('warm');
if (parentPort) await new Promise((resolve) => parentPort.once('message', resolve));
const start = performance.now();
const each = [];
for (let i = 0; i < count; i += 1) each.push(await processor(() => judge(stoolOf(i))));
const clock = performance.now() - start;
const quick = quickVerdict
  ? Array.from({ length: 200 }, (_, i) => stoolOf(i)).map((design) =>
      processor(() => quickVerdict(design, speaker('mm'))),
    )
  : [];
const told = {
  verdict: median(each),
  clock: clock / count,
  quick: quick.length > 0 ? median(quick) : undefined,
};
if (parentPort) parentPort.postMessage(told);
else process.stdout.write(JSON.stringify(told));

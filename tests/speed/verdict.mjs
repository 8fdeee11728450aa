/**
 * Full verdicts one after the other in one process: on the stool as it comes, again and again, and on one a little higher each
 * time, as while a person drags a slider.
 *
 * node tests/speed/verdict.mjs <built folder> <verdicts> prints milliseconds of processor, and on the clock, as JSON: medians once
 * the program is warm. The processor also counts what translates and clears up beside it; a person who drags waits for the clock.
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

const stoolOf = (i) => stool.build(readParameters(stool, i === 0 ? {} : { height: 225 + i / 20 }, 'mm'));
const measured = (work) => {
  const before = process.cpuUsage();
  const start = performance.now();
  const done = work();
  const used = () => {
    const { user, system } = process.cpuUsage(before);
    return { processor: (user + system) / 1000, clock: performance.now() - start };
  };
  return done instanceof Promise ? done.then(used) : used();
};
const median = (numbers) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1];
const medians = (used, each = 1) => ({
  processor: median(used.map(({ processor }) => processor)) / each,
  clock: median(used.map(({ clock }) => clock)) / each,
});

/** After so many verdicts the engine translates little any more: a search makes thousands. */
const WARM = 60;
for (let i = 0; i < WARM; i += 1) await judge(stoolOf(i));
parentPort?.postMessage('warm');
if (parentPort) await new Promise((resolve) => parentPort.once('message', resolve));
const [again, dragged] = [[], []];
for (let i = 0; i < count; i += 1) {
  again.push(await measured(() => judge(stoolOf(0))));
  dragged.push(await measured(() => judge(stoolOf(WARM + i))));
}
// asking what was used takes a share of a quick verdict itself: a few are measured together; in workers full verdicts alone are counted
const BATCH = 10;
const quick = [];
for (let i = 0; isMainThread && quickVerdict && i < WARM + 40; i += 1) {
  const designs = Array.from({ length: BATCH }, (_, k) => stoolOf(BATCH * i + k));
  const used = measured(() => {
    for (const design of designs) quickVerdict(design, speaker('mm'));
  });
  if (i >= WARM) quick.push(used);
}
const told = {
  again: medians(again),
  dragged: medians(dragged),
  quick: quick.length > 0 ? medians(quick, BATCH) : undefined,
};
if (parentPort) parentPort.postMessage(told);
else process.stdout.write(JSON.stringify(told));

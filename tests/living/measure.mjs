// How fast a living plan answers in Chromium, and what it holds in memory over many changes. Run after a build, on a quiet machine:
//   node tests/living/measure.mjs            times alone, for the stool, the frame and the jig
//   node tests/living/measure.mjs 500        and the memory over 500 changes of each
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { chromium } from 'playwright-core';

/** A size of each design and the ends it is moved between, mm; every change takes it a step on. */
const TRIED = [
  { design: 'stool', option: 'height', from: 200, to: 300 },
  { design: 'frame', option: 'length', from: 400, to: 900 },
  { design: 'jig', option: 'base-length', from: 140, to: 170 },
];
const CHANGES = 9;
const changes = Number(process.argv[2] ?? 0);
const root = path.resolve(import.meta.dirname, '../..');
const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-measure-'));

/** In the page: notes when each answer of the worker comes, and lets the kernel's memory be asked for. */
function watch() {
  window.heard = [];
  const Plain = window.Worker;
  window.Worker = class extends Plain {
    constructor(script) {
      super(script);
      this.addEventListener('message', ({ data }) => {
        window.heard.push({ kind: data.kind, number: data.number, at: performance.now() });
      });
    }
  };
  const before = `const begin = WebAssembly.instantiate;
WebAssembly.instantiate = async (...all) => {
  const made = await begin(...all);
  const { exports } = made.instance ?? made;
  self.kernelMemory = Object.values(exports).find((one) => one instanceof WebAssembly.Memory);
  return made;
};
`;
  const Parts = window.Blob;
  window.Blob = class extends Parts {
    constructor(parts, kind) {
      super(kind?.type === 'text/javascript' ? [before, ...parts] : parts, kind);
    }
  };
}

/** What is in use of the heap of the page's worker, bytes: a worker itself has no way to tell, so the browser is asked. */
async function heapOfWorker(page) {
  const asking = await page.context().newCDPSession(page);
  const attached = new Promise((go) => asking.once('Target.attachedToTarget', go));
  // without `flatten` a session reaches its worker by messages
  await asking.send('Target.setAutoAttach', {
    autoAttach: true,
    waitForDebuggerOnStart: false,
    flatten: false,
  });
  const { sessionId } = await attached;
  const ask = async (id, method) => {
    const answered = new Promise((go) => {
      const hear = ({ message }) => {
        const told = JSON.parse(message);
        if (told.id !== id) return;
        asking.off('Target.receivedMessageFromTarget', hear);
        go(told.result);
      };
      asking.on('Target.receivedMessageFromTarget', hear);
    });
    await asking.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) });
    return answered;
  };
  await ask(1, 'HeapProfiler.collectGarbage');
  const { usedSize } = await ask(2, 'Runtime.getHeapUsage');
  await asking.detach();
  return usedSize;
}

const median = (all) => all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)];

const chromiumPath = spawnSync('sh', ['-c', 'command -v chromium || command -v chromium-browser'], {
  encoding: 'utf8',
});
const browser = await chromium.launch({
  executablePath: chromiumPath.stdout.trim(),
  args: [
    '--no-sandbox',
    '--disable-dev-shm-usage',
    '--disable-gpu',
    '--use-angle=swiftshader',
    '--enable-unsafe-swiftshader',
    '--enable-precise-memory-info',
    '--js-flags=--expose-gc',
  ],
});

async function measured({ design, option, from, to }) {
  const made = spawnSync(
    process.execPath,
    ['dist/src/cli/bin.js', 'make', design, '--only', 'living', '--out', out, '--quiet'],
    { cwd: root, encoding: 'utf8' },
  );
  if (made.status !== 0) throw new Error(made.stderr);
  const page = await (
    await browser.newContext({ viewport: { width: 900, height: 600 }, acceptDownloads: true })
  ).newPage();
  page.setDefaultTimeout(120_000);
  await page.addInitScript(watch);
  await page.goto(`file://${path.join(out, design, 'living-plan.html')}`);
  await page.waitForFunction(() => window.heard.some(({ kind }) => kind === 'verdict'));
  const live = await page.evaluate(() => window.heard.find(({ kind }) => kind === 'form').at);
  const first = await page.evaluate(() => window.heard.find(({ kind }) => kind === 'verdict').at);
  let turn = 0;
  /** Hands in the next size, and waits until all about it was told; ms from the change on. */
  const change = async () => {
    turn += 1;
    const share = (turn * 0.618_034) % 1;
    const text = `${(from + share * (to - from)).toFixed(1)} mm`;
    return page.evaluate(
      async ({ option, text }) => {
        const field = document.getElementById(`size-${option}`);
        const before = window.heard.length;
        const start = performance.now();
        field.value = text;
        field.dispatchEvent(new Event('change'));
        const when = async (kind) => {
          for (;;) {
            const found = window.heard.slice(before).find((one) => one.kind === kind);
            if (found) return found.at - start;
            await new Promise((go) => setTimeout(go, 1));
          }
        };
        const picture = await when('picture');
        // the frame in which it is drawn, and the next, when it stands on the screen
        await new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go)));
        const shown = performance.now() - start;
        return { glance: await when('glance'), picture, shown, verdict: await when('verdict') };
      },
      { option, text },
    );
  };
  const told = [];
  for (let i = 0; i < CHANGES; i += 1) told.push(await change());
  const saved = async (button) => {
    const times = [];
    for (let i = 0; i < 3; i += 1) {
      const start = performance.now();
      await Promise.all([page.waitForEvent('download'), page.click(button)]);
      times.push(performance.now() - start);
    }
    return median(times);
  };
  await page.evaluate(() => new Promise((go) => setTimeout(go, 3000)));
  const row = {
    design,
    'live, ms (2000)': live,
    'first verdict': first,
    'first look': median(told.map(({ glance }) => glance)),
    'picture made': median(told.map(({ picture }) => picture)),
    'picture seen (150)': median(told.map(({ shown }) => shown)),
    'full verdict (500)': median(told.map(({ verdict }) => verdict)),
    'plan A4 (3000)': await saved('[data-save=A4]'),
    'ZIP (6000)': await saved('[data-save=all]'),
  };
  const memory = [];
  const look = async (after) => {
    const [worker] = page.workers();
    const kernel = await worker.evaluate(() => self.kernelMemory.buffer.byteLength);
    const heap = await heapOfWorker(page);
    const inPage = await page.evaluate(() => {
      window.gc?.();
      return performance.memory.usedJSHeapSize;
    });
    const mb = (bytes) => Number((bytes / 2 ** 20).toFixed(1));
    memory.push({
      design,
      after,
      'kernel, MB': mb(kernel),
      "worker's heap": mb(heap),
      "page's heap": mb(inPage),
    });
  };
  if (changes > 0) await look(0);
  for (let i = 1; i <= changes; i += 1) {
    await change();
    if (i % Math.ceil(changes / 5) === 0 || i === changes) await look(i);
  }
  await page.context().close();
  return { row, memory };
}

const rows = [];
try {
  for (const tried of TRIED) {
    const { row, memory } = await measured(tried);
    rows.push(
      Object.fromEntries(
        Object.entries(row).map(([name, value]) => [
          name,
          typeof value === 'number' ? Math.round(value) : value,
        ]),
      ),
    );
    if (memory.length > 0) console.table(memory);
  }
  console.table(rows);
} finally {
  await browser.close();
  rmSync(out, { recursive: true, force: true });
}

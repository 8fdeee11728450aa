import { spawnSync } from 'node:child_process';
import process from 'node:process';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core';
import { afterAll, afterEach, inject } from 'vitest';
import { CHROMIUM } from './programs.js';

/** A page in a browser, and all that came of it. */
export interface Opened {
  readonly page: Page;
  /** Every address asked for. */
  readonly requests: readonly string[];
  /** Errors and warnings of the page; the graphics driver's words about its speed are not the page's. */
  readonly complaints: readonly string[];
}

/** Pictures in space without a graphics card; smooth edges would cost a third more, and no test looks at them. */
const SOFTWARE_PICTURES = [
  '--disable-gpu',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--webgl-antialiasing-mode=none',
] as const;

/** What a page is opened with. */
export interface HowOpened extends BrowserContextOptions {
  /** A window of its own, until its test ends or the file. */
  readonly own?: 'test' | 'file';
}

const USUAL = {
  viewport: { width: 900, height: 600 },
  reducedMotion: 'reduce',
  colorScheme: 'light',
} as const;

/** A window and what comes of what it shows. */
interface Window {
  readonly page: Page;
  /** What is opened in it from now on tells here. */
  readonly tellTo: (requests: string[], complaints: string[]) => void;
}

/** A browser, and the window that tests share in it. */
interface Running {
  readonly browser: Promise<Browser>;
  shared?: Window;
}

/** To start a browser takes as long as three pages: one for all files that one worker tests. It ends with the worker. */
const running = new Map<string, Running>();

function start(flags: readonly string[]): Running {
  // a worker is ended before its browser has cleared up: what it leaves goes with all that is made for the run
  const usual = process.env.TMPDIR;
  process.env.TMPDIR = inject('onceARun');
  const browser = chromium
    .launch({
      executablePath: whole(CHROMIUM.command![0]),
      args: ['--no-sandbox', '--disable-dev-shm-usage', ...flags],
    })
    .finally(() => {
      if (usual === undefined) delete process.env.TMPDIR;
      else process.env.TMPDIR = usual;
    });
  const one = { browser };
  running.set(flags.join(' '), one);
  return one;
}

/**
 * Opens files in a browser for the tests of a file.
 *
 * A window of its own costs a test more than all it asks of the page: tests that ask for no more than its size, light and motion
 * follow each other in one, each with the file loaded anew and nothing kept. After a test that failed it is another one.
 */
export function browser(
  flags: readonly string[] = SOFTWARE_PICTURES,
): (file: string, how?: HowOpened) => Promise<Opened> {
  const gone = { test: [] as BrowserContext[], file: [] as BrowserContext[] };
  const close = (until: 'test' | 'file') =>
    Promise.all(gone[until].splice(0).map((context) => context.close()));
  const now = () => running.get(flags.join(' '));
  afterEach(async ({ task }) => {
    await close('test');
    const one = now();
    if (!one?.shared) return;
    if (task.result?.state === 'fail') {
      await one.shared.page.context().close();
      delete one.shared;
      // a page that is left open goes on working beside the next test
    } else await leave(one.shared);
  });
  afterAll(() => close('file'));
  return async (file, { own, ...how } = {}) => {
    const one = now() ?? start(flags);
    const another = async (asked: BrowserContextOptions): Promise<Window> =>
      listenedTo(await (await one.browser).newContext({ ...USUAL, ...asked }));
    const { viewport, colorScheme, reducedMotion, ...others } = { ...USUAL, ...how };
    const alone = own !== undefined || Object.keys(others).length > 0;
    if (!alone) one.shared ??= await another({});
    const window = !alone && one.shared ? one.shared : await another(how);
    const { page } = window;
    if (alone) gone[own ?? 'test'].push(page.context());
    else {
      await leave(window);
      await page.setViewportSize(viewport!);
      await page.emulateMedia({ media: null, colorScheme, reducedMotion });
    }
    const requests: string[] = [];
    const complaints: string[] = [];
    window.tellTo(requests, complaints);
    await page.goto(`file://${file}`);
    return { page, requests, complaints };
  };
}

async function listenedTo(context: BrowserContext): Promise<Window> {
  const page = await context.newPage();
  // two browsers at work beside each other draw every pixel by the processor: slow is no fault
  page.setDefaultTimeout(100_000);
  let requests: string[] = [];
  let complaints: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    const own = !message.text().includes('GL Driver Message');
    if (own && ['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  return {
    page,
    tellTo: (...now) => {
      [requests, complaints] = now;
    },
  };
}

/** Ends what a window shows, and what it keeps for its next visit. */
async function leave({ page }: Window): Promise<void> {
  if (page.url() === 'about:blank') return;
  await page.evaluate(() => window.localStorage.clear());
  await page.mouse.move(-1, -1);
  await page.goto('about:blank');
}

/** The path of a program that is found on the path. */
export const whole = (command: string): string =>
  spawnSync('sh', ['-c', `command -v ${command}`], { encoding: 'utf8' }).stdout.trim();

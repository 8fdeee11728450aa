import { spawnSync } from 'node:child_process';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core';
import { afterAll, afterEach } from 'vitest';
import { CHROMIUM } from './programs.js';

/** A page in a browser, and all that came of it. */
export interface Opened {
  readonly page: Page;
  /** Every address asked for. */
  readonly requests: readonly string[];
  /** Errors and warnings of the page; the graphics driver's words about its speed are not the page's. */
  readonly complaints: readonly string[];
}

/** Pictures in space without a graphics card. */
const SOFTWARE_PICTURES = [
  '--disable-gpu',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
] as const;

/**
 * One browser for the tests of a file, started when the first of them asks; each page has a profile of its own.
 *
 * @param closed when its pages are closed: after each test, or after all of them, which then share one
 */
export function browser(
  flags: readonly string[] = SOFTWARE_PICTURES,
  closed: 'each' | 'all' = 'each',
): (file: string, how?: BrowserContextOptions) => Promise<Opened> {
  let started: Promise<Browser> | undefined;
  const contexts: BrowserContext[] = [];
  // a page that is left open goes on working beside the next test
  if (closed === 'each')
    afterEach(async () => {
      await Promise.all(contexts.splice(0).map((context) => context.close()));
    });
  afterAll(async () => {
    await (await started)?.close();
  });
  return async (file, how = {}) => {
    started ??= chromium.launch({
      executablePath: whole(CHROMIUM.command![0]),
      args: ['--no-sandbox', '--disable-dev-shm-usage', ...flags],
    });
    const context = await (await started).newContext({
      viewport: { width: 900, height: 600 },
      reducedMotion: 'reduce',
      colorScheme: 'light',
      ...how,
    });
    contexts.push(context);
    const page = await context.newPage();
    // two browsers at work beside each other draw every pixel by the processor: slow is no fault
    page.setDefaultTimeout(100_000);
    const requests: string[] = [];
    const complaints: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    page.on('pageerror', (error) => complaints.push(String(error)));
    page.on('console', (message) => {
      const own = !message.text().includes('GL Driver Message');
      if (own && ['error', 'warning'].includes(message.type())) complaints.push(message.text());
    });
    await page.goto(`file://${file}`);
    return { page, requests, complaints };
  };
}

/** The path of a program that is found on the path. */
export const whole = (command: string): string =>
  spawnSync('sh', ['-c', `command -v ${command}`], { encoding: 'utf8' }).stdout.trim();

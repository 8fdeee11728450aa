import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { launch, type Page } from 'puppeteer-core';
import { onTestFinished } from 'vitest';
import { whole } from './browser.js';
import { FIREFOX } from './programs.js';

/** A page in the other browser, which has no WebGL without a graphics card. */
export interface InFirefox {
  /** To be asked by `evaluate` alone: the driver's other ways make code from text, which the page forbids and complains of. */
  readonly page: Page;
  /** Errors of the page. */
  readonly complaints: readonly string[];
  /** Asks the page until it says yes: this page forbids code made from text, so it is asked from outside. */
  readonly until: (question: () => boolean) => Promise<void>;
  /** What comes of an act as a file, when it is whole. */
  readonly saved: (act: () => Promise<void>) => Promise<Uint8Array>;
}

/** A file that did not grow in so many looks is whole. */
const QUIET = 12;

/** Opens a file in Firefox, driven by the standard WebDriver BiDi; it ends with its test. */
export async function inFirefox(file: string): Promise<InFirefox> {
  const downloads = mkdtempSync(path.join(tmpdir(), 'tenonwright-firefox-'));
  const browser = await launch({
    browser: 'firefox',
    executablePath: whole(FIREFOX.command![0]),
    headless: true,
    extraPrefsFirefox: { 'browser.download.folderList': 2, 'browser.download.dir': downloads },
  });
  onTestFinished(async () => {
    await browser.close();
    rmSync(downloads, { recursive: true, force: true });
  });
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(`file://${file}`);
  return {
    page,
    complaints,
    until: async (question) => {
      while (!(await page.evaluate(question))) await pause(50);
    },
    saved: async (act) => {
      await act();
      let looks = 0;
      for (let size = 0; looks < QUIET; await pause(50)) {
        // while a file comes, another with the ending .part may stand beside it
        const [only, ...others] = readdirSync(downloads).map((name) => path.join(downloads, name));
        const now = only && others.length === 0 ? statSync(only).size : 0;
        looks = now > 0 && now === size ? looks + 1 : 0;
        size = now;
      }
      const file = path.join(downloads, readdirSync(downloads)[0]!);
      const bytes = new Uint8Array(readFileSync(file));
      rmSync(file);
      return bytes;
    },
  };
}

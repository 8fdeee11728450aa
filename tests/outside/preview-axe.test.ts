// The preview page as the rules of accessible pages see it, in every state a person can bring it to.

import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeViolations } from './axe.js';
import { browser } from './browser.js';
import { FAILED, workshop } from './designs.js';
import { CHROMIUM, testWith } from './programs.js';

const made = workshop();
const open = browser();
const openFlat = browser(['--disable-3d-apis']);

const pageFile = async () => path.join((await made(FAILED, { only: ['page'] })).folder, 'preview.html');

/** States of the page, each from the one before; what is asked for is reached by its control. */
const STATES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'as it opens': async () => {},
  'a finding flown to': (page) => page.locator('button[data-go=finding]').first().click(),
  'a board chosen, its sizes shown': (page) => page.locator('button[data-go=board]').first().click(),
  'cut and drawn apart': async (page) => {
    await page.selectOption('#axis', '1');
    await page.fill('#apart', '1');
  },
  'a step of putting it together': (page) => page.click('#after'),
  playing: (page) => page.click('#play'),
  measuring: async (page) => {
    await page.click('#play');
    await page.click('#measure');
    await page.locator('#view').click({ position: { x: 180, y: 70 } });
  },
  'its papers open': (page) =>
    page.$$eval('details', (all) => {
      for (const one of all) one.open = true;
    }),
  'by the other light': (page) => page.click('#theme'),
  'printed from there': (page) => page.emulateMedia({ media: 'print' }),
  'by this light again': async (page) => {
    await page.emulateMedia({ media: null });
    await page.click('#theme');
  },
};

async function inEveryState(page: Page, which: string): Promise<void> {
  await page.waitForSelector('html[data-ready]');
  for (const [state, reach] of Object.entries(STATES)) {
    await reach(page);
    expect(await axeViolations(page), `${which}, ${state}`).toEqual([]);
  }
}

testWith(
  CHROMIUM,
  'no rule of accessible pages is broken by day or by night, whatever is shown',
  async () => {
    const { page } = await open(await pageFile());
    await inEveryState(page, 'on a desk');
  },
);

testWith(CHROMIUM, 'nor on a phone, with larger lists or a larger picture', async () => {
  const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;
  const { page } = await open(await pageFile(), phone);
  await page.tap('#room');
  await inEveryState(page, 'on a phone');
});

testWith(CHROMIUM, 'nor where pictures in space cannot be drawn', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    const { page } = await openFlat(await pageFile(), { colorScheme });
    await page.waitForSelector('html[data-flat][data-ready]');
    expect(await axeViolations(page), colorScheme).toEqual([]);
  }
});

testWith(CHROMIUM, 'the rules find what was planted: a picture without words, a text too faint', async () => {
  const { page } = await openFlat(await pageFile());
  await page.evaluate(() => {
    document.querySelector('#verdict')!.setAttribute('style', 'color: #ddd');
    document.querySelector('#panel')!.append(document.createElement('img'));
  });
  const found = await axeViolations(page);
  expect(found.some((one) => one.startsWith('color-contrast: #verdict'))).toBe(true);
  expect(found.some((one) => one.startsWith('image-alt'))).toBe(true);
});

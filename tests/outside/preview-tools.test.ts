// What a person does with the preview beyond looking: measure, save the picture, send a link, print.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { PreviewBox, PreviewData } from '../../src/viewer/index.js';
import { browser } from './browser.js';
import { CASES, workshop } from './designs.js';
import { CHROMIUM, testWith } from './programs.js';
import { readPng } from './read-png.js';

const made = workshop();
const open = browser();

const STOOL = CASES.find(({ values }) => values.rake === '10')!;

async function opened(fragment = '') {
  const { folder } = await made(STOOL, { only: ['page'] });
  const all = await open(`${path.join(folder, 'preview.html')}${fragment}`, {
    viewport: { width: 800, height: 420 },
  });
  await all.page.waitForSelector('html[data-ready]');
  await drawn(all.page);
  return all;
}

const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

const told = (page: Page) => page.textContent('#told');

type Xyz = readonly [x: number, y: number, z: number];

/** A corner of a box: for each side whether it is the far end. */
const cornerOf = ({ corner, sides }: PreviewBox, ends: readonly [0 | 1, 0 | 1, 0 | 1]): Xyz =>
  [0, 1, 2].map((i) =>
    sides.reduce((sum, { mm, along }, s) => sum + ends[s]! * mm * along[i]!, corner[i]!),
  ) as unknown as Xyz;

/** Where a point is seen on the page, in its pixels. */
async function pixelOf(page: Page, at: Xyz) {
  const [x, y] = (await page.evaluate(`viewer.looker.stage.pixel(${JSON.stringify(at)})`)) as readonly [
    number,
    number,
  ];
  const canvas = (await page.locator('#view').boundingBox())!;
  return { x: x + canvas.x, y: y + canvas.y, inX: x, inY: y };
}

/** The two ends of the tread's upper edge that is towards the person. */
async function treadEnds(page: Page) {
  const data: PreviewData = await page.$eval('#design', (one) => JSON.parse(one.textContent ?? ''));
  const { box } = data.pieces.find(({ id }) => id === 'tread')!;
  const corners = ([0, 1] as const).flatMap((x) =>
    ([0, 1] as const).flatMap((y) => ([0, 1] as const).map((z) => cornerOf(box!, [x, y, z]))),
  );
  const top = Math.max(...corners.map(([, , z]) => z));
  const front = Math.min(...corners.map(([, y]) => y));
  const [left, right] = corners
    .filter(([, y, z]) => top - z < 0.01 && y - front < 0.01)
    .toSorted((a, b) => a[0] - b[0]) as [Xyz, Xyz];
  return { left, right, length: right[0] - left[0] };
}

testWith(
  CHROMIUM,
  'two clicks near corners measure from the one to the other, drawn apart as well',
  async () => {
    const { page, complaints } = await opened();
    const { left, right, length } = await treadEnds(page);
    await page.click('#measure');
    const clickNear = async (at: Xyz) => {
      const { x, y } = await pixelOf(page, at);
      await page.mouse.move(x + 4, y + 3);
      expect(await page.textContent('#under')).toBe('corner of tread');
      await page.mouse.click(x + 4, y + 3);
    };
    await clickNear(left);
    expect(await told(page)).toBe('From the corner of tread; now choose where to.');
    await clickNear(right);
    const words = `corner of tread to corner of tread: ${length.toFixed(1)} mm (width ${length.toFixed(1)} mm, depth 0.0 mm, height 0.0 mm)`;
    expect(await told(page)).toBe(words);
    await drawn(page);
    expect(await page.textContent('#over text')).toBe(`${length.toFixed(1)} mm`);
    // the line goes with the board
    const before = await page.getAttribute('#over .span', 'y1');
    await page.fill('#apart', '1');
    await drawn(page);
    expect(await page.getAttribute('#over .span', 'y1')).not.toBe(before);
    expect(await page.textContent('#over text')).toBe(`${length.toFixed(1)} mm`);
    await page.click('#measure');
    await drawn(page);
    expect(await page.locator('#over text').count()).toBe(0);
    expect(complaints).toEqual([]);
  },
);

testWith(CHROMIUM, 'keys measure too: arrows move a cross, Enter sets it, Escape ends', async () => {
  const { page } = await opened();
  const { left, right, length } = await treadEnds(page);
  await page.focus('#view');
  await page.keyboard.press('d');
  expect(await page.getAttribute('#measure', 'aria-pressed')).toBe('true');
  const size = (await page.locator('#view').boundingBox())!;
  let cross = { x: size.width / 2, y: size.height / 2 };
  const go = async (at: Xyz) => {
    const { inX, inY } = await pixelOf(page, at);
    const steps = { x: Math.round((inX - cross.x) / 12), y: Math.round((inY - cross.y) / 12) };
    for (let i = 0; i < Math.abs(steps.x); i += 1)
      await page.keyboard.press(steps.x < 0 ? 'ArrowLeft' : 'ArrowRight');
    for (let i = 0; i < Math.abs(steps.y); i += 1)
      await page.keyboard.press(steps.y < 0 ? 'ArrowUp' : 'ArrowDown');
    cross = { x: cross.x + 12 * steps.x, y: cross.y + 12 * steps.y };
    expect(await told(page)).toBe('At the corner of tread.');
    await page.keyboard.press('Enter');
  };
  await go(left);
  await go(right);
  expect(await told(page)).toContain(`${length.toFixed(1)} mm (width`);
  await page.keyboard.press('Escape');
  expect(await page.getAttribute('#measure', 'aria-pressed')).toBe('false');
});

testWith(
  CHROMIUM,
  'a link brings back what was seen, and asks for nothing; a stale one is refused',
  async () => {
    const { page } = await opened();
    await page.click('[data-view=right]');
    await page.fill('#apart', '0.5');
    await page.selectOption('#axis', '2');
    await page.locator('button[data-go=board]').last().click();
    await drawn(page);
    const state = (of: Page) =>
      of.evaluate(() => {
        const { eye, target, sight } = (document.querySelector('#view') as HTMLElement).dataset;
        const value = (id: string) => (document.getElementById(id) as HTMLInputElement).value;
        const chosen = document.querySelector('[aria-current] strong')?.textContent;
        return { eye, target, sight, apart: value('apart'), axis: value('axis'), chosen };
      });
    const seen = await state(page);
    expect(seen.sight).toBe('flat');
    await page.click('#view-link');
    await page.waitForFunction(() => document.querySelector('#told')?.textContent?.includes('address bar'));
    const fragment = new URL(page.url()).hash;
    const { page: again, requests, complaints } = await opened(fragment);
    expect(await state(again)).toEqual(seen);
    expect(requests).toHaveLength(1);
    expect(complaints).toEqual([]);
    const { page: stale } = await opened(fragment.replace(/revision=[^&]*/, 'revision=old'));
    expect(await told(stale)).toContain('The link was not followed: it was made for revision old');
    expect((await state(stale)).apart).toBe('0');
  },
);

testWith(
  CHROMIUM,
  'the picture is saved under a name of the design, with what is written over it',
  async () => {
    const { page, requests } = await opened();
    await page.check('#stands');
    await drawn(page);
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save')]);
    const revision = /Revision (\S+)/.exec((await page.textContent('#panel'))!)![1]!;
    expect(download.suggestedFilename()).toBe(`step-stool-${revision.replace(/boards$/i, '')}.png`);
    const picture = readPng(readFileSync(await download.path()));
    const canvas = await page.$eval('#view', (one) => {
      const { width, height } = one as HTMLCanvasElement;
      return { width, height };
    });
    expect({ width: picture.width, height: picture.height }).toEqual(canvas);
    // wood, and the red line round the feet
    expect(picture.count(([r, g, b]) => r > g && g > b && r - b > 35 && r - b < 90)).toBeGreaterThan(3000);
    expect(picture.count(([r, g, b]) => r > 140 && g < 90 && b < 60)).toBeGreaterThan(150);
    expect(requests.filter((one) => !one.startsWith('blob:') && !one.startsWith('data:'))).toHaveLength(1);
  },
);

testWith(
  CHROMIUM,
  'on paper the page is ink on white without controls, dark or light as the screen is',
  async () => {
    const { page } = await opened();
    await page.click('#theme');
    await page.emulateMedia({ media: 'print' });
    for (const id of ['bars', 'theme', 'room', 'told', 'apart', 'keys'])
      expect(await page.locator(`#${id}`).isVisible(), id).toBe(false);
    for (const words of ['Findings', 'Boards', 'Caution'])
      expect(await page.getByRole('heading', { name: words, exact: true }).isVisible(), words).toBe(true);
    const corner = () =>
      page.evaluate(() => {
        const sheet = document.createElement('canvas');
        const pen = sheet.getContext('2d')!;
        pen.drawImage(document.querySelector('#view') as HTMLCanvasElement, 0, 0);
        return [...pen.getImageData(2, 2, 1, 1).data.slice(0, 3)];
      });
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    expect(await corner()).toEqual([255, 255, 255]);
    await page.emulateMedia({ media: 'screen' });
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await drawn(page);
    expect(Math.max(...(await corner()))).toBeLessThan(60);
  },
);

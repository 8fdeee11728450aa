// The preview page where pictures in space cannot be drawn: no WebGL, no script.

import path from 'node:path';
import { expect } from 'vitest';
import { browser } from './browser.js';
import { CASES, workshop } from './designs.js';
import { CHROMIUM, testWith } from './programs.js';

const made = workshop();
const open = browser(['--disable-3d-apis']);

const pageOf = async () => {
  const result = await made(CASES.find(({ values }) => values.rake === '10')!, { only: ['page'] });
  return { result, file: path.join(result.folder, 'preview.html') };
};

testWith(CHROMIUM, 'a browser without WebGL shows the still picture, and its lists still speak', async () => {
  const { result, file } = await pageOf();
  const { page, requests } = await open(file);
  await page.waitForSelector('html[data-ready]');
  expect(await page.locator('#view').isVisible()).toBe(false);
  const still = page.locator('#still svg');
  expect(await still.isVisible()).toBe(true);
  expect((await still.boundingBox())!.width).toBeGreaterThan(300);
  expect(await page.textContent('#told')).toContain('no WebGL');
  const stretcher = result.design.boards.at(-1)!.board;
  await page.locator('button[data-go=board]').last().click();
  expect(await page.textContent('#told')).toContain(
    `${stretcher.name}; length ${stretcher.blank.length.toFixed(1)} mm`,
  );
  for (const id of ['apart', 'axis', 'views', 'keys'])
    expect(await page.locator(`#${id}`).isVisible(), id).toBe(false);
  expect(requests).toEqual([`file://${file}`]);
});

testWith(CHROMIUM, 'without a script the page still tells sizes, steps, findings and joints', async () => {
  const { result, file } = await pageOf();
  const { page, complaints } = await open(file, { javaScriptEnabled: false });
  const words = (await page.textContent('#panel'))!.replace(/\s+/g, ' ');
  for (const { board } of result.design.boards) {
    const { length, width, thickness } = board.blank;
    expect(words).toContain(board.name);
    expect(words).toContain([length, width, thickness].map((size) => `${size.toFixed(1)} mm`).join(' × '));
  }
  expect(words).toContain('Step 3');
  for (const { message } of result.findings) expect(words).toContain(message);
  expect(words).toMatch(/at the cheeks 0\.\d\d mm, at the bottom \d\.\d\d mm/);
  expect(await page.locator('#still svg').isVisible()).toBe(true);
  expect(complaints).toEqual([]);
});

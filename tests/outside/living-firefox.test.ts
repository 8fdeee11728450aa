// The living plan in a browser with another engine, which has no WebGL here: the drawn picture, and files to the last digit.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { unzipSync } from 'fflate';
import { expect } from 'vitest';
import { pageKinds } from '../../src/living/index.js';
import { CASES, workshop } from './designs.js';
import { inFirefox } from './firefox.js';
import { FIREFOX, testWith } from './programs.js';

const made = workshop();

const FRAME = CASES.find(({ called }) => called === 'frame')!;
const NARROW = { ...FRAME, called: 'narrow frame', values: { railWidth: '2-3/4 in' } };

testWith(
  FIREFOX,
  'in Firefox, from a file, sizes change the drawn picture and the verdict, and every file saved is that of the command line',
  async () => {
    const { folder } = await made(FRAME, { only: ['living'] });
    const { page, complaints, until, saved } = await inFirefox(path.join(folder, 'living-plan.html'));
    const judged = () =>
      until(() => /^(Every check passed|Passed)/.test(document.getElementById('verdict-now')!.textContent!));
    await judged();
    const still = () => page.evaluate(() => document.getElementById('still')!.innerHTML);
    const before = await still();
    expect(before).toMatch(/^<svg/);
    await page.evaluate(() => {
      const field = document.getElementById('size-rail-width') as HTMLInputElement;
      field.value = '2-3/4 in';
      field.dispatchEvent(new Event('change'));
    });
    await until(() => /^Working/.test(document.getElementById('verdict-now')!.textContent!));
    await judged();
    expect(await still()).not.toBe(before);
    const told = await made(NARROW, { only: pageKinds(false) });
    const zip = unzipSync(
      await saved(() => page.evaluate(() => document.querySelector<HTMLElement>('[data-save=all]')!.click())),
    );
    const onDisk = told.files.map(({ path: file }) => path.relative(told.folder, file));
    expect(Object.keys(zip).toSorted()).toEqual(onDisk.map((file) => `frame/${file}`).toSorted());
    const other = onDisk.filter(
      (file) => !Buffer.from(zip[`frame/${file}`]!).equals(readFileSync(path.join(told.folder, file))),
    );
    expect(other).toEqual([]);
    expect(complaints).toEqual([]);
  },
);

// The living plan where the browser has no WebGL: a picture is drawn anew for every size.

import path from 'node:path';
import { expect } from 'vitest';
import { browser } from './browser.js';
import { CASES, workshop } from './designs.js';
import { CHROMIUM, testWith } from './programs.js';

const made = workshop();
const open = browser(['--disable-3d-apis']);

testWith(
  CHROMIUM,
  'without WebGL the drawn picture follows the sizes, and so does what is told',
  async () => {
    const frame = CASES.find(({ called }) => called === 'frame')!;
    const { folder } = await made(frame, { only: ['living'] });
    const { page } = await open(path.join(folder, 'living-plan.html'));
    await page.waitForSelector('html[data-living]', { state: 'attached' });
    expect(await page.isVisible('#still svg')).toBe(true);
    const before = await page.innerHTML('#still');
    await page.fill('#size-length', '900');
    await page.press('#size-length', 'Enter');
    await page.waitForFunction(
      (was) =>
        document.getElementById('still')!.innerHTML !== was &&
        /900\.0 mm/.test(document.querySelector('[data-part=sizes]')!.textContent!),
      before,
    );
    expect(await page.textContent('#verdict-now')).toMatch(/^(Every check passed|Passed)/);
  },
);

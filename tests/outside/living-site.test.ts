// The page with every design that comes with the program: pieces are chosen in it, written in it, and made in a shop told in it.

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import type { Page } from 'playwright-core';
import { beforeAll, expect } from 'vitest';
import { axeViolations } from './axe.js';
import { browser } from './browser.js';
import { CHROMIUM, testWith } from './programs.js';

const root = path.resolve(import.meta.dirname, '../..');
const file = path.join(root, 'out/site/tenonwright.html');
const open = browser();

beforeAll(() => {
  if (!CHROMIUM.command) return;
  rmSync(file, { force: true });
  const { stderr } = spawnSync(process.execPath, ['scripts/site.mjs'], { cwd: root, encoding: 'utf8' });
  if (!existsSync(file)) throw new Error(stderr);
});

async function opened() {
  const all = await open(file, { viewport: { width: 800, height: 420 } });
  await all.page.waitForSelector('html[data-living]', { state: 'attached' });
  return all;
}

const judged = (page: Page, title: string) =>
  page.waitForFunction(
    (wanted) =>
      document.querySelector('h1')!.textContent === wanted &&
      /^(Every check passed|Passed|Failed:)/.test(document.getElementById('verdict-now')!.textContent!),
    title,
  );

/** Chooses units and types into a field with nothing in between: the engine cannot have answered by then. */
const chooseAndType = (page: Page, units: string, selector: string, text: string, event: string) =>
  page.evaluate(
    ([chosen, of, letters, told]) => {
      const input = document.querySelector<HTMLInputElement>(of)!;
      input.dataset.earlier = 'yes';
      const units = document.querySelector<HTMLSelectElement>('#units')!;
      units.value = chosen;
      units.dispatchEvent(new Event('change', { bubbles: true }));
      input.focus();
      input.value = letters;
      input.select();
      input.dispatchEvent(new Event(told, { bubbles: true }));
    },
    [units, selector, text, event] as const,
  );

const toldAnew = (page: Page, selector: string) =>
  page.waitForSelector(`${selector}:not([data-earlier])`, { state: 'attached' });

testWith(
  CHROMIUM,
  'a piece is chosen from all that come with the program, and another shop judges it anew',
  async () => {
    expect(readFileSync(file).length).toBeLessThan(2_600_000);
    const { page, complaints } = await opened();
    expect(await page.locator('#piece option').count()).toBeGreaterThan(15);
    // at once: the picture of the first piece is still to come, and must not be taken for that of this one
    await page.selectOption('#piece', 'tray');
    await judged(page, 'Seed tray with a glued-up bottom');
    const eye = () => page.getAttribute('#view', 'data-eye');
    const chosen = await eye();
    await page.click('[data-view=corner]');
    expect(await eye()).toBe(chosen);
    expect(await page.isVisible('#write')).toBe(true);
    await page.click('#shop-told > summary');
    const kerf = '[data-shop=saw-kerf] input';
    expect(await page.inputValue(kerf)).toBe('3 mm');
    await page.fill(kerf, '40');
    await page.press(kerf, 'Tab');
    // the words of the command line, at the field; a bare figure got its unit
    await page.waitForFunction(
      () =>
        document.querySelector('[data-shop=saw-kerf] .why')!.textContent ===
        'saw-kerf is 40 mm; it must be 0.5 mm to 10 mm: give less',
    );
    expect(await page.inputValue(kerf)).toBe('40 mm');
    expect(await page.getAttribute(kerf, 'aria-invalid')).toBe('true');
    // rows are added and left out, and the focus goes where the work goes on
    const lumber = page.locator('details.rows', { has: page.locator('summary', { hasText: 'lumber' }) });
    await lumber.locator('summary').press('Enter');
    const rows = await lumber.locator('fieldset').count();
    await lumber.locator('.add-row').press('Enter');
    await page.keyboard.type('wide');
    await page.keyboard.press('Tab');
    await page.waitForFunction(
      (row) => document.activeElement?.ariaLabel === `lumber ${row}, width`,
      rows + 1,
    );
    await lumber.locator('[aria-invalid]').first().waitFor();
    expect(await lumber.locator('.why:not([hidden])').allTextContents()).toContainEqual(
      expect.stringMatching(/^lumber\[2\]\.thickness cannot be read: 'wide' is not a length/),
    );
    expect(await axeViolations(page), 'a shop that is refused').toEqual([]);
    await lumber.locator('.leave-row').last().press('Enter');
    expect(await lumber.locator('fieldset').count()).toBe(rows);
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('add-row');
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-shop')]);
    expect(readFileSync(await download.path(), 'utf8')).toMatch(/^saw-kerf: 40 mm$/m);
    // in other units the form is told anew, and the person's words stay
    await chooseAndType(page, 'in', kerf, '40 mm', 'change');
    await toldAnew(page, kerf);
    expect(await page.inputValue(kerf)).toBe('40 mm');
    // handed in before the engine can have told the form: a bare figure is meant in the units just chosen
    await chooseAndType(page, 'mm', kerf, '3.2', 'change');
    await toldAnew(page, kerf);
    expect(await page.inputValue(kerf)).toBe('3.2 mm');
    await judged(page, 'Seed tray with a glued-up bottom');
    expect(await page.isVisible('[data-shop=saw-kerf] .why')).toBe(false);
    await chooseAndType(page, 'in', '#size-width', '14', 'change');
    await toldAnew(page, '#size-width');
    expect(await page.inputValue('#size-width')).toBe('14"');
    await judged(page, 'Seed tray with a glued-up bottom');
    // still being typed when the form comes: it waits
    for (const [units, field] of [
      ['mm', kerf],
      ['in', '#size-width'],
    ] as const) {
      await chooseAndType(page, units, field, '3', 'input');
      await judged(page, 'Seed tray with a glued-up bottom');
      expect(await page.inputValue(field)).toBe('3');
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      await toldAnew(page, field);
    }
    expect(await page.inputValue(kerf)).toBe('3.2 mm');
    // the same as stood there, handed in after the form has come
    await chooseAndType(page, 'mm', kerf, '3.2', 'input');
    await judged(page, 'Seed tray with a glued-up bottom');
    await page.dispatchEvent(kerf, 'change');
    await toldAnew(page, kerf);
    expect(await page.inputValue(kerf)).toBe('3.2 mm');
    // come to before the form was told anew: what is typed takes the place of what stands there, and the focus goes on
    await chooseAndType(page, 'in', kerf, '3.2 mm', 'focus');
    await toldAnew(page, kerf);
    await page.keyboard.type('1/8');
    expect(await page.inputValue(kerf)).toBe('1/8');
    await page.keyboard.press('Tab');
    expect(await page.inputValue(kerf)).toBe('1/8 in');
    const focused = () => page.evaluate(() => document.activeElement?.outerHTML.slice(0, 60));
    const next = await focused();
    expect(next).toMatch(/^<summary>/);
    await page.evaluate((of) => {
      document.querySelector<HTMLElement>(of)!.dataset.earlier = 'yes';
      const units = document.querySelector<HTMLSelectElement>('#units')!;
      units.value = 'mm';
      units.dispatchEvent(new Event('change', { bubbles: true }));
    }, kerf);
    await toldAnew(page, kerf);
    expect(await focused()).toBe(next);
    await page.click('#usual-shop');
    await judged(page, 'Seed tray with a glued-up bottom');
    // kept in the browser only when it is wished
    expect(await page.evaluate(() => window.localStorage.length)).toBe(0);
    await page.check('#keep-shop');
    expect(await page.evaluate(() => window.localStorage.length)).toBe(1);
    await page.uncheck('#keep-shop');
    expect(await page.evaluate(() => window.localStorage.length)).toBe(0);
    expect(complaints).toEqual([]);
  },
);

testWith(
  CHROMIUM,
  'a piece is written in the page: errors stand at their line, and the picture follows',
  async () => {
    const { page } = await opened();
    await page.selectOption('#piece', 'my-shelf');
    await judged(page, 'My shelf');
    const triangles = await page.getAttribute('#view', 'data-triangles');
    await page.click('#write > summary');
    const text = await page.inputValue('#text');
    const wrong = text.split('\n').findIndex((line) => line.startsWith('boards:')) + 1;
    await page.fill('#text', text.replace(/^boards:/m, 'bords:'));
    await page.waitForFunction(
      (line) => document.querySelector('#lines b')?.textContent?.trim() === String(line),
      wrong,
    );
    expect(await page.textContent('#refusal')).toContain(`my-shelf.yaml, line ${wrong}, column 1`);
    expect(await page.getAttribute('#view', 'data-triangles')).toBe(triangles);
    expect(await axeViolations(page), 'a text with an error').toEqual([]);
    await page.fill('#text', text.replace(/^title: .*$/m, 'title: A shelf for pots'));
    await judged(page, 'A shelf for pots');
    expect(await page.locator('#lines b').count()).toBe(0);
    // a link carries what was written
    await page.click('#copy-link');
    const link = await page.inputValue('#link');
    expect(link).toMatch(/&told-piece=[\w-]{200,}$/);
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-text')]);
    expect(download.suggestedFilename()).toBe('my-shelf.yaml');
    expect(readFileSync(await download.path(), 'utf8')).toContain('title: A shelf for pots');
    await page.click('#text-back');
    await judged(page, 'My shelf');
    await page.evaluate(
      (hash) => {
        window.location.hash = hash;
      },
      link.slice(link.indexOf('#')),
    );
    await judged(page, 'A shelf for pots');
    expect(await page.inputValue('#text')).toContain('title: A shelf for pots');
  },
);

testWith(
  CHROMIUM,
  'words that fit stand at the cursor of a piece that is written, and are taken by keys alone or by touch',
  async () => {
    const { page, complaints } = await opened();
    await page.selectOption('#piece', 'my-shelf');
    await judged(page, 'My shelf');
    await page.focus('#write > summary');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('text');
    const options = () => page.locator('#words [role=option] b').allTextContents();
    /** The word that a reader of the screen is sent to. */
    const active = () =>
      page.evaluate(
        () =>
          document.getElementById(document.activeElement!.getAttribute('aria-activedescendant')!)!
            .textContent,
      );
    await page.keyboard.press('Control+End');
    // a key, while it is typed
    await page.keyboard.type('us');
    expect(await options()).toEqual(['used by']);
    expect(await active()).toBe('used by who uses it');
    expect(await page.textContent('#words-told')).toBe('One word fits here.');
    await page.keyboard.press('Tab');
    await page.keyboard.type('{ ');
    await page.keyboard.press('Control+Space');
    expect(await options()).toEqual(['heaviest', 'children']);
    expect(await axeViolations(page), 'words at the cursor').toEqual([]);
    const list = (await page.locator('#words').boundingBox())!;
    const field = (await page.locator('#text').boundingBox())!;
    // below the last line, to which the text has scrolled
    expect(Math.abs(list.y - field.y - field.height)).toBeLessThan(40);
    expect(list.x).toBeGreaterThan(field.x - 1);
    expect(list.x + list.width).toBeLessThan(field.x + field.width + 1);
    await page.keyboard.press('ArrowUp');
    expect(await active()).toMatch(/^children /);
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await page.keyboard.type('90 kg }');
    expect(await page.inputValue('#text')).toMatch(/\nused by: \{ heaviest: 90 kg \}$/);
    expect(await page.isHidden('#words')).toBe(true);
    await judged(page, 'My shelf');
    expect(await page.isHidden('#refusal')).toBe(true);
    // closed, a list leaves the text and its keys as they were
    await page.keyboard.press('Enter');
    await page.keyboard.type('ab');
    await page.keyboard.press('Escape');
    expect(await page.isHidden('#words')).toBe(true);
    await page.keyboard.press('Enter');
    expect(await page.inputValue('#text')).toMatch(/\nab\n$/);
    // a finger has no Ctrl-Space
    await page.click('#words-here');
    await page.click('#words [role=option]:has-text("about")');
    expect(await page.inputValue('#text')).toMatch(/\nab\nabout: $/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('text');
    expect(complaints).toEqual([]);
  },
);

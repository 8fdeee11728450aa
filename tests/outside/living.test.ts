// The living plan in a real browser: from a file, alone, with the whole program in it.

import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { pageKinds } from '../../src/living/index.js';
import { MANY } from '../properties/seed.js';
import { axeViolations } from './axe.js';
import { browser, type Opened } from './browser.js';
import { CASES, type Case, workshop } from './designs.js';
import { CHROMIUM, testWith } from './programs.js';

const made = workshop();
const open = browser();

const FRAME = CASES.find(({ called }) => called === 'frame')!;

/** Without a graphics card every pixel costs time. */
const SMALL = { width: 800, height: 420 };

interface OpenedPlan extends Opened {
  readonly file: string;
}

/** @param change what the file holds, before it is opened */
async function opened(
  {
    fragment = '',
    change = (html: string) => html,
    pictures = false,
    ...how
  }: Parameters<typeof open>[1] & {
    readonly fragment?: string;
    readonly change?: (html: string) => string;
    /** Of the edition that saves pictures. */
    readonly pictures?: boolean;
  } = {},
  of: Case = FRAME,
): Promise<OpenedPlan> {
  const { folder } = await made(of, { only: ['living'], ...(pictures && { livingPictures: true }) });
  const whole = path.join(folder, 'living-plan.html');
  const html = readFileSync(whole, 'utf8');
  const file = change(html) === html ? whole : path.join(folder, `changed-${change.name}.html`);
  if (file !== whole) writeFileSync(file, change(html));
  const all = await open(`${file}${fragment}`, { viewport: SMALL, ...how });
  await all.page.waitForSelector('html[data-living]', { state: 'attached' });
  return { ...all, file };
}

const verdict = (page: Page) => page.locator('#verdict-now').textContent();

/** The full verdict on what is shown now, in words. */
async function judged(page: Page): Promise<string | null> {
  await page.waitForFunction(() => {
    const { textContent } = document.getElementById('verdict-now')!;
    return /^(Every check passed|Passed|Failed:|Not to be made)/.test(textContent ?? '');
  });
  return verdict(page);
}

let shared: Promise<OpenedPlan> | undefined;

/** One page for all tests that go on from the frame as it was published: to load and start it takes longer than most of them. */
async function onDesk(): Promise<OpenedPlan> {
  shared ??= opened({ own: 'file' });
  const all = await shared;
  const { page } = all;
  await page.emulateMedia({ colorScheme: 'light' });
  await page.selectOption('#units', 'mm');
  if (await page.isEnabled('#reset')) await page.click('#reset');
  await page.waitForSelector('html:not([data-ghost])', { state: 'attached' });
  expect(await judged(page)).toMatch(/^(Every check passed|Passed)/);
  return all;
}

async function type(page: Page, option: string, text: string): Promise<void> {
  await page.fill(`#size-${option}`, text);
  await page.press(`#size-${option}`, 'Enter');
}

const drag = (page: Page, option: string, to: readonly number[], letGo = true): Promise<void> =>
  page.$eval(
    `#slide-${option}`,
    (slider, { to, letGo }) => {
      for (const value of to) {
        (slider as HTMLInputElement).value = String(value);
        slider.dispatchEvent(new Event('input'));
      }
      if (letGo) slider.dispatchEvent(new Event('change'));
    },
    { to, letGo },
  );

const eye = (page: Page) => page.getAttribute('#view', 'data-eye');

async function saved(page: Page, button: string): Promise<Uint8Array> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click(button)]);
  return new Uint8Array(readFileSync(await download.path()));
}

testWith(
  CHROMIUM,
  'sizes change the piece, its verdict and what is told; the eye stays where it is',
  async () => {
    const { page, requests, complaints, file } = await onDesk();
    expect(readFileSync(file).length).toBeLessThan(2_500_000);
    await page.click('button[data-view=right]');
    const before = await eye(page);
    // every picture on the way may be dropped but the last
    await drag(page, 'length', [650, 700, 731.5]);
    expect(await page.inputValue('#size-length')).toBe('731.5 mm');
    expect(await judged(page)).toMatch(/^(Every check passed|Passed)/);
    await page.waitForFunction(() =>
      /731\.5 mm/.test(document.querySelector('[data-part=sizes]')!.textContent!),
    );
    expect(await eye(page)).toBe(before);
    await page.waitForFunction(() =>
      /parameter length: 600 mm -> 731.5 mm/.test(document.getElementById('changes')!.textContent!),
    );
    expect(await page.textContent('[data-part=boards]')).toContain('731.5 mm');
    // in inches, in any words of the trade
    await page.selectOption('#units', 'in');
    // the form is written anew in inches: a letter typed before that would be written over
    await page.waitForFunction(() =>
      (document.getElementById('size-length') as HTMLInputElement).value.endsWith('"'),
    );
    await type(page, 'length', '2\' 6-1/2"');
    await page.waitForFunction(
      () => (document.getElementById('size-length') as HTMLInputElement).value === '30-1/2"',
    );
    await page.click('#undo');
    await page.click('#undo');
    await page.waitForFunction(
      () => (document.getElementById('size-length') as HTMLInputElement).value === '731.5 mm',
    );
    await page.click('#undo');
    expect(await page.isDisabled('#undo')).toBe(true);
    await page.click('#redo');
    await page.waitForFunction(
      () => (document.getElementById('size-length') as HTMLInputElement).value === '731.5 mm',
    );
    await page.click('#reset');
    await page.waitForFunction(
      () => (document.getElementById('size-length') as HTMLInputElement).value === '600 mm',
    );
    expect(await judged(page)).toMatch(/^(Every check passed|Passed)/);
    // the page itself, and its worker made of its own bytes
    expect(requests.filter((one) => !one.startsWith('blob:'))).toEqual([`file://${file}`]);
    expect(complaints).toEqual([]);
  },
);

testWith(
  CHROMIUM,
  'a size that is refused leaves the last picture as a ghost, says why beside it, and undo brings it back',
  async () => {
    const { page } = await onDesk();
    await type(page, 'length', '9 m');
    await page.waitForSelector('html[data-ghost]', { state: 'attached' });
    expect(await page.textContent('[data-option=length] .why')).toBe(
      'length is 9000 mm; it must be 200 mm to 2400 mm: give less',
    );
    expect(await page.getAttribute('#size-length', 'aria-invalid')).toBe('true');
    expect(await verdict(page)).toBe('Not to be made like this');
    expect(await page.isDisabled('[data-save=all]')).toBe(true);
    expect(Number(await page.getAttribute('#view', 'data-triangles'))).toBeGreaterThan(100);
    await page.click('#undo');
    expect(await judged(page)).toMatch(/^(Every check passed|Passed)/);
    expect(await page.locator('html[data-ghost]').count()).toBe(0);
    // a check that fails is told, and what wood is cut from is held back until it is asked for all the same
    await type(page, 'thickness', '15');
    await type(page, 'cutter', '12');
    expect(await judged(page)).toBe('Failed: 8 errors, 4 warnings and 4 notes. Do not cut.');
    await page.click('[data-save=A4]');
    await page.waitForFunction(() =>
      /held back: plan.a4.pdf/.test(document.getElementById('save-note')!.textContent!),
    );
    await page.check('#force');
    expect((await saved(page, '[data-save=A4]')).length).toBeGreaterThan(20_000);
    await page.click('#cure');
    await page.waitForFunction(() =>
      /--thickness 18mm/.test(document.querySelector('[data-part=findings]')!.textContent!),
    );
  },
);

testWith(CHROMIUM, 'the files saved from the page are those of the command line, to the byte', async () => {
  const { page } = await onDesk();
  const settled = () => page.getAttribute('html', 'data-settled');
  const before = await settled();
  await type(page, 'rail-width', '2-3/4 in');
  await judged(page);
  // while the rest is still being told: that is told again afterwards, and the list stays
  await page.click('[data-save=list]');
  await page.waitForSelector('#single-files button');
  await expect.poll(settled, { timeout: 60_000 }).not.toBe(before);
  const { files, folder } = await made(
    { ...FRAME, called: 'frame with other rails', values: { railWidth: '2-3/4 in' } },
    { only: pageKinds(false) },
  );
  const onDisk = files.map(({ path: file }) => path.relative(folder, file));
  const zip = unzipSync(await saved(page, '[data-save=all]'));
  expect(Object.keys(zip).toSorted()).toEqual(onDisk.map((file) => `frame/${file}`).toSorted());
  expect(onDisk.length).toBeGreaterThan(15);
  for (const file of onDisk)
    expect(Buffer.from(zip[`frame/${file}`]!).equals(readFileSync(path.join(folder, file))), file).toBe(true);
  for (const paper of ['A4', 'Letter'])
    expect(
      Buffer.from(await saved(page, `[data-save=${paper}]`)).equals(
        readFileSync(path.join(folder, `plan.${paper.toLowerCase()}.pdf`)),
      ),
    ).toBe(true);
  expect(await page.locator('#single-files button').allTextContents()).toEqual(
    expect.arrayContaining(['summary.json', 'plan.a4.pdf']),
  );
  expect(await page.textContent('#single-files')).toContain(
    'run "tenonwright make frame --from frame-sizes.yaml --only pictures"',
  );
  const table = onDisk.find((file) => file.endsWith('.csv'))!;
  const one = await saved(page, `#single-files button:text-is("${table}")`);
  expect(Buffer.from(one).equals(readFileSync(path.join(folder, table)))).toBe(true);
  const yaml = new TextDecoder().decode(await saved(page, '#save-yaml'));
  expect(yaml).toBe('# tenonwright make frame --from frame-sizes.yaml\nrail-width: "2-3/4 in"\n');
});

testWith(
  CHROMIUM,
  'the edition that holds what draws pictures saves them as well, to the byte those of the command line',
  async () => {
    const { page, file, requests, complaints } = await opened({ pictures: true });
    // what draws them is as large as half the rest, and not more
    expect(readFileSync(file).length).toBeLessThan(3_900_000);
    await judged(page);
    const zip = unzipSync(await saved(page, '[data-save=all]'));
    expect(await page.textContent('#save-note')).toMatch(/^\d+ files are made\.$/);
    const { files, folder } = await made(FRAME, { only: ['pictures'] });
    const drawn = files
      .map(({ path: one }) => path.relative(folder, one))
      .filter((one) => one !== 'summary.json');
    expect(drawn.filter((one) => one.endsWith('.png'))).toHaveLength(2);
    expect(Object.keys(zip).filter((one) => one.includes('/pictures/'))).toEqual(
      drawn.map((one) => `frame/${one}`),
    );
    for (const one of drawn)
      expect(Buffer.from(zip[`frame/${one}`]!).equals(readFileSync(path.join(folder, one))), one).toBe(true);
    expect(requests.filter((one) => !one.startsWith('blob:'))).toEqual([`file://${file}`]);
    expect(complaints).toEqual([]);
  },
);

// for somebody who has just cloned every kind of file is saved above, of a smaller piece
(MANY ? testWith : () => {})(
  CHROMIUM,
  'the files of a raked stool saved after other states were shown are those of the command line, to the byte',
  async () => {
    const raked = CASES.find(({ called }) => called === 'stool of two treads at a rake of 10°')!;
    const { page, complaints } = await opened({}, raked);
    for (const [option, text] of [
      ['rake', '13.7'],
      ['height', '262.5'],
      ['rake', '7.3'],
    ] as const) {
      await type(page, option, text);
      await judged(page);
    }
    const { files, folder } = await made(
      { ...raked, called: 'stool at a rake of 7.3°', values: { rake: '7.3', height: '262.5' } },
      { only: pageKinds(false) },
    );
    const onDisk = files.map(({ path: file }) => path.relative(folder, file));
    const zip = unzipSync(await saved(page, '[data-save=all]'));
    expect(Object.keys(zip).toSorted()).toEqual(onDisk.map((file) => `stool/${file}`).toSorted());
    const other = onDisk.filter(
      (file) => !Buffer.from(zip[`stool/${file}`]!).equals(readFileSync(path.join(folder, file))),
    );
    expect(other).toEqual([]);
    expect(complaints).toEqual([]);
  },
);

testWith(
  CHROMIUM,
  'a link carries sizes with their units, and a hostile one is refused in plain words',
  async () => {
    const { page: first } = await onDesk();
    await type(first, 'length', '700');
    await first.click('#copy-link');
    const link = await first.inputValue('#link');
    expect(link).toMatch(/#design=frame&units=mm&length=700%20mm$/);
    const { page } = await opened({ fragment: link.slice(link.indexOf('#')) });
    await page.waitForFunction(
      () => (document.getElementById('size-length') as HTMLInputElement).value === '700 mm',
    );
    expect(await judged(page)).toMatch(/^(Every check passed|Passed)/);
    const hostile: readonly (readonly [string, RegExp])[] = [
      ['length=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E', /length cannot be read/],
      ['length=%E0%A4%A', /not written as links are/],
      ['__proto__=1', /no name with a value/],
      ['constructor=1', /frame has no parameter 'constructor'/],
      ['design=../../secret', /there is no design/],
      [`length=${'9'.repeat(400)}`, /300 is the limit/],
      [`length=1&${'x'.repeat(9000)}`, /8000 is the limit/],
      ['units=furlongs', /must be mm or in/],
    ];
    for (const [fragment, words] of hostile) {
      await page.evaluate((hash) => {
        window.location.hash = hash;
      }, fragment);
      await page.waitForFunction((source) => {
        const told = [...document.querySelectorAll('.refusal:not([hidden])')];
        return told.some(({ textContent }) => new RegExp(source).test(textContent!));
      }, words.source);
      expect(await page.locator('.refusal *').count()).toBe(0);
    }
    expect(await page.locator('img').count()).toBe(0);
  },
);

testWith(CHROMIUM, 'every button of the page is one that these tests press', async () => {
  const { page } = await onDesk();
  const buttons = await page.$$eval('#living-controls button', (all) =>
    all.map((one) => one.id || one.dataset.save || one.className),
  );
  expect([...new Set(buttons)].toSorted()).toEqual(
    [
      'A4',
      'Letter',
      'all',
      'copy-link',
      'cure',
      'free',
      'list',
      'redo',
      'reset',
      'save-shop',
      'save-text',
      'save-yaml',
      'text-back',
      'undo',
      'usual-shop',
      'words-here',
    ].toSorted(),
  );
});

testWith(CHROMIUM, 'the verdict stays in sight however far the panel is scrolled', async () => {
  const { page } = await onDesk();
  await page.$eval('#panel', (panel) => panel.scrollTo(0, panel.scrollHeight));
  await page.waitForFunction(() => document.getElementById('panel')!.scrollTop > 500);
  const box = (await page.locator('#verdict-now').boundingBox())!;
  expect(box.y).toBeGreaterThanOrEqual(0);
  expect(box.y).toBeLessThan(60);
  // and nothing shows above it
  const above = await page.evaluate(
    ({ x, y }) => document.elementFromPoint(x + 20, Math.max(1, y - 6))!.closest('#standing') !== null,
    box,
  );
  expect(above).toBe(true);
  await page.$eval('#panel', (panel) => panel.scrollTo(0, 0));
});

testWith(
  CHROMIUM,
  'work that takes longer than the page has patience for is stopped and said so, and the page lives on',
  async () => {
    const impatient = (html: string) => html.replace('"patience":30000', '"patience":5');
    const { page } = await opened({ change: impatient });
    await page.waitForFunction(() => /were stopped/.test(document.getElementById('refusal')!.textContent!));
    expect(await page.isEnabled('#size-length')).toBe(true);
    expect(Number(await page.getAttribute('#view', 'data-triangles'))).toBeGreaterThan(100);
    await type(page, 'length', '650');
    await page.waitForFunction(() => /were stopped/.test(document.getElementById('refusal')!.textContent!));
  },
);

testWith(
  CHROMIUM,
  'on a phone the controls stand below the picture and nothing is wider than the screen',
  async () => {
    const { page } = await opened({ viewport: { width: 390, height: 760 }, hasTouch: true, isMobile: true });
    await judged(page);
    const wide = await page.evaluate(() => ({
      page: document.documentElement.scrollWidth,
      beyond: [...document.querySelectorAll('#panel *')]
        .filter(
          (one) => one.getBoundingClientRect().right > window.innerWidth + 0.5 && !one.matches('.table *'),
        )
        .map((one) => one.outerHTML.slice(0, 80)),
    }));
    expect(wide).toEqual({ page: 390, beyond: [] });
    const stage = (await page.locator('#stage').boundingBox())!;
    const sizes = (await page.locator('#sizes-form').boundingBox())!;
    expect(sizes.y).toBeGreaterThan(stage.y + stage.height);
  },
);

testWith(CHROMIUM, 'a size is moved by keys, said by name and let go again', async () => {
  const { page, complaints } = await onDesk();
  await page.focus('#slide-length');
  await page.keyboard.press('ArrowRight');
  await page.waitForFunction(
    () => (document.getElementById('size-length') as HTMLInputElement).value === '600.5 mm',
  );
  expect(await page.getAttribute('#slide-length', 'aria-valuetext')).toBe('600.5 mm');
  expect(await judged(page)).toMatch(/^(Every check passed|Passed)/);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('back to 600 mm');
  await page.keyboard.press('Enter');
  await page.waitForFunction(
    () => (document.getElementById('size-length') as HTMLInputElement).value === '600 mm',
  );
  expect(complaints).toEqual([]);
});

testWith(
  CHROMIUM,
  'every control is reached by Tab in the order it is read, its focus is seen, and it works by keys',
  async () => {
    const { page, complaints } = await onDesk();
    const sizeIs = (text: string) =>
      page.waitForFunction(
        (value) => (document.getElementById('size-length') as HTMLInputElement).value === value,
        text,
      );
    await page.focus('#slide-length');
    await page.keyboard.press('ArrowRight');
    await sizeIs('600.5 mm');
    await judged(page);
    await page.focus('#view');
    /** Where the focus is among all controls there are, and whether it is seen. */
    const standing = () =>
      page.evaluate(() => {
        const all = [
          ...document.querySelectorAll<HTMLElement>('canvas, button, input, select, textarea, summary'),
        ].filter((one) => one.checkVisibility() && !one.matches(':disabled'));
        const now = document.activeElement as HTMLElement;
        const { outlineStyle, outlineWidth } = getComputedStyle(now);
        return {
          at: all.indexOf(now),
          count: all.length,
          seen: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1,
          name: now.id || now.outerHTML.slice(0, 60),
        };
      });
    const { count } = await standing();
    expect(count).toBeGreaterThan(50);
    for (let at = 1; at < count; at += 1) {
      await page.keyboard.press('Tab');
      expect(await standing()).toMatchObject({ at, seen: true });
    }
    // no trap at the end: it leaves the page, and comes back to its beginning
    await page.keyboard.press('Tab');
    expect((await standing()).at).toBeLessThan(1);
    await page.focus('#view');
    const to = async (control: string): Promise<void> => {
      for (let i = 0; i < count; i += 1) {
        if (await page.evaluate((one) => document.activeElement!.matches(one), control)) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`Tab does not lead to ${control}`);
    };
    const before = await eye(page);
    await page.keyboard.press('ArrowLeft');
    await page.waitForFunction((was) => document.getElementById('view')!.dataset.eye !== was, before);
    await to('#undo');
    await page.keyboard.press('Enter');
    await sizeIs('600 mm');
    await to('#redo');
    await page.keyboard.press('Space');
    await sizeIs('600.5 mm');
    await to('#reset');
    await page.keyboard.press('Enter');
    await sizeIs('600 mm');
    await to('#units');
    await page.keyboard.press('ArrowDown');
    await page.waitForFunction(
      () => !/mm/.test((document.getElementById('size-length') as HTMLInputElement).value),
    );
    await page.keyboard.press('ArrowUp');
    await sizeIs('600 mm');
    await judged(page);
    const open = await page.locator('#changed[open]').count();
    await to('#changed > summary');
    await page.keyboard.press('Enter');
    expect(await page.locator('#changed[open]').count()).toBe(1 - open);
    await to('[data-save=A4]');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect(download.suggestedFilename()).toMatch(/a4\.pdf$/);
    await to('#copy-link');
    await page.keyboard.press('Enter');
    expect(await page.inputValue('#link')).toContain('#design=frame');
    expect(complaints).toEqual([]);
  },
);

testWith(
  CHROMIUM,
  'axe finds nothing against the rules of accessible pages, by day and by night, sound, refused and failed',
  async () => {
    const { page } = await onDesk();
    if (!(await page.locator('#changed[open]').count())) await page.click('#changed > summary');
    /** The states of a page are told alike by day and by night. */
    const look = async (state: string) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await axeViolations(page), `${colorScheme}, ${state}`).toEqual([]);
      }
    };
    await look('sound');
    await type(page, 'length', '9 m');
    await page.waitForSelector('html[data-ghost]', { state: 'attached' });
    await look('refused');
    await printed(page, ['Not to be made like this', 'length is 9000 mm; it must be']);
    await page.click('#undo');
    await type(page, 'thickness', '15');
    await type(page, 'cutter', '12');
    await judged(page);
    await look('failed');
    // the sizes chosen are on the paper with their verdict, and nothing to press
    await printed(page, ['Failed: 8 errors', 'Findings']);
    expect(await page.inputValue('#size-thickness')).toBe('15 mm');
  },
);

/** What is on paper: these words, every size, no way to change one, and nothing that breaks a rule. */
async function printed(page: Page, words: readonly string[]): Promise<void> {
  await page.emulateMedia({ media: 'print' });
  for (const text of words)
    expect(
      await page.locator('#panel').getByText(text).filter({ visible: true }).count(),
      text,
    ).toBeGreaterThan(0);
  const seen = (which: string) =>
    page.$$eval(which, (all) => all.filter((one) => one.checkVisibility()).map((one) => one.id));
  expect((await seen('#sizes-form .size [id^=size-]')).length).toBe(
    await page.locator('#sizes-form .size').count(),
  );
  expect(await seen('#panel button:not(.rows button), input[type=range], input[type=checkbox]')).toEqual([]);
  expect(await axeViolations(page), 'printed').toEqual([]);
  await page.emulateMedia({ media: null });
}

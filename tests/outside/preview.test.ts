// The preview page in a real browser: it must work from a file, alone.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { PreviewData } from '../../src/viewer/index.js';
import { browser } from './browser.js';
import { CASES, type Case, FAILED, type Made, workshop } from './designs.js';
import { CHROMIUM, testWith } from './programs.js';
import { type Picture, type Rgb, readPng } from './read-png.js';
import { readStl } from './read-stl.js';

const made = workshop();
const open = browser();

const STOOL = CASES.find(({ values }) => values.rake === '10')!;

const filesOf = (of: Case): Promise<Made> => made(of, { only: ['page', 'stl'] });

async function opened(of: Case = STOOL, how: Parameters<typeof open>[1] = {}) {
  const result = await filesOf(of);
  const all = await open(path.join(result.folder, 'preview.html'), how);
  await all.page.waitForSelector('html[data-ready]');
  await drawn(all.page);
  return { ...all, result };
}

/** Pictures are drawn in the next frame. */
const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

/** Without a graphics card every pixel costs time: small where none is looked at. */
const SMALL = { width: 800, height: 360 };

/** Eye and target, whole mm. */
const where = (page: Page) =>
  page.$eval('#view', (canvas) => {
    const point = (text: string | undefined) => (text ?? '').split(' ').map(Number);
    return {
      eye: point((canvas as HTMLElement).dataset.eye),
      target: point((canvas as HTMLElement).dataset.target),
    };
  });

async function picture(page: Page): Promise<Picture> {
  await drawn(page);
  return readPng(await page.locator('#view').screenshot());
}

const dataOf = (page: Page): Promise<PreviewData> =>
  page.$eval('#design', (element) => JSON.parse(element.textContent ?? ''));

/** The colour of tenons, in any light. */
const likeTenon = ([red, green, blue]: Rgb): boolean => green > red + 18 && blue > red + 12;

/** The colour of what is chosen. */
const likeChosen = ([red, green, blue]: Rgb): boolean => red > green + 45 && green > blue - 12;

const slide = (page: Page, id: string, to: string): Promise<void> =>
  page.$eval(
    `#${id}`,
    (element, value) => {
      (element as HTMLInputElement).value = value;
      element.dispatchEvent(new Event('input'));
    },
    to,
  );

testWith(
  CHROMIUM,
  'the page asks for nothing but itself, and nothing in it complains, whatever is clicked',
  async () => {
    const { page, requests, complaints, result } = await opened(FAILED, { viewport: SMALL });
    const clicked = await page.$$eval('button', (buttons) => {
      for (const button of buttons as HTMLButtonElement[]) button.click();
      return buttons.length;
    });
    expect(clicked).toBeGreaterThan(20);
    await drawn(page);
    for (const axis of ['0', '1', '2', '']) await page.selectOption('#axis', axis);
    expect(requests).toEqual([`file://${path.join(result.folder, 'preview.html')}`]);
    expect(complaints).toEqual([]);
  },
);

testWith(CHROMIUM, 'what is drawn has the triangles of the STL file', async () => {
  for (const of of [STOOL, CASES[0]!]) {
    const { page, result } = await opened(of, { viewport: SMALL });
    const facets = readStl(readFileSync(path.join(result.folder, 'stl/assembly.mm.stl')));
    expect(await page.getAttribute('#view', 'data-triangles')).toBe(String(facets.length));
  }
});

testWith(
  CHROMIUM,
  'drawn apart, tenons come into sight between the boards; together they are gone again',
  async () => {
    const { page } = await opened();
    expect((await picture(page)).count(likeTenon)).toBe(0);
    await slide(page, 'apart', '1');
    expect((await picture(page)).count(likeTenon)).toBeGreaterThan(500);
    await slide(page, 'apart', '0');
    expect((await picture(page)).count(likeTenon)).toBe(0);
  },
);

testWith(CHROMIUM, 'a click on a finding flies to its place, marks it and tells it', async () => {
  const { page } = await opened(FAILED);
  const { findings } = await dataOf(page);
  const index = findings.findIndex(({ level, text }) => level === 'error' && /wall/.test(text));
  expect(index).toBeGreaterThanOrEqual(0);
  const before = await where(page);
  await page.locator('button[data-go=finding]').nth(index).click();
  await drawn(page);
  const { eye, target } = await where(page);
  expect(target).toEqual(findings[index]!.at.map(Math.round));
  const far = (of: { eye: number[]; target: number[] }) =>
    Math.hypot(...of.eye.map((at, i) => at - of.target[i]!));
  expect(far({ eye, target })).toBeLessThan(0.7 * far(before));
  const canvas = (await page.locator('#view').boundingBox())!;
  const mark = (await page.locator('#over .mark').first().boundingBox())!;
  expect(Math.abs(mark.x + mark.width / 2 - canvas.x - canvas.width / 2)).toBeLessThan(2);
  expect(Math.abs(mark.y + mark.height / 2 - canvas.y - canvas.height / 2)).toBeLessThan(2);
  expect(await page.textContent('#told')).toContain(findings[index]!.text);
  // the wall itself is dimensioned: its ends are where the eye flew to
  const wall = findings[index]!.gap!;
  expect(findings[index]!.text).toContain(`is ${wall.text};`);
  expect(await page.textContent('#over text')).toBe(wall.text);
  const line = (await page.locator('#over .span').boundingBox())!;
  expect(Math.hypot(line.x - mark.x - mark.width / 2, line.y - mark.y - mark.height / 2)).toBeLessThan(26);
});

testWith(CHROMIUM, 'lists and picture point at each other', async () => {
  const { page } = await opened();
  const tread = page.locator('button[data-go=board]').first();
  await tread.hover();
  expect((await picture(page)).count(likeChosen)).toBeGreaterThan(5000);
  // the middle of the picture is a board: its row is lit when it is pointed at, and chosen when it is clicked
  const { x, y, width, height } = (await page.locator('#view').boundingBox())!;
  await page.mouse.move(x + width / 2, y + height / 2);
  expect(await page.locator('button[data-go=board][data-lit]').count()).toBe(1);
  const name = await page.textContent('#under');
  await page.mouse.click(x + width / 2, y + height / 2);
  await page.mouse.move(x + 5, y + 60);
  expect(await page.textContent('button[data-go=board][aria-current] strong')).toBe(name);
  expect((await picture(page)).count(likeChosen)).toBeGreaterThan(500);
  // its three sizes stand at it in both units
  const sizes = await page.locator('#over text').allTextContents();
  expect(sizes.length).toBeGreaterThanOrEqual(2);
  for (const size of sizes) expect(size).toMatch(/^\d+\.\d mm\d*[-\d/]*"/);
});

testWith(CHROMIUM, 'a section shows the tenons in the wood, and says where it is in both units', async () => {
  const { page } = await opened();
  expect((await picture(page)).count(likeTenon)).toBe(0);
  await page.selectOption('#axis', '1');
  // half of 240 mm and the 10.4 mm a foot stands before the tread; 130.38 / 25.4 = 5.1331, and 5-1/8 is 5.1250
  expect(await page.textContent('#cut-place')).toBe('130.4 mm = 5-1/8"');
  expect((await picture(page)).count(likeTenon)).toBeGreaterThan(300);
  await page.selectOption('#axis', '');
  expect((await picture(page)).count(likeTenon)).toBe(0);
});

testWith(CHROMIUM, 'steps bring tenons into their boards, then pieces along their way', async () => {
  const { page } = await opened(STOOL, { viewport: SMALL });
  const { first, steps } = await dataOf(page);
  expect(steps.length).toBe(3);
  expect(first.flatMap(({ moving }) => moving)).toHaveLength(6);
  const told = [
    ...first.map((step, i) => ({ row: 'tenons', i, words: `Tenons ${i + 1} of 4: ${step.text}` })),
    ...steps.map((step, i) => ({ row: 'step', i, words: `Step ${i + 1} of 3: ${step.text}` })),
  ];
  for (const { row, i, words } of told) {
    await page.click('#after');
    expect(await page.textContent('#told')).toBe(words);
    const current = page.locator('[aria-current=step]');
    expect(await current.getAttribute('data-go')).toBe(row);
    expect(await current.getAttribute('data-index')).toBe(String(i));
    const seated = await page.locator('#view').screenshot();
    await slide(page, 'along', '0');
    await drawn(page);
    expect(seated.equals(await page.locator('#view').screenshot())).toBe(false);
  }
  await page.click('#after');
  expect(await page.textContent('#told')).toBe('All together.');
});

/** From now on the page's time goes only when the test asks for it. */
async function stopClock(page: Page): Promise<void> {
  await page.clock.install();
  await page.clock.pauseAt(Date.now() + 60_000);
}

testWith(
  CHROMIUM,
  'play goes through every step to the end by itself, and pauses where it is told to',
  async () => {
    const { page } = await opened(STOOL, {
      viewport: SMALL,
      reducedMotion: 'no-preference',
      own: 'test',
    });
    const { first, steps } = await dataOf(page);
    await stopClock(page);
    await page.click('#play');
    expect(await page.textContent('#play')).toBe('pause');
    await page.clock.fastForward(500);
    const along = Number(await page.inputValue('#along'));
    expect(along).toBeGreaterThan(0.05);
    expect(along).toBeLessThan(0.95);
    await page.keyboard.press('Escape');
    expect(await page.textContent('#play')).toBe('play');
    await page.click('#play');
    await page.clock.fastForward(400);
    await page.click('#play');
    const paused = await page.inputValue('#along');
    await page.clock.fastForward(5000);
    expect(await page.inputValue('#along')).toBe(paused);
    const heard: string[] = [];
    await page.click('#play');
    for (let i = 0; i < 60 && (await page.textContent('#play')) === 'pause'; i += 1) {
      const told = (await page.textContent('#told'))!;
      if (told !== heard.at(-1)) heard.push(told);
      await page.clock.fastForward(700);
    }
    expect(heard.map((told) => told.replace(/^.*?: /, ''))).toEqual(
      [...first, ...steps].map(({ text }) => text),
    );
    expect(await page.textContent('#told')).toBe('All together.');
  },
);

testWith(CHROMIUM, 'where nothing may move, play shows each step as it ends and then the next', async () => {
  const { page } = await opened(STOOL, { viewport: SMALL, own: 'test' });
  await stopClock(page);
  await page.click('#play');
  for (const count of [1, 2, 3]) {
    expect(await page.textContent('#told')).toContain(`Tenons ${count} of 4`);
    expect(await page.inputValue('#along')).toBe('1');
    await page.clock.fastForward(1900);
  }
});

testWith(
  CHROMIUM,
  'seen square to it the picture is flat: feet before and behind stand in one line; turned, it is not',
  async () => {
    const { page } = await opened(STOOL, { viewport: SMALL });
    await page.check('#stands');
    /** How tall the line round the feet is drawn, in pixels. */
    const tall = async () => {
      await drawn(page);
      return page.$eval('#over polygon.mark', (line) => {
        const heights = (line as SVGPolygonElement).points;
        const all = Array.from(heights, ({ y }) => y);
        return Math.max(...all) - Math.min(...all);
      });
    };
    for (const view of ['front', 'right', 'back']) {
      await page.click(`[data-view=${view}]`);
      expect(await tall(), view).toBeLessThan(0.11);
    }
    // the same width at the floor as at the top: what is seen from above covers its own feet
    await page.click('[data-view=front]');
    await page.click('#view', { position: { x: 1, y: 1 } });
    await page.keyboard.press('+');
    expect(await tall()).toBeLessThan(0.11);
    await page.keyboard.press('ArrowLeft');
    await drawn(page);
    await page.keyboard.press('ArrowRight');
    expect(await tall()).toBeGreaterThan(5);
    await page.click('[data-view=corner]');
    expect(await tall()).toBeGreaterThan(20);
  },
);

testWith(CHROMIUM, 'a joint that is pointed at lights up through the wood it stands in', async () => {
  const { page } = await opened();
  expect((await picture(page)).count(likeChosen)).toBe(0);
  await page.locator('button[data-go=joint]').first().hover();
  expect((await picture(page)).count(likeChosen)).toBeGreaterThan(2000);
  expect(await page.isChecked('#through')).toBe(false);
});

testWith(CHROMIUM, 'sizes go with the boards when they are drawn apart, and no two texts meet', async () => {
  const { page } = await opened();
  await page.check('#sizes');
  const sizes = async () => {
    await drawn(page);
    return page.$$eval('#over text', (all) =>
      all.map((text) => {
        const { left, right, top, bottom } = text.getBoundingClientRect();
        return { mm: text.firstChild!.textContent!, left, right, top, bottom };
      }),
    );
  };
  const whole = await sizes();
  const { box, pieces } = await dataOf(page);
  expect(whole.map(({ mm }) => mm).toSorted()).toEqual(box.sides.map(({ mmText }) => mmText).toSorted());
  await slide(page, 'apart', '1');
  const apart = await sizes();
  const ofBoards = new Set(
    pieces
      .filter(({ role }) => role === 'board')
      .flatMap((one) => one.box!.sides.map(({ mmText }) => mmText)),
  );
  expect(apart.length).toBeGreaterThan(5);
  for (const { mm } of apart) expect(ofBoards.has(mm), mm).toBe(true);
  apart.forEach((a, i) => {
    for (const b of apart.slice(i + 1)) {
      const meet = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
      expect(meet, `${a.mm} and ${b.mm}`).toBe(false);
    }
  });
});

testWith(
  CHROMIUM,
  'all of it works by keys, the focus is seen, and keys of the panel stay its own',
  async () => {
    const { page, complaints } = await opened(STOOL, { viewport: SMALL });
    const focused = () => page.evaluate(() => document.activeElement?.id ?? '');
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('view');
    expect(await page.$eval('#view', (canvas) => getComputedStyle(canvas).outlineStyle)).toBe('solid');
    const start = await where(page);
    const moved = async (key: string) => {
      await page.keyboard.press(key);
      await drawn(page);
      return where(page);
    };
    const turned = await moved('ArrowLeft');
    expect(turned.eye).not.toEqual(start.eye);
    expect(turned.target).toEqual(start.target);
    expect((await moved('Shift+ArrowUp')).target).not.toEqual(start.target);
    const top = await moved('5');
    expect(Math.hypot(top.eye[0]! - top.target[0]!, top.eye[1]! - top.target[1]!)).toBeLessThan(2);
    const near = await moved('+');
    expect(near.eye[2]!).toBeLessThan(top.eye[2]!);
    await page.keyboard.press('a');
    expect(await page.inputValue('#apart')).toBe('1');
    await page.keyboard.press('t');
    expect(await page.isChecked('#through')).toBe(true);
    await page.keyboard.press('c');
    await page.keyboard.press(']');
    expect(await page.inputValue('#axis')).toBe('0');
    expect(Number(await page.inputValue('#cut'))).toBeCloseTo(0.51, 6);
    await page.keyboard.press('.');
    expect(await page.textContent('#told')).toContain('Tenons 1');
    await page.keyboard.press(',');
    await page.keyboard.press(',');
    expect(await page.textContent('#told')).toContain('Step 3');
    await page.keyboard.press('Escape');
    expect(await page.textContent('#told')).toBe('All together.');
    // every control is reached by Tab, in the order it is read
    const reached: string[] = [];
    for (let i = 0; i < 60 && reached.at(-1) !== ''; i += 1) {
      await page.keyboard.press('Tab');
      reached.push(
        await page.evaluate(() => {
          const at = document.activeElement as HTMLElement | null;
          return at === document.body || !at
            ? ''
            : at.id || at.dataset.view || `${at.dataset.go} ${at.dataset.index}`;
        }),
      );
    }
    const expected = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('button, input, select')]
        .filter((one) => !(one as HTMLButtonElement).disabled && one.offsetParent !== null)
        .map((one) => one.id || one.dataset.view || `${one.dataset.go} ${one.dataset.index}`),
    );
    expect(reached.slice(0, expected.length)).toEqual(expected);
    // an arrow key on a slider moves the slider, not the picture
    await page.focus('#apart');
    const still = await where(page);
    await page.keyboard.press('ArrowLeft');
    await drawn(page);
    expect(await page.inputValue('#apart')).not.toBe('1');
    expect(await where(page)).toEqual(still);
    expect(complaints).toEqual([]);
  },
);

testWith(
  CHROMIUM,
  'on a phone nothing is wider than the screen, the picture stays in sight, and a tap chooses',
  async () => {
    const { page } = await opened(CASES.at(-1)!, {
      viewport: { width: 360, height: 740 },
      hasTouch: true,
      isMobile: true,
    });
    const overflow = await page.evaluate(() => ({
      page: document.documentElement.scrollWidth,
      wide: [...document.querySelectorAll('#panel *')].filter(
        // a wide table scrolls in a box of its own
        (one) => one.getBoundingClientRect().right > window.innerWidth + 0.5 && !one.matches('.table *'),
      ).length,
      seen: window.innerWidth,
    }));
    expect(overflow).toEqual({ page: 360, wide: 0, seen: 360 });
    const small = await page.$$eval(
      '#panel button',
      (all) => all.filter((one) => one.getBoundingClientRect().height < 43.5).length,
    );
    expect(small).toBe(0);
    await page.locator('button[data-go=board]').last().tap();
    await drawn(page);
    const box = (await page.locator('#view').boundingBox())!;
    expect(box.y).toBeGreaterThan(-1);
    expect(box.height).toBeGreaterThan(300);
    expect((await picture(page)).count(likeChosen)).toBeGreaterThan(500);
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    expect(await page.locator('button[data-go=board][aria-current]').count()).toBe(1);
  },
);

testWith(CHROMIUM, 'by day and by night every text stands out from its ground', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    const { page } = await opened(STOOL, { colorScheme, viewport: SMALL });
    expect(await page.getAttribute('html', 'data-theme')).toBe(colorScheme);
    const colours = await page.evaluate(() => {
      const look = getComputedStyle(document.documentElement);
      return Object.fromEntries(
        ['paper', 'sheet', 'ink', 'soft', 'mark'].map((name) => [name, look.getPropertyValue(`--${name}`)]),
      );
    });
    for (const text of ['ink', 'soft', 'mark']) {
      // WCAG 2.2, success criterion 1.4.3: 4.5 : 1
      expect(contrast(colours[text]!, colours.sheet!), `${colorScheme}: ${text}`).toBeGreaterThan(4.5);
    }
    expect(contrast(colours.ink!, colours.paper!), colorScheme).toBeGreaterThan(4.5);
  }
});

/** WCAG 2.2: relative luminance and contrast ratio. */
function contrast(one: string, other: string): number {
  const luminance = (colour: string): number => {
    const [red, green, blue] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(colour.trim().slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

testWith(CHROMIUM, 'a screen reader finds regions, headings and a name for every control', async () => {
  const { page, result } = await opened(STOOL, { viewport: SMALL });
  const read = await page.locator('body').ariaSnapshot();
  for (const line of [
    '- main:',
    '- region "Picture":',
    '- region "About the piece":',
    `- heading "${result.design.title}" [level=1]`,
    '- heading "Findings" [level=2]',
    '- slider "drawn apart"',
    '- combobox "section plane"',
    '- checkbox "see through boards"',
    '- status',
  ]) {
    expect(read).toContain(line);
  }
  expect(read).toContain(`application "${result.design.title} as solids.`);
  for (const { board } of result.design.boards) expect(read).toContain(`button "${board.name} `);
  expect(read).not.toMatch(/- (button|slider|combobox|checkbox)( \[|:|$)/m);
});

testWith(
  CHROMIUM,
  'a key brings the eye nearer and another as far away again, straight towards its target',
  async () => {
    const { page } = await opened(STOOL, { viewport: SMALL });
    const away = async () => {
      await drawn(page);
      const { eye, target } = await where(page);
      return eye.map((at, i) => at - target[i]!);
    };
    const before = await away();
    await page.keyboard.press('+');
    const near = await away();
    await page.keyboard.press('-');
    const after = await away();
    before.forEach((at, i) => {
      // the eye is told in whole mm
      expect(Math.abs(near[i]! - 0.85 * at)).toBeLessThan(2);
      expect(Math.abs(after[i]! - at)).toBeLessThan(2);
    });
  },
);

import { expect, test } from 'vitest';
import type { Sheet, SheetEntity, Stroke } from '../../src/drawing/index.js';
import { pageOf } from '../../src/drawing/sheet/page.js';
import { withBody } from '../../src/drawing/sheet/shared-body.js';
import { pdf } from '../../src/files/plan/pdf.js';
import { SUPPLIES } from '../../src/node/supplies.js';

const words = (text: string, y: number, bold = false): Stroke => ({
  kind: 'text',
  at: [30, y],
  text,
  height: 3.5,
  anchor: 'start',
  rotationDeg: 0,
  bold,
});

const body = (): readonly SheetEntity[] => [
  words('Cut the tread', 200),
  { kind: 'line', line: 'visible', from: [30, 190], to: [90, 190] },
  words('and mark it', 180, true),
];

const laid = pageOf('A4', 'portrait');

/** A page of its own words, and one that shows a body below its own number. */
function plan(paper: 'A4' | 'Letter', cover: string, shown: readonly SheetEntity[]): readonly Sheet[] {
  const page = pageOf(paper, 'portrait');
  const { width, height } = page;
  return [
    { id: 'cover', title: 'Cover', width, height, scale: undefined, entities: [words(cover, 100)] },
    Object.assign(withBody(shown, laid, page, [words('2/2', 20)]), {
      id: 'work',
      title: 'Work',
      width,
      height,
      scale: undefined,
    }),
  ];
}

const file = async (paper: 'A4' | 'Letter', cover: string, shown: readonly SheetEntity[]) =>
  Buffer.from(
    await pdf(plan(paper, cover, shown), { title: 'Potting shed', fonts: await SUPPLIES.planFonts() }),
  ).toString('latin1');

test('a page is the same whether its body was drawn for another paper before or not', async () => {
  const both = body();
  await file('A4', 'Shed', both);
  expect(await file('Letter', 'Shed', both)).toBe(await file('Letter', 'Shed', body()));
});

test('a file that numbered other letters before draws a body anew', async () => {
  const both = body();
  await file('A4', 'hotbed mark', both);
  expect(await file('Letter', 'dram', both)).toBe(await file('Letter', 'dram', body()));
});

test('a body is told where it stands on the sheet, on either paper', () => {
  const [a4, letter] = (['A4', 'Letter'] as const).map((paper) => plan(paper, 'Shed', body())[1]!);
  const at = (sheet: Sheet) => sheet.entities.flatMap((one) => (one.kind === 'text' ? [one.at] : []));
  expect(at(a4!)[0]).toEqual([30, 200]);
  expect(at(letter!)[0]![0]).toBeCloseTo(30 + (215.9 - 210) / 2, 9);
  expect(at(letter!)[0]![1]).toBeCloseTo(200 + (279.4 - 297) / 2, 9);
});

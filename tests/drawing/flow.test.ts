import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FlowBlock, flow } from '../../src/drawing/flow/index.js';
import { type Box, boxesOverlap, strokesOf, textBox, textWidth } from '../../src/drawing/index.js';
import { wrappedTable } from '../../src/drawing/sheet/wrapped-table.js';
import { wrappedText } from '../../src/drawing/sheet/wrapped-text.js';
import { cautions, heading, list, paragraph, table } from '../../src/shop/index.js';

const area: Box = { minX: 14, minY: 39, maxX: 196, maxY: 265 };

const word = fc.stringMatching(/^[a-z0-9"/°×-]{1,40}$/);
const sentence = fc.array(word, { minLength: 1, maxLength: 40 }).map((words) => words.join(' '));

test('for all texts and widths no row is wider than asked, and nothing is lost or added', () => {
  fc.assert(
    fc.property(sentence, fc.integer({ min: 10, max: 180 }), (text, width) => {
      const rows = wrappedText(text, width);
      for (const row of rows) if (row.length > 1) expect(textWidth(row, 2.2)).toBeLessThanOrEqual(width);
      expect(rows.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
    }),
  );
});

test('for all tables the columns fit the room and every cell is whole', () => {
  const rows = fc.array(fc.tuple(sentence, word, sentence), { minLength: 2, maxLength: 8 });
  fc.assert(
    fc.property(rows, (cells) => {
      const table = wrappedTable(cells, 182);
      expect(table.widths.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(182 + 1e-6);
      const said = table.rows.map(({ lines }) => lines.map((line) => line.join('').replaceAll(' ', '')));
      expect(said).toEqual(cells.map((row) => row.map((cell) => cell.replaceAll(' ', ''))));
    }),
  );
});

test('a column in which nothing is said is left out', () => {
  const { rows, widths } = wrappedTable(
    [
      ['mark', 'hand', 'name'],
      ['T', '', 'tread'],
    ],
    100,
  );
  expect(widths).toHaveLength(2);
  expect(rows.map(({ cells }) => cells)).toEqual([
    ['mark', 'name'],
    ['T', 'tread'],
  ]);
});

test('for all papers every text stands inside its area and no two texts share room', () => {
  const block: fc.Arbitrary<FlowBlock> = fc.oneof(
    sentence.map(paragraph),
    fc.array(sentence, { minLength: 1, maxLength: 4 }).map(list),
    fc.array(sentence, { minLength: 1, maxLength: 4 }).map(cautions),
    word.map((text) => heading(text)),
    fc
      .array(fc.tuple(sentence, sentence), { minLength: 2, maxLength: 30 })
      .map((rows) => table(['what', 'how'], rows)),
  );
  fc.assert(
    fc.property(fc.array(block, { minLength: 1, maxLength: 25 }), (blocks) => {
      for (const page of flow(blocks, area).pages) {
        const boxes = strokesOf(page).flatMap((one) => (one.kind === 'text' ? [textBox(one)] : []));
        for (const { minX, minY, maxX, maxY } of boxes) {
          expect(minX).toBeGreaterThanOrEqual(area.minX - 1e-6);
          expect(maxX).toBeLessThanOrEqual(area.maxX + 1e-6);
          expect(maxY).toBeLessThanOrEqual(area.maxY + 0.5);
          expect(minY).toBeGreaterThanOrEqual(area.minY - 1);
        }
        boxes.forEach((one, i) => {
          expect(boxes.slice(i + 1).some((other) => boxesOverlap(one, other))).toBe(false);
        });
      }
    }),
    { numRuns: 60 },
  );
});

test('a table that runs on has its head on every page and every row once', () => {
  const rows = Array.from({ length: 120 }, (_, i) => [`r${i}`, 'cut']);
  const { pages } = flow([table(['no.', 'what'], rows)], area);
  expect(pages.length).toBeGreaterThan(2);
  const tables = pages.flatMap((page) => page.flatMap((one) => (one.kind === 'table' ? [one] : [])));
  expect(tables.every((table) => table.rows[0]!.join() === 'no.,what')).toBe(true);
  expect(tables.flatMap((table) => table.rows.slice(1).map((row) => row[0]))).toEqual(
    rows.map((row) => row[0]),
  );
});

test('a heading never stands alone at the foot of a page', () => {
  const blocks = Array.from({ length: 40 }, (_, i) => [
    heading(`part ${i}`),
    paragraph('word '.repeat(60).trim()),
  ]);
  const { pages, headings } = flow(blocks.flat(), area);
  expect(headings).toHaveLength(40);
  for (const page of pages) {
    const last = strokesOf(page).findLast((one) => one.kind === 'text');
    expect(last).toMatchObject({ height: 2.2 });
  }
});

test('a line that leads to a figure, and a heading before it, go to the next page with the figure', () => {
  const figure: FlowBlock = { kind: 'drawn', said: '', width: 20, height: 60, draw: () => [] };
  const filled = Array.from({ length: 34 }, () => paragraph('full'));
  const { pages } = flow([...filled, heading('layout'), paragraph('piece 1 of 3'), figure], area);
  const words = pages.map((page) => page.flatMap((one) => (one.kind === 'text' ? [one.text] : [])));
  expect(words[0]!.every((text) => text === 'full')).toBe(true);
  expect(words[1]).toEqual(['layout', 'piece 1 of 3']);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { markdown } from '../../src/files/index.js';
import { type Block, cautions, heading, list, paragraph, strong, table } from '../../src/shop/index.js';

/** Inside a line these mean something to CommonMark or to GitHub's tables and strikethrough. */
const SIGNS = /[\\`*_[\]<>|~#]/;

/** Any ASCII punctuation may stand behind a backslash, which then means nothing (CommonMark 0.31, 2.4). */
const read = (line: string): string => line.replace(/\\([!-/:-@[-`{-~])/g, '$1');

/** The text of a line with every sign behind its backslash taken out. */
const bare = (line: string): string => line.replace(/\\[!-/:-@[-`{-~]/g, '');

const outside = fc.oneof(
  fc.string({ unit: 'grapheme-ascii', maxLength: 40 }),
  fc.string({ unit: fc.constantFrom(...'\\`*_[]()<>|~#+-=.!&;:/@a1 \n'), maxLength: 20 }),
);

const spaced = (text: string): string => text.replace(/\s+/g, ' ').trim();

test('for all texts from outside a paragraph, a heading and a cell read as they were given, and nothing in them is a sign', () => {
  fc.assert(
    fc.property(outside, (text) => {
      for (const line of markdown([paragraph(text)]).split('\n')) {
        expect(bare(line)).not.toMatch(SIGNS);
        expect(line).not.toMatch(/^(?:[-+=]|\d{1,9}[.)](?: |$))/);
      }
      expect(read(markdown([paragraph(text)]).trimEnd())).toBe(spaced(text));
      expect(read(markdown([heading(text)]).trimEnd())).toBe(`## ${spaced(text)}`.trimEnd());
      const cell = markdown([table(['a'], [[text]])]).split('\n')[2]!;
      expect(cell.startsWith('| ') && cell.endsWith(' |')).toBe(true);
      expect(bare(cell.slice(1, -1))).not.toContain('|');
      expect(read(cell.slice(2, -2))).toBe(spaced(text));
    }),
    { numRuns: 2000 },
  );
});

test('a name cannot smuggle in a picture, a link, a tag, an entity or a new cell', () => {
  const name = 'Ash ![x](https://e.example/x.png) <img src=x> &lt; www.e.example a@e.example | cell';
  expect(markdown([paragraph(name)])).toBe(
    'Ash !\\[x\\](https\\://e.example/x.png) \\<img src=x\\> \\&lt; www\\.e.example a\\@e.example \\| cell\n',
  );
});

test('each kind of block is written in its own way, and strong words stand out in cells and in rows of text', () => {
  const blocks: readonly Block[] = [
    heading('Plan', 1),
    paragraph('Text.'),
    paragraph(strong('Stop.')),
    table(['a', 'b'], [['x', strong('bad')]]),
    list(['item', '- dashed']),
    cautions(['Pull the plug.']),
    { kind: 'new page' },
    { kind: 'figure', figure: { of: 'card', card: 'S1' } },
  ];
  expect(markdown(blocks)).toBe(
    '# Plan\n\nText.\n\n**Stop.**\n\n| a | b |\n| --- | --- |\n| x | **bad** |\n\n- item\n- \\- dashed\n\n**Caution**\n\n- Pull the plug.\n',
  );
});

test('a kind of block that no writer knows is an error of types', () => {
  // @ts-expect-error there is no such kind, and every writer's switch ends in `satisfies never`
  const unknown: Block = { kind: 'sidebar', text: '' };
  expect(unknown.kind).toBe('sidebar');
});

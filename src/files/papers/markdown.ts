import { type BarRow, type Block, shareWords, type Words, wordsOf } from '../../shop/index.js';

/** A paper as GitHub-flavoured Markdown. Figures are left out: the plan holds them. */
export const markdown = (blocks: readonly Block[]): string =>
  `${blocks
    .map(blockLines)
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;

function blockLines(block: Block): readonly string[] {
  switch (block.kind) {
    case 'heading':
      return [`${'#'.repeat(block.level)} ${inline(block.text)}`];
    case 'paragraph':
      return [line(block.text)];
    case 'list':
      return block.items.map((item) => `- ${line(item)}`);
    case 'cautions':
      return ['**Caution**', '', ...block.items.map((item) => `- ${line(item)}`)];
    case 'table':
      return [row(block.head), row(block.head.map(() => '---')), ...block.rows.map(row)];
    case 'bars':
      return [row(BARS), row(BARS.map(() => '---')), ...block.rows.map((one) => row(barCells(one)))];
    case 'figure':
    case 'new page':
      return [];
    default:
      return block satisfies never;
  }
}

const BARS = ['what', 'figure', 'limit', 'of the limit'];

/** A bar of ten signs. */
function barCells(bar: BarRow): readonly string[] {
  const full = Math.max(0, Math.min(10, Math.round(10 * bar.share)));
  return [bar.label, bar.figure, bar.limit, `${'█'.repeat(full)}${'░'.repeat(10 - full)} ${shareWords(bar)}`];
}

const row = (cells: readonly Words[]): string => `| ${cells.map(inline).join(' | ')} |`;

/** Text at the start of a line, where a few signs would begin a block of another kind. */
const line = (text: Words): string =>
  inline(text).replace(/^(?:[-+=]|\d{1,9}[.)](?= |$))/, (sign) => `${sign.slice(0, -1)}\\${sign.slice(-1)}`);

const inline = (text: Words): string =>
  typeof text === 'string' || text.strong === '' ? escaped(wordsOf(text)) : `**${escaped(text.strong)}**`;

/**
 * Text that reads in Markdown as it was given: nothing in it becomes emphasis, code, a link, an image, HTML, an entity, a new
 * cell or a new line. Signs that mean nothing where they stand stay bare, so that the file is pleasant to read as it is.
 */
const escaped = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[\\`*_[\]<>|~#]|&(?=#?\w+;)|:(?=\/\/)|(?<=www)\.|@/gi, '\\$&');

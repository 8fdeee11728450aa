import { type BarRow, type Block, shareWords, type Words, wordsOf } from '../../shop/index.js';
import { svgText } from '../svg/index.js';

/**
 * A paper as elements of a page, its text escaped. Figures are left out: the plan holds them.
 *
 * @param level of the element a heading of the first level becomes: 3 makes it `h3`
 */
export const html = (blocks: readonly Block[], level: 1 | 2 | 3 | 4 = 1): string =>
  blocks.map((block) => element(block, level)).join('\n');

function element(block: Block, level: number): string {
  switch (block.kind) {
    case 'heading': {
      const tag = `h${level - 1 + block.level}`;
      return `<${tag}>${svgText(block.text)}</${tag}>`;
    }
    case 'paragraph':
      return `<p>${words(block.text)}</p>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${words(item)}</li>`).join('')}</ul>`;
    case 'cautions':
      return `<p><strong>Caution</strong></p>\n<ul class="cautions">${block.items.map((item) => `<li>${words(item)}</li>`).join('')}</ul>`;
    case 'table':
      return `<div class="table"><table><thead>${row(block.head, 'th')}</thead><tbody>${block.rows.map((cells) => row(cells, 'td')).join('')}</tbody></table></div>`;
    case 'bars':
      return `<div class="table"><table class="bars"><tbody>${block.rows.map(bar).join('')}</tbody></table></div>`;
    case 'figure':
    case 'new page':
      return '';
    default:
      return block satisfies never;
  }
}

const bar = (one: BarRow): string =>
  `<tr><td>${svgText(one.label)}<br><span class="soft">${svgText(one.figure)}; ${svgText(one.limit)}</span></td><td><meter min="0" max="1" high="0.999" value="${Math.min(1, one.share).toFixed(3)}"></meter> ${shareWords(one)}</td></tr>`;

const row = (cells: readonly Words[], tag: 'th' | 'td'): string =>
  `<tr>${cells.map((cell) => `<${tag}>${words(cell)}</${tag}>`).join('')}</tr>`;

const words = (text: Words): string =>
  typeof text === 'string' ? svgText(text) : `<strong>${svgText(wordsOf(text))}</strong>`;

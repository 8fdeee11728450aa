import type { Block } from './flow-block.js';

/**
 * A paper written as Markdown, as the blocks of a page: headings, rows of text, lists and tables. So a plan says word for
 * word what the paper says.
 */
export function blocksOf(markdown: string): readonly Block[] {
  const blocks: Block[] = [];
  let rows: string[][] = [];
  const closeTable = () => {
    if (rows.length > 0) blocks.push({ kind: 'table', rows });
    rows = [];
  };
  for (const line of markdown.split('\n')) {
    if (line.startsWith('|')) {
      const cells = line
        .slice(1, -1)
        .split(/(?<!\\)\|/)
        .map((cell) => cell.trim().replaceAll('\\|', '|'));
      if (!cells.every((cell) => /^-+$/.test(cell))) rows.push(cells);
      continue;
    }
    closeTable();
    if (line.startsWith('# ')) blocks.push({ kind: 'heading', text: line.slice(2), level: 1 });
    else if (line.startsWith('## ')) blocks.push({ kind: 'heading', text: line.slice(3), level: 2 });
    else if (line.startsWith('- ')) blocks.push({ kind: 'bullet', text: line.slice(2) });
    else if (line.trim() !== '') blocks.push({ kind: 'paragraph', text: line });
  }
  closeTable();
  return blocks;
}

/** Blocks parted at their second headings: what stands before the first, then each heading with what follows it. */
export function sectionsOf(
  blocks: readonly Block[],
): readonly { readonly heading: string | undefined; readonly blocks: readonly Block[] }[] {
  const sections: { heading: string | undefined; blocks: Block[] }[] = [{ heading: undefined, blocks: [] }];
  for (const block of blocks) {
    if (block.kind === 'heading' && block.level === 2)
      sections.push({ heading: block.text, blocks: [block] });
    else sections.at(-1)!.blocks.push(block);
  }
  return sections.filter((one) => one.blocks.length > 0);
}

/** A Markdown table as lines; a stroke in a cell is written so that it stays one. */
export const table = (heads: readonly string[], rows: readonly (readonly string[])[]): readonly string[] => [
  row(heads),
  row(heads.map(() => '---')),
  ...rows.map(row),
];

const row = (cells: readonly string[]): string =>
  `| ${cells.map((cell) => cell.replaceAll('|', '\\|').replaceAll('\n', ' ')).join(' | ')} |`;

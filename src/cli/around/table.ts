/** No column is made narrower than this, characters. */
const NARROWEST = 10;

const GAP = '  ';

/**
 * Rows in aligned columns, cells wrapped at words so that lines fit the width.
 *
 * @param width characters; the widest columns give way first
 * @returns lines without blanks at their ends, each ended with a newline
 */
export function table(rows: readonly (readonly string[])[], width: number): string {
  const widths = columnWidths(rows, width);
  return rows
    .flatMap((row) => {
      const cells = row.map((cell, column) => wrap(cell, widths[column]!));
      const height = Math.max(...cells.map((cell) => cell.length));
      return Array.from({ length: height }, (_, line) =>
        cells.map((cell, column) => padded(cell[line] ?? '', widths[column]!)).join(GAP),
      );
    })
    .map((line) => `${line.trimEnd()}\n`)
    .join('');
}

function columnWidths(rows: readonly (readonly string[])[], width: number): readonly number[] {
  const count = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: count }, (_, column) =>
    Math.max(...rows.map((row) => lengthOf(row[column] ?? ''))),
  );
  const room = width - GAP.length * (count - 1);
  while (widths.reduce((sum, one) => sum + one, 0) > room) {
    const widest = widths.indexOf(Math.max(...widths));
    if (widths[widest]! <= NARROWEST) break;
    widths[widest] = widths[widest]! - 1;
  }
  return widths;
}

/** Breaks a text at blanks; a word longer than a line is broken where the line ends. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    let rest = [...word];
    if (line !== '' && lengthOf(line) + 1 + rest.length <= width) {
      line += ` ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    for (; rest.length > width; rest = rest.slice(width)) lines.push(rest.slice(0, width).join(''));
    line = rest.join('');
  }
  return [...lines, line];
}

const lengthOf = (text: string): number => [...text].length;

const padded = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - lengthOf(text)));

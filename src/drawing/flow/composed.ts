import { BODY, drawnTable, letters, wrappedTable, wrappedText } from '../sheet/index.js';
import { type DrawnFigure, type FlowBlock, told } from './drawn-figure.js';
import { LEADING } from './set-text.js';

/** A drawing with words above it: a strong row, and others. */
export function withCaption(figure: DrawnFigure, strong: string, rows: readonly string[]): DrawnFigure {
  const width = Math.max(figure.width, 60);
  const lines = rows.flatMap((row) => wrappedText(row, width));
  const height = figure.height + (lines.length + 1) * LEADING + 2;
  return {
    kind: 'drawn',
    said: `${[strong, ...rows].join('; ')}. ${figure.said}`,
    width,
    height,
    draw: ([x, y]) => [
      letters([x, y + height - BODY - 0.5], strong, { height: BODY, bold: true }),
      ...lines.map((line, i) =>
        letters([x, y + height - BODY - 0.5 - (i + 1) * LEADING], line, { height: BODY }),
      ),
      ...figure.draw([x + (width - figure.width) / 2, y]),
    ],
  };
}

const GAP = 3;

/** The first drawing of some blocks with the table that follows it on its right. */
export function besideTable(blocks: readonly FlowBlock[], room: number): readonly FlowBlock[] {
  const at = blocks.findIndex((block, i) => block.kind === 'drawn' && blocks[i + 1]?.kind === 'table');
  const [figure, table] = [blocks[at], blocks[at + 1]];
  if (figure?.kind !== 'drawn' || table?.kind !== 'table') return blocks;
  const { rows, widths } = wrappedTable([table.head, ...table.rows], room - figure.width - GAP);
  const tall = rows.reduce((sum, row) => sum + row.height, 0);
  const height = Math.max(tall, figure.height);
  const both: DrawnFigure = {
    kind: 'drawn',
    said: figure.said,
    width: room,
    height,
    draw: ([x, y]) => [
      ...told(figure, [x, y + height - figure.height]),
      drawnTable([x + figure.width + GAP, y + height], rows, widths),
    ],
  };
  return [...blocks.slice(0, at), both, ...blocks.slice(at + 2)];
}

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

/**
 * The first drawing of some blocks on the right, with another one below it, and the tables that follow it on the left.
 *
 * @param under the other drawing, no wider than a room
 */
export function besideTables(
  blocks: readonly FlowBlock[],
  room: number,
  under?: (room: number) => DrawnFigure,
): readonly FlowBlock[] {
  const at = blocks.findIndex((block, i) => block.kind === 'drawn' && blocks[i + 1]?.kind === 'table');
  const figure = blocks[at];
  if (figure?.kind !== 'drawn') return blocks;
  const end = blocks.findIndex(({ kind }, i) => i > at && kind !== 'table');
  const following = blocks.slice(at + 1, end < 0 ? undefined : end);
  const second = under?.(FIGURES);
  const side = Math.max(figure.width, second?.width ?? 0);
  const tables = following.flatMap((block) =>
    block.kind === 'table' ? [wrappedTable([block.head, ...block.rows], room - side - GAP)] : [],
  );
  const tall = tables.map(({ rows }) => rows.reduce((sum, row) => sum + row.height, 0));
  const left = tall.reduce((sum, one) => sum + one + GAP, -GAP);
  const height = Math.max(left, figure.height + (second ? GAP + second.height : 0));
  const both: DrawnFigure = {
    kind: 'drawn',
    said: figure.said,
    width: room,
    height,
    draw: ([x, y]) => {
      const top = y + height;
      const middle = x + room - side / 2;
      return [
        ...told(figure, [middle - figure.width / 2, top - figure.height]),
        ...(second
          ? told(second, [middle - second.width / 2, top - figure.height - GAP - second.height])
          : []),
        ...tables.map(({ rows, widths }, i) => {
          const above = tall.slice(0, i).reduce((sum, one) => sum + one + GAP, 0);
          return drawnTable([x, top - above], rows, widths);
        }),
      ];
    },
  };
  return [...blocks.slice(0, at), both, ...(end < 0 ? [] : blocks.slice(end))];
}

/** The most a drawing beside tables takes of a page's width, mm. */
const FIGURES = 70;

import { type DrawnFigure, told } from './drawn-figure.js';

const APART = 8;

/** Figures side by side, as many in a row as fit, their feet on one line. */
export function figureRows(
  figures: readonly DrawnFigure[],
  room: number,
  gap = APART,
): readonly DrawnFigure[] {
  const rows: DrawnFigure[][] = [];
  for (const figure of figures) {
    const last = rows.at(-1);
    const used = last?.reduce((sum, one) => sum + one.width + gap, 0) ?? 0;
    if (last && used + figure.width <= room) last.push(figure);
    else rows.push([figure]);
  }
  return rows.map((row) => ({
    kind: 'drawn',
    said: row.map(({ said }) => said).join(' '),
    width: row.reduce((sum, one) => sum + one.width, (row.length - 1) * gap),
    height: Math.max(...row.map((one) => one.height)),
    draw: ([x, y]) => {
      let left = x;
      return row.flatMap((figure) => {
        const drawn = told(figure, [left, y]);
        left += figure.width + gap;
        return drawn;
      });
    },
  }));
}

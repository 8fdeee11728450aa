import type { Vec2 } from '../../frame/index.js';
import { type BarRow, shareWords } from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { BODY, letters, path, wrappedText } from '../sheet/index.js';

/** Length and height of a full bar, and room for the words behind it, mm. */
const BAR: Vec2 = [50, 3];
const BEHIND = 16;

const LEADING = 3.5;

/** A row of a paper's bars, as wide as the page: what it is and its figures on the left, how much of the limit is taken on the right. */
export function barFigure(row: BarRow, room: number): DrawnFigure {
  const words = room - BAR[0] - BEHIND - 6;
  const label = wrappedText(row.label, words, BODY, true);
  const bold = label.length;
  const lines = [...label, ...wrappedText(`${row.figure}; ${row.limit}`, words)];
  const height = lines.length * LEADING + 1;
  return {
    kind: 'drawn',
    said: `${row.label}: ${row.figure}; ${row.limit}; ${shareWords(row)} of the limit taken.`,
    width: room,
    height,
    draw: ([x, y]) => {
      const [left, low] = [x + room - BAR[0] - BEHIND, y + height - LEADING];
      const box = (length: number) =>
        path(
          'table',
          [
            [left, low],
            [left + length, low],
            [left + length, low + BAR[1]],
            [left, low + BAR[1]],
          ],
          true,
        );
      return [
        ...lines.map((line, i) =>
          letters([x, y + height - (i + 1) * LEADING + 1], line, {
            height: BODY,
            ...(i < bold ? { bold: true } : {}),
          }),
        ),
        { ...box(BAR[0] * Math.min(1, Math.max(0.01, row.share))), fill: 'ink' },
        box(BAR[0]),
        letters([left + BAR[0] + 2, low + (BAR[1] - BODY) / 2], shareWords(row), { height: BODY }),
      ];
    },
  };
}

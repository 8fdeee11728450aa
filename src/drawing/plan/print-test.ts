import type { Vec2 } from '../../frame/index.js';
import { INCH } from '../../length/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  letters,
  type PrintScale,
  path,
  printScaleWords,
  rule,
  type SheetEntity,
  SMALL,
  stroke,
  wrappedText,
} from '../sheet/index.js';

const MM = 100;
const INCHES = 4 * INCH;

/** Round the squares for their rules, mm. */
const ROUND = 5;

/** What is printed and measured first: a square of 100 mm in one of 4 in, and how a printer that errs is put right. */
export function printTest(room: number, printScale?: PrintScale): DrawnFigure {
  const height = INCHES + 2 * ROUND;
  return {
    kind: 'drawn',
    said: 'A square of 100 mm in one of 4 inches, with rules along their sides and diagonals, to be measured once printed.',
    width: room,
    height,
    draw: ([x, y]) => [
      ...squares([x + ROUND, y + ROUND]),
      ...words([x + INCHES + 3 * ROUND, y + height - ROUND], room - INCHES - 3 * ROUND, printScale),
    ],
  };
}

function words([x, top]: Vec2, room: number, printScale?: PrintScale): readonly SheetEntity[] {
  const told: readonly (readonly [string, boolean])[] = [
    ['Print at 100 % (actual size), not fitted to the page. Measure with a steel rule.', false],
    [
      'Inner square: 100 mm each way, 141.4 mm on both diagonals. Outer square: 4 in each way, 5-21/32" on both diagonals.',
      false,
    ],
    ['All true to 0.3 mm (1/64")? Print the rest.', true],
    ['Off a little? Tell the program what 100 mm measures along the short and the long side:', false],
    ['--print-scale 0.994x1.002', true],
    ['for 99.4 and 100.2 mm; factors from 0.9 to 1.1.', false],
    [
      'Off by 2 % or more (97.3 or 94.1 mm): the page was fitted to other paper; change the printer setting. Diagonals that differ by more than 0.5 mm: the paper goes in askew.',
      false,
    ],
    [
      printScale
        ? `This file is corrected for ${printScaleWords(printScale)} (short × long side): the squares are drawn that much off, and print true.`
        : 'This file is not corrected.',
      true,
    ],
  ];
  let y = top - SMALL;
  return told.flatMap(([text, bold]) => {
    const rows = wrappedText(text, room, SMALL, bold).map((row) => {
      const drawn = letters([x, y], row, bold ? { bold } : {});
      y -= 4;
      return drawn;
    });
    y -= 1.6;
    return rows;
  });
}

/** Squares with one corner in common; a rule along the near sides of the inner one and along the far sides of the outer. */
function squares([x, y]: Vec2): readonly SheetEntity[] {
  const square = (side: number) =>
    path(
      'template',
      [
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
      ],
      true,
    );
  return [
    square(MM),
    square(INCHES),
    stroke('template', [x, y], [x + MM, y + MM]),
    stroke('template', [x, y + MM], [x + MM, y]),
    ...rule([x, y], MM, 'x'),
    ...rule([x, y], MM, 'y'),
    ...rule([x, y + INCHES], INCHES, 'x'),
    ...rule([x + INCHES, y], INCHES, 'y'),
    letters([x + MM / 2, y + 8], '100 mm, short side of the paper', { anchor: 'middle' }),
    letters([x + 10, y + MM / 2], '100 mm, long side of the paper', { anchor: 'middle', rotationDeg: 90 }),
    letters([x + MM / 2, y + MM - 10], '4 in', { anchor: 'middle' }),
  ];
}

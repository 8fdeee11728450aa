import type { Vec2 } from '../../frame/index.js';
import { INCH } from '../../length/index.js';
import { drawableOf } from '../board/index.js';
import {
  type Draft,
  letters,
  type Paper,
  type PrintScale,
  pageOf,
  path,
  printScaleWords,
  rule,
  type SheetEntity,
  SMALL,
  stroke,
  wrappedText,
} from '../sheet/index.js';

/** Side of the squares, mm: 100 mm, and 4 in. */
const SQUARES = [100, 4 * INCH] as const;

/** The page that is printed first: a square of 100 mm and one of 4 in, and how a printer that errs is put right. */
export function scalePage(paper: Paper, printScale?: PrintScale): Draft {
  const page = pageOf(paper, 'portrait');
  const area = drawableOf(page);
  const left = area.minX + 6;
  const top = area.maxY - 6;
  const places: readonly Vec2[] = [
    [left, top - SQUARES[0]],
    [left, top - SQUARES[0] - 12 - SQUARES[1]],
  ];
  const column = left + SQUARES[1] + 6;
  const entities: SheetEntity[] = [
    ...square(places[0]!, SQUARES[0], '100 mm'),
    ...square(places[1]!, SQUARES[1], '4 in'),
  ];
  let y = top - 4;
  const write = (text: string, look: { readonly bold?: boolean; readonly height?: 2.5 | 3.5 } = {}): void => {
    const height = look.height ?? SMALL;
    for (const row of wrappedText(text, area.maxX - column - 1, height, look.bold)) {
      entities.push(letters([column, y], row, { height, ...(look.bold ? { bold: true } : {}) }));
      y -= height === SMALL ? 4.3 : 5.6;
    }
    y -= 2.4;
  };
  write('Print this page first', { bold: true, height: 3.5 });
  write(
    `This file is for ${paper} paper. Print it at 100 % (actual size), not fitted to the page and not without margins.`,
  );
  write(
    'Measure the upper square with a steel rule: 100 mm along the short side of the paper and along the long side, and 141.4 mm on both diagonals. Or the lower one: 4 in, and 5-21/32" on both diagonals.',
  );
  write('All true to 0.3 mm (1/64") in 100 mm? Then print the rest.', { bold: true });
  write('If a side is off, tell the program what you measured in mm, and print the new file:');
  write('--print-scale S/100xL/100', { bold: true });
  write(
    'S is what 100 mm measures along the short side, L along the long side. 99.4 mm and 100.2 mm make --print-scale 0.994x1.002. Factors must be from 0.9 to 1.1.',
  );
  write(
    'About 97.3 or 94.1 mm, or any 2 % and more: the page was fitted to other paper. Change the printer setting, not the factors.',
  );
  write(
    'If the two diagonals differ by more than 0.5 mm, the paper goes in askew: feed it straight, or turn every second sheet round.',
  );
  write(
    printScale
      ? `This file is corrected for ${printScaleWords(printScale)} (short × long side): the squares are drawn that much off, and print true.`
      : 'This file is not corrected.',
    { bold: true },
  );
  write('Every template sheet has a rule of 100 mm both ways: measure those too.');
  return {
    id: 'print-test',
    title: 'print test',
    page,
    documentType: 'print test',
    scale: '1:1',
    entities,
    cautions: ['Measure before you cut anything to a template.'],
  };
}

/** A square with its diagonals, and a rule along its lower and its left side. */
function square([x, y]: Vec2, side: number, words: string): readonly SheetEntity[] {
  const [r, t] = [x + side, y + side];
  return [
    path(
      'template',
      [
        [x, y],
        [r, y],
        [r, t],
        [x, t],
      ],
      true,
    ),
    stroke('template', [x, y], [r, t]),
    stroke('template', [x, t], [r, y]),
    ...rule([x, y], side, 'x'),
    ...rule([x, y], side, 'y'),
    letters([x + side / 2, y + 4], `${words}, short side of the paper`, { anchor: 'middle' }),
    letters([x + 7, y + side / 2], `${words}, long side of the paper`, { anchor: 'middle', rotationDeg: 90 }),
  ];
}

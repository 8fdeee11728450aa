import { fixed, systemOf, trimmed } from '../../length/index.js';
import {
  type Block,
  type CutRow,
  figure,
  heading,
  list,
  paragraph,
  type ShopPapers,
  type StockLayout,
  strong,
  table,
} from '../../shop/index.js';
import { STRIP_KEY } from '../figure/index.js';
import { blankWords, type DrawingUnits, sayIn } from '../sheet/index.js';
import type { PlanParts } from './plan-parts.js';

/** What to cut, what to buy, and how the stock is laid out. */
export function materialBlocks(papers: ShopPapers, units: DrawingUnits): readonly Block[] {
  const say = sayIn(units);
  const { cutList, bills, toBuy, hardware, layouts, aids } = papers;
  // what each is for stands on its card
  const names = new Map(aids.map(({ board }) => [board.id, board.name]));
  // lengths that are only cut off one after the other need no drawing
  const drawn = layouts.filter((layout) => !crosscutsOnly(layout));
  const notes = cutList.flatMap((row) => {
    const words = notesOf(row);
    return words.length > 0 ? [`${row.marks.join(' ')}: ${words.join('; ')}`] : [];
  });
  const rough = cutList.some((row) => row.rough !== undefined);
  return [
    heading('Wood: what to cut and what to buy', 1),
    paragraph(
      `Thickness × width × length along the grain${systemOf(units) === 'in' ? '' : ', mm'}. Saw to the rough size, mill to the finished; scrap: any sound board.`,
    ),
    table(
      ['mark', 'count', 'what', 'wood', 'finished', ...(rough ? ['rough'] : [])],
      cutList.map((row) => [
        row.marks.join(' '),
        trimmed(row.count, 0),
        names.get(row.boards[0] ?? '') ?? row.first?.called ?? row.name,
        row.scrap ? 'scrap' : row.material,
        bare(row.finished, units),
        ...(rough ? [roughWords(row, units)] : []),
      ]),
    ),
    ...(toBuy.length > 0
      ? [
          table(
            ['wood', 'at least thick', 'widest piece', 'longest piece', 'pieces', 'with waste, board feet'],
            toBuy.map((one) => [
              one.material,
              say(one.thickness),
              say(one.widest),
              say(one.longest),
              trimmed(one.count, 0),
              fixed(one.boardFeet, 2),
            ]),
          ),
        ]
      : []),
    list([
      ...(notes.length > 0 ? [`${notes.join('. ')}.`] : []),
      ...bills.map(
        ({ material, total }) =>
          `To buy, ${material}: ${fixed(total.boardFeet, 2)} board feet${systemOf(units) === 'in' ? '' : `, ${fixed(total.volumeMm3 * 1e-9, 5)} m³`}, waste and all.`,
      ),
      ...bills
        .filter(({ verdict }) => verdict !== 'passed')
        .map(({ material }) => `${material}: not verified, for the shop file gives no rough allowance.`),
      ...(hardware.length === 0
        ? []
        : [`Hardware: ${hardware.map(({ count, name }) => `${trimmed(count, 0)} ${name}`).join(', ')}.`]),
    ]),
    ...drawn.flatMap((layout, k) => [
      heading(`Layout: ${layout.title}`),
      ...(k === 0 ? [paragraph(STRIP_KEY)] : []),
      ...layout.plan.pieces.map((_, piece) =>
        figure({ of: 'layout', layout: layouts.indexOf(layout), piece }),
      ),
    ]),
  ];
}

/** What to know of a piece before it is sawn. */
const notesOf = ({ cut, mirrorOf, handed, first }: CutRow): readonly string[] => [
  ...(cut.when === 'cut now' ? [] : [`fit, step ${cut.afterStep}`]),
  ...(mirrorOf ? [`mirror image of ${mirrorOf}`] : handed ? ['handed'] : []),
  ...(first?.words ?? []),
];

/** The page says the unit once. */
const bare = (size: CutRow['finished'], units: DrawingUnits): string =>
  units === 'mm' ? blankWords(size, units).replace(' mm', '') : blankWords(size, units);

const roughWords = ({ rough, finished }: CutRow, units: DrawingUnits): string => {
  if (!rough) return 'not verified';
  const words = bare(rough.size, units);
  return words === bare(finished, units) ? 'as finished' : words;
};

/** For the saw: every cut of every piece of stock in its order, and the wood reckoned item by item. */
export function sawBlocks({ layouts, bills }: ShopPapers, rows: PlanParts['layoutRows']): readonly Block[] {
  return [
    ...layouts.flatMap((layout, i) => [
      heading(`Cuts in order: ${layout.title}`),
      table(
        ['stock', 'pieces', 'cuts in order'],
        layout.plan.pieces.map(({ stock, parts }, k) => [
          stock.name,
          parts.map(({ id }) => id).join(', '),
          (rows[i]?.[k] ?? []).join('; '),
        ]),
      ),
      ...(layout.notes.length > 0 ? [list(layout.notes)] : []),
    ]),
    ...(bills.length > 0
      ? [
          heading('Solid wood to buy, item by item'),
          table(
            ['wood', 'item', 'm³', 'board feet'],
            bills.flatMap(({ material, items, total }) =>
              [...items, total].map((item) => {
                const words = [
                  material,
                  item.what,
                  fixed(item.volumeMm3 * 1e-9, 5),
                  fixed(item.boardFeet, 2),
                ];
                return item === total ? words.map(strong) : words;
              }),
            ),
          ),
        ]
      : []),
  ];
}

const crosscutsOnly = ({ plan }: StockLayout): boolean =>
  plan.pieces.every(
    ({ stock, parts, cuts }) =>
      cuts.every(({ direction }) => direction === 'crosscut') &&
      parts.every(({ width }) => width === stock.width),
  );

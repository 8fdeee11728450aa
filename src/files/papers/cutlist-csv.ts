import { fixed, type Say, trimmed } from '../../length/index.js';
import { type BillItem, boardFeet, type CutRow, cutWords, type WoodBill } from '../../shop/index.js';
import { sheetNames } from '../../tables/index.js';
import { csv } from './csv.js';
import { type Column, lengthColumns, tableOf } from './csv-columns.js';

/** A line of the file: pieces to cut, or an item of the wood to buy. */
interface Line {
  readonly row?: CutRow;
  readonly item?: BillItem & { readonly material: string; readonly verdict: string };
}

/**
 * The cut list as CSV: thickness × width × length, finished and rough; then, with kind `wood to buy`, every item of the wood
 * to buy and its total.
 */
export const cutListCsv = (
  rows: readonly CutRow[],
  bills: readonly WoodBill[],
  say: Say,
  revision: string,
): string =>
  csv(
    tableOf(
      columns(say),
      [
        ...rows.map((row): Line => ({ row })),
        ...bills.flatMap(({ material, items, total, verdict }) =>
          [...items, total].map((item): Line => ({ item: { ...item, material, verdict } })),
        ),
      ],
      revision,
    ),
  );

const columns = (say: Say): readonly Column<Line>[] => [
  { name: 'kind', of: ({ row }) => row?.kind ?? 'wood to buy' },
  word('mark', (row) => row.marks.join(' ')),
  word('count', (row) => String(row.count)),
  { name: 'name', of: ({ row, item }) => row?.name ?? item?.what ?? '' },
  { name: 'material', of: ({ row, item }) => row?.material ?? item?.material ?? '' },
  ...SIZES.flatMap((size) => lengthColumns<Line>(say, size, ({ row }) => row?.finished[size])),
  ...SIZES.flatMap((size) => lengthColumns<Line>(say, `rough ${size}`, ({ row }) => row?.rough?.size[size])),
  {
    name: 'allowances',
    of: ({ row, item }) =>
      row
        ? allowanceWords(row, say)
        : item?.verdict === 'passed'
          ? ''
          : 'not verified: no rough allowance is known',
  },
  word('cut', (row) => cutWords(row.cut)),
  word('ends', (row) => row.ends?.ends ?? ''),
  word(
    'end angles (deg)',
    (row) => row.ends?.anglesDeg.map((angle) => trimmed(angle, 2)).join(' and ') ?? '',
  ),
  ...lengthColumns<Line>(say, 'long point', ({ row }) => row?.ends?.longPoint),
  ...lengthColumns<Line>(say, 'short point', ({ row }) => row?.ends?.shortPoint),
  ...lengthColumns<Line>(say, 'centre line', ({ row }) => row?.ends?.centreLine),
  word('set the stop to', (row) => row.ends?.stopTo ?? ''),
  word('hand', (row) => (row.mirrorOf ? `mirror image of ${row.mirrorOf}` : row.handed ? 'handed' : '')),
  word('reference marks', (row) => row.markWords),
  word('mass each (kg)', (row) => (row.massKg === undefined ? '' : fixed(row.massKg, 3))),
  word('finished volume each (m³)', (row) => fixed(row.volume * 1e-9, 6)),
  word('sheet all (m²)', ({ material, finished, count }) =>
    sheetNames.includes(material) ? fixed(finished.length * finished.width * count * 1e-6, 3) : '',
  ),
  { name: 'rough volume all (m³)', of: (line) => volumeOf(line, (mm3) => fixed(mm3 * 1e-9, 6)) },
  { name: 'rough volume all (board feet)', of: (line) => volumeOf(line, (mm3) => fixed(boardFeet(mm3), 2)) },
];

const SIZES = ['thickness', 'width', 'length'] as const;

const word = (name: string, of: (row: CutRow) => string): Column<Line> => ({
  name,
  of: ({ row }) => (row ? of(row) : ''),
});

const allowanceWords = ({ rough }: CutRow, say: Say): string =>
  rough === undefined
    ? 'not verified: no rough allowance is known'
    : rough.allowances.map(({ what, amount }) => `${what} +${say.fine(amount)}`).join('; ');

function volumeOf({ row, item }: Line, print: (mm3: number) => string): string {
  if (item) return print(item.volumeMm3);
  if (!row?.rough || sheetNames.includes(row.material)) return '';
  const { length, width, thickness } = row.rough.size;
  return print(length * width * thickness * row.count);
}

import { fixed, trimmed } from '../../length/index.js';
import {
  type Block,
  type CutRow,
  cutWords,
  heading,
  paragraph,
  type ShopPapers,
  strong,
  table,
} from '../../shop/index.js';
import { blankWords, type DrawingUnits, sayIn } from '../sheet/index.js';

const KINDS: Readonly<Record<CutRow['kind'], string>> = {
  board: 'Boards',
  aid: 'Aids to hold, guide and clamp',
  template: 'Templates',
  'test blank': 'Test blanks',
  'tenon strip': 'Strips for the tenons',
};

/** Cut list rough and finished, what to buy, hardware. */
export function materialBlocks(papers: ShopPapers, units: DrawingUnits): readonly Block[] {
  const say = sayIn(units);
  const { cutList, bills, toBuy, hardware } = papers;
  const kinds = [...new Set(cutList.map(({ kind }) => kind))];
  return [
    heading('Materials', 1),
    paragraph(
      'Thickness × width × length, length along the grain. Saw to the rough size, mill to the finished one. Fit each piece to those already made where it says so.',
    ),
    ...kinds.flatMap((kind) => [
      heading(KINDS[kind]),
      cutTable(
        cutList.filter((row) => row.kind === kind),
        units,
      ),
    ]),
    ...(bills.length > 0
      ? [
          heading('Solid wood to buy, item by item'),
          table(
            ['wood', 'item', 'm³', 'board feet'],
            [
              ...bills.flatMap(({ material, items, total, verdict }) => [
                ...items.map((item) => [
                  material,
                  item.what,
                  fixed(item.volumeMm3 * 1e-9, 5),
                  fixed(item.boardFeet, 2),
                ]),
                [
                  strong(material),
                  strong(
                    `${total.what}${verdict === 'passed' ? '' : ' (not verified: the shop file gives no rough allowance)'}`,
                  ),
                  strong(fixed(total.volumeMm3 * 1e-9, 5)),
                  strong(fixed(total.boardFeet, 2)),
                ],
              ]),
            ],
          ),
        ]
      : []),
    ...(toBuy.length > 0
      ? [
          table(
            ['wood', 'at least thick', 'widest piece', 'longest piece', 'pieces', 'with waste, board feet'],
            [
              ...toBuy.map((one) => [
                one.material,
                say(one.thickness),
                say(one.widest),
                say(one.longest),
                trimmed(one.count, 0),
                fixed(one.boardFeet, 2),
              ]),
            ],
          ),
        ]
      : []),
    heading('Hardware to buy'),
    ...(hardware.length > 0
      ? [table(['count', 'what'], [...hardware.map(({ count, name }) => [trimmed(count, 0), name])])]
      : [paragraph('None.')]),
  ];
}

function cutTable(rows: readonly CutRow[], units: DrawingUnits): Block {
  const say = sayIn(units);
  const angled = rows.some(({ ends }) => ends !== undefined && ends.ends !== 'square');
  const rough = rows.some((row) => row.rough !== undefined);
  const board = rows[0]?.kind === 'board';
  return table(
    [
      'mark',
      'count',
      'name',
      'material',
      'finished',
      ...(rough ? ['rough'] : []),
      ...(angled ? ['ends', 'long / short point, centre line'] : []),
      ...(board ? ['cut', 'hand'] : []),
    ],
    [
      ...rows.map((row) => [
        row.marks.join(' '),
        trimmed(row.count, 0),
        row.name,
        row.material,
        blankWords(row.finished, units),
        ...(rough ? [row.rough ? blankWords(row.rough.size, units) : 'not verified'] : []),
        ...(angled
          ? row.ends && row.ends.ends !== 'square'
            ? [
                `${row.ends.ends}, ${row.ends.anglesDeg.map((deg) => `${trimmed(deg, 2)}°`).join(' and ')}; set the stop to: ${row.ends.stopTo}`,
                `${say(row.ends.longPoint)} / ${say(row.ends.shortPoint)}, ${say(row.ends.centreLine)}`,
              ]
            : ['square', '']
          : []),
        ...(board
          ? [cutWords(row.cut), row.mirrorOf ? `mirror image of ${row.mirrorOf}` : row.handed ? 'handed' : '']
          : []),
      ]),
    ],
  );
}

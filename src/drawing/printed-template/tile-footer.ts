import { systemOf } from '../../length/index.js';
import {
  type Box,
  bareSize,
  checkBar,
  fittedText,
  letters,
  type Paper,
  type PrintScale,
  path,
  printScaleWords,
  rule,
  type SheetSet,
  SMALL,
  type Stroke,
  stroke,
  textWidth,
} from '../sheet/index.js';
import type { TemplateArtwork } from './template-artwork.js';
import type { Tile, TilePlan } from './tiling.js';

/** What the sheets of one template are told besides what they show. */
export interface TilePaper {
  readonly paper: Paper;
  readonly set: SheetSet;
  /** Of the whole set, before the first sheet of this template, and all. */
  readonly before: number;
  readonly total: number;
  readonly printScale?: PrintScale;
}

/** Below the window, mm. */
export const FOOTER = 14;

/** Rule, what the sheet is, how it is joined, and where it lies in the whole. */
export function tileFooter(
  artwork: TemplateArtwork,
  plan: TilePlan,
  tile: Tile,
  of: TilePaper,
  live: Box,
): readonly Stroke[] {
  const { set, paper, printScale } = of;
  const { minX, maxX, minY } = live;
  const count = plan.tiles.filter(({ number }) => number !== undefined).length;
  const page = of.before + tile.number!;
  const width = tile.frame.maxX - tile.frame.minX;
  const height = tile.frame.maxY - tile.frame.minY;
  const sizes = [width, height].map((mm) => bareSize(mm, set.units)).join(' × ');
  const frame = systemOf(set.units) === 'in' ? sizes : `${sizes} mm`;
  const mapWidth = 34;
  const room = maxX - minX - mapWidth - 2;
  const bar = checkBar(set.units);
  const corrected = printScale ? `, corrected for ${printScaleWords(printScale)}` : '';
  const row = (y: number, text: string, bold = false): Stroke => {
    const fitted = fittedText(text, bold ? room / 1.2 : room, [SMALL]);
    return letters([minX, minY + y], fitted.text, bold ? { bold } : {});
  };
  return [
    stroke('table', [minX, minY + FOOTER - 0.2], [maxX, minY + FOOTER - 0.2]),
    row(10.5, `${artwork.board.name}: template, sheet ${tile.number} of ${count}`, true),
    row(
      7.2,
      `${set.design}, rev. ${set.revision}, ${paper}, ${set.number}-${page}, page ${page}/${of.total}, full size${corrected}`,
    ),
    row(
      3.9,
      count > 1
        ? `Cut a seam, lay it on its neighbour, cross on cross. Frame ${frame}`
        : `Print at 100 %; measure both rules before use. Frame ${frame}`,
    ),
    ...rule([minX, minY + 0.6], bar.length, 'x', bar.words),
    ...map(plan, tile, { minX: maxX - mapWidth, maxX, minY: minY + 0.4, maxY: minY + FOOTER - 1 }),
  ];
}

/** All sheets small, blank ones empty, this one dark. */
function map({ tiles, rows, columns }: TilePlan, here: Tile | undefined, box: Box): readonly Stroke[] {
  const side = Math.min((box.maxX - box.minX) / columns, (box.maxY - box.minY) / rows, 8);
  const left = box.maxX - side * columns;
  return tiles.flatMap((tile): Stroke[] => {
    const [x, y] = [left + tile.column * side, box.maxY - (tile.row + 1) * side];
    const corners = path(
      'dimension',
      [
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
      ],
      true,
    );
    const text = tile.number === undefined ? '' : String(tile.number);
    const fits = side >= SMALL + 1 && textWidth(text, SMALL) <= side - 0.6;
    const dark = here?.number !== undefined && tile.number === here.number;
    return [
      corners,
      ...(dark ? [ring(x, y, side)] : []),
      ...(fits && text !== ''
        ? [letters([x + side / 2, y + (side - SMALL) / 2], text, { anchor: 'middle', bold: dark })]
        : []),
    ];
  });
}

/** A second, heavier line round this sheet's cell: legible over its number, as a dark cell would not be. */
const ring = (x: number, y: number, side: number): Stroke =>
  path(
    'frame',
    [
      [x + 0.5, y + 0.5],
      [x + side - 0.5, y + 0.5],
      [x + side - 0.5, y + side - 0.5],
      [x + 0.5, y + side - 0.5],
    ],
    true,
  );

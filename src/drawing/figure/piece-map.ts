import type { Vec2 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { markedSides } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  BODY,
  boxesOverlap,
  labelAt,
  letters,
  movedEntities,
  pieceInside,
  roomOf,
  type SheetEntity,
  SMALL,
  shaded,
  textBox,
  textWidth,
  wrappedText,
} from '../sheet/index.js';
import { viewBox, viewLines, viewPoint } from '../view/index.js';
import { partsList } from './parts-list.js';
import { markedSpots, putTogether } from './picture.js';

/** A small picture of the piece for a sheet that names its boards, the largest first; `about`: ids of the boards the sheet is about. */
export type PieceMap = (about: ReadonlySet<string>) => readonly DrawnFigure[];

/** Of the picture alone, the largest first, mm on the sheet. */
const PICTURES = [34, 28, 23, 19].map((width) => ({ width, height: 0.77 * width }));

/** Left and right of the picture, and above and below it: with air for marks, or without where a sheet is narrow. */
const WAYS: readonly (readonly [beside: boolean, over: boolean])[] = [
  [true, true],
  [true, false],
  [false, true],
];

/** From a mark to the picture, mm. */
const LED = 4;

/** A picture with its air, mm on the sheet. */
interface Size {
  readonly picture: (typeof PICTURES)[number];
  readonly width: number;
  readonly height: number;
}

/** @param mark width of the widest mark, mm */
const sizesFor = (mark: number): readonly Size[] =>
  PICTURES.flatMap((picture) =>
    WAYS.map((way) => {
      const [beside, over] = [way[0] ? 2 * mark + 2 * LED : 0, way[1] ? 2 * SMALL + 2 * LED : 0];
      return { picture, width: picture.width + beside, height: picture.height + over };
    }),
  );

/** How much darker boards are that a sheet is about. */
const DARKER = 0.66;

/** Of the words beside the picture: their width, from row to row, and to the picture, mm. */
const [WORDS, LEADING, GAP] = [58, 3.3, 3];

/**
 * The piece with the marks of its boards, seen from the same corner on every sheet. It is laid out once a size.
 *
 * @param sided whether it tells where the reference faces look in the piece
 */
export function pieceMap(solids: Solids, sided: boolean): PieceMap {
  const { boards, pictures } = picturesOf(solids);
  const names = boards.map(({ marks, name }) => `${marks.join(' and ')} ${name}`).join(', ');
  return (about) => {
    const told = boards.filter(({ ids }) => about.size === 0 || ids.some((id) => about.has(id)));
    const rows = sided ? told.flatMap(({ marks, ids }) => sidesOf(solids, marks, ids)) : [];
    const tallest = rows.length * LEADING;
    const width = rows.length === 0 ? 0 : Math.max(...rows.map((row) => textWidth(row, BODY))) + GAP;
    const said = `A map of the piece with the marks of its boards: ${names}.${rows.length > 0 ? ` ${rows.join(' ')}.` : ''}`;
    const figure = (size: Size, entities: readonly SheetEntity[], words: readonly string[]): DrawnFigure => {
      const beside = words.length > 0 ? width : 0;
      const height = Math.max(size.height, words.length > 0 ? tallest : 0);
      const own = entities.map((one) =>
        one.kind === 'tone' && about.has(one.part) ? { ...one, colour: shaded(one.colour, DARKER) } : one,
      );
      return {
        kind: 'drawn',
        said,
        width: size.width + beside,
        height,
        draw: ([x, y]) => [
          ...movedEntities(own, [x + beside, y]),
          ...words.map((row, i) =>
            letters([x, y + (height + tallest) / 2 - BODY - 0.5 - i * LEADING], row, { height: BODY }),
          ),
        ],
      };
    };
    return [
      ...(rows.length > 0 ? pictures.map(({ size, entities }) => figure(size, entities, rows)) : []),
      ...pictures.map(({ size, entities }) => figure(size, entities, [])),
    ];
  };
}

/** The boards as they are marked, and their picture in every size that holds as many marks as any. */
const picturesOf = onceForEach((solids: Solids) => {
  const boards = partsList(solids, 'mm').filter(({ ids }) => ids.some((id) => solids.boards.has(id)));
  const widest = Math.max(
    ...boards.flatMap(({ marks }) => marks.map((mark) => textWidth(mark, SMALL, true))),
  );
  const laid = sizesFor(widest).map((size) => ({ size, entities: laidOut(solids, boards, size) }));
  const most = Math.max(...laid.map(({ entities }) => clear(entities)));
  return { boards, pictures: laid.filter(({ entities }) => clear(entities) === most) };
});

/** How many marks stand clear of all others and of their leaders. */
function clear(entities: readonly SheetEntity[]): number {
  const boxes = entities.flatMap((one) => (one.kind === 'text' ? [textBox(one)] : []));
  const leaders = entities.filter((one) => one.kind === 'line');
  return boxes.filter(
    (box) =>
      boxes.every((other) => other === box || !boxesOverlap(box, other)) &&
      leaders.every(({ from, to }) => !pieceInside(from, to, box)),
  ).length;
}

/** Where the marked faces of a kind of board look, in rows. */
function sidesOf({ design }: Solids, marks: readonly string[], ids: readonly string[]): readonly string[] {
  const sides = markedSides(design, ids);
  return sides === '' ? [] : wrappedText(`${marks.join(', ')} ${sides}`, WORDS);
}

/** The picture and its marks, its lower left corner at the origin. */
function laidOut(solids: Solids, boards: ReturnType<typeof partsList>, size: Size): readonly SheetEntity[] {
  const { view, spots } = putTogether(solids);
  const box = viewBox(view);
  const factor = Math.min(
    size.picture.width / (box.maxX - box.minX),
    size.picture.height / (box.maxY - box.minY),
  );
  const at: Vec2 = [
    (size.width - factor * (box.minX + box.maxX)) / 2,
    (size.height - factor * (box.minY + box.maxY)) / 2,
  ];
  // so small, grain is only noise
  const lines = viewLines(view, { at, factor }).map((one) =>
    one.kind === 'tone' ? { ...one, marks: [] } : one,
  );
  const room = roomOf(lines);
  const within = { minX: 0, maxX: size.width, minY: 0, maxY: size.height };
  const marks = markedSpots(boards, spots).flatMap(({ mark, spot }) =>
    labelAt(room, viewPoint({ at, factor }, spot), mark, 1, { leader: 'always', within, bold: true }),
  );
  return [...lines, ...marks];
}

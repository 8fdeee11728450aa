import { segments } from '../../profile/index.js';
import { boardMarks, heading, markedSides, paragraph, type ShopPapers, table } from '../../shop/index.js';
import type { BoardSolid, Solids } from '../../solid/index.js';
import { NOISE } from '../../tolerances.js';
import { boardFigure, type DrawingOptions, featureTable, type Scalable } from '../board/index.js';
import {
  assemblyFigure,
  jointFigure,
  jointKinds,
  jointTable,
  numberedFigure,
  partsList,
  partsTable,
} from '../figure/index.js';
import { type FlowBlock, heightOf, type Whole } from '../flow/index.js';
import { blankWords, type DrawingUnits } from '../sheet/index.js';
import { ROOM } from './plan-section.js';

/** A drawing is not set more than this much smaller than a page of its own would show it. */
const SMALLER = 0.75;

/**
 * A heading, a drawing as large as the page lets it be, and what belongs to it.
 *
 * @param headed what stands above the drawing, once its scale is known
 * @param about ids of the boards it shows
 */
function withDrawing(
  headed: (scale: string) => readonly FlowBlock[],
  drawing: Scalable,
  below: readonly FlowBlock[],
  about: readonly string[] = [],
): Whole {
  // asked for one height more than once, while a place is looked for
  const known = new Map<number, ReturnType<Scalable>>();
  const drawn = (height: number) => {
    if (!known.has(height)) known.set(height, drawing({ width: ROOM.width, height }));
    return known.get(height);
  };
  const taken = heightOf([...headed('1:2.5'), ...below], ROOM.width) + 3;
  const alone = drawn(ROOM.height - taken) ?? drawn(ROOM.height);
  return {
    kind: 'whole',
    free: true,
    about,
    fit: (height) => {
      const figure = drawn(height - taken) ?? (height >= ROOM.height - 2 ? alone : undefined);
      if (!figure || !alone || figure.scale.factor < SMALLER * alone.scale.factor) return undefined;
      return [...headed(figure.scale.name), figure, ...below];
    },
  };
}

/** The piece put together or drawn apart, every part marked as it is marked at the bench, with the list of parts. */
export function pieceBlocks(
  solids: Solids,
  units: DrawingUnits,
  way: 'put together' | 'drawn apart',
): readonly FlowBlock[] {
  const [head = [], ...rows] = partsTable(partsList(solids, units));
  const below = [table(head, rows)];
  const taken = heightOf(below, ROOM.width) + 14;
  return [
    heading('The piece and its parts', 1),
    numberedFigure(solids, way, { width: ROOM.width, height: ROOM.height - taken }),
    ...below,
  ];
}

/** The piece put together, with its sizes. */
export const assemblyBlocks = (solids: Solids, options: DrawingOptions): readonly FlowBlock[] => [
  withDrawing(
    (scale) => [
      heading('The piece put together', 1),
      paragraph(`Scale ${scale}.${leansTwoWays(solids.design) ? TWO_WAYS : ''}`),
    ],
    assemblyFigure(solids, options),
    [],
  ),
];

/** Why an angle here is not quite the one a board is cut to. */
const TWO_WAYS =
  " An edge of a board that leans both ways looks a little steeper from here than it is cut: saw to the angle on the board's own page.";

/** Whether a board with slanted sides leans itself, so that neither view sees its sides square on. */
const leansTwoWays = ({ boards }: Solids['design']): boolean =>
  boards.some(({ board, place }) => {
    const rise = Math.abs(place.x[2]);
    return (
      rise > 0.5 &&
      rise < 1 - NOISE &&
      segments(board.outline).some(
        ({ kind, from, to }) =>
          kind === 'line' && Math.min(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])) > 1,
      )
    );
  });

/** A drawing for each kind of board: those that measure the same from the same faces share one. */
export function boardBlocks(
  { design, boards }: Solids,
  options: DrawingOptions,
  { cards }: Pick<ShopPapers, 'cards'>,
): readonly FlowBlock[] {
  const solids = [...boards.values()];
  const marks = boardMarks(solids.map(({ board }) => board.id));
  const kinds = new Map<string, BoardSolid[]>();
  for (const solid of solids) {
    const { board } = solid;
    // an outline may begin at any of its corners
    const corners = board.outline.map((one) =>
      [one.x, one.y, one.bulge].map((part) => Math.round(part * 1000) || 0).join(' '),
    );
    const { length, width, thickness } = board.blank;
    const size = [length, width, thickness].map((mm) => mm.toFixed(3));
    const key = JSON.stringify([size, corners.toSorted(), board.material, measured(solid, options)]);
    kinds.set(key, [...(kinds.get(key) ?? []), solid]);
  }
  return [...kinds.values()].map((alike): FlowBlock => {
    const { board } = alike[0]!;
    const own = cards.filter(({ cuts }) => cuts.some((cut) => alike.some(({ id }) => id === cut.board)));
    const by = own.length === 0 ? '' : ` Cards ${own.map(({ id }) => id).join(', ')}.`;
    const sides = markedSides(
      design,
      alike.map(({ id }) => id),
    );
    return withDrawing(
      (scale) => [
        heading(alike.map(({ board: one }) => `${marks.get(one.id)} ${one.name}`).join(', ')),
        paragraph(
          `${board.material}, ${blankWords(board.blank, options.units)}. Scale ${scale}.${by}${sides === '' ? '' : ` R${sides.slice(1)}.`}`,
        ),
      ],
      boardFigure(alike[0]!, options),
      featureRows(alike, options, marks),
      alike.map(({ id }) => id),
    );
  });
}

/** The rows of a board's table without its marks and what it joins, in an order of their own. */
const measured = ({ board }: BoardSolid, { units }: DrawingOptions): readonly string[] => {
  const [head = [], ...rows] = featureTable(board, units);
  const joins = head.indexOf('joins');
  return rows.map((row) => row.filter((_, i) => i > 0 && i !== joins).join('|')).toSorted();
};

/** The table of what is cut; boards that measure the same have a column of marks each. */
function featureRows(
  alike: readonly BoardSolid[],
  options: DrawingOptions,
  marks: ReadonlyMap<string, string>,
): readonly FlowBlock[] {
  const tables = alike.map(({ board }) => featureTable(board, options.units));
  const [head = [], ...rows] = tables[0]!;
  if (rows.length === 0) return [];
  if (alike.length === 1) return [table(head, rows)];
  const left = tables.map((one) => one.slice(1));
  const joins = head.indexOf('joins');
  const key = (row: readonly string[]) => row.filter((_, i) => i > 0 && i !== joins).join('|');
  return [
    table(
      [...alike.map(({ id }) => marks.get(id)!), ...head.slice(1).filter((one) => one !== 'joins')],
      rows.map((row) => [
        ...left.map((own) => {
          const at = own.findIndex((one) => key(one) === key(row));
          return own.splice(at, 1)[0]![0]!;
        }),
        ...row.slice(1).filter((_, i) => i + 1 !== joins),
      ]),
    ),
  ];
}

/** Every kind of joint at full size where the page holds it, cut open, with its sizes and its fit. */
export const jointBlocks = (solids: Solids, options: DrawingOptions): readonly FlowBlock[] =>
  jointKinds(solids).map((kind) => {
    const [, ...rows] = jointTable(solids, kind, options);
    return withDrawing(
      (scale) => [heading(`Joint ${kind.joint.id}`), paragraph(`Scale ${scale}, as it stands in the piece.`)],
      jointFigure(solids, kind, options),
      [paragraph(`${rows.map((row) => row.join(': ')).join('. ')}.`)],
      [kind.joint.a, kind.joint.b],
    );
  });

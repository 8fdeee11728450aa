import type { StockLayout } from '../../shop/index.js';
import { drawableOf } from '../board/index.js';
import { cardFigure, clampFigure, glueFigure, layoutFigure, markingFigures } from '../figure/index.js';
import {
  type Block,
  blocksOf,
  figureRows,
  heading,
  paragraph,
  sectionsOf,
  tableBlock,
} from '../flow/index.js';
import { pageOf } from '../sheet/index.js';
import type { View } from '../view/index.js';
import type { PlanParts } from './plan-parts.js';

/** The set-up cards, a page each, with a picture of the set-up before the figures. */
export function cardBlocks({ texts, papers, units, solids }: PlanParts): readonly Block[] {
  const boards = solids.design.boards.map(({ board }) => board);
  const page = drawableOf(pageOf('A4', 'portrait'));
  return sectionsOf(blocksOf(texts.setup)).flatMap(({ heading: title, blocks }): readonly Block[] => {
    const card = papers.cards.find(({ id }) => title?.startsWith(`${id}:`));
    if (!card) return blocks;
    const marking = figureRows(markingFigures(card, boards, units), page.maxX - page.minX);
    return [{ kind: 'new page' }, blocks[0]!, cardFigure(card, units), ...marking, ...blocks.slice(1)];
  });
}

/** The glue-up, every stage with pictures of its steps. */
export function glueBlocks({ texts, papers, solids }: PlanParts, picture: View): readonly Block[] {
  const room = drawableOf(pageOf('A4', 'landscape'));
  return sectionsOf(blocksOf(texts.glueUp)).flatMap(({ heading: title, blocks }): readonly Block[] => {
    const stage = papers.glueUp.stages.find(({ number }) => title?.startsWith(`Stage ${number}:`));
    if (!stage) return blocks;
    const figures = papers.glueUp.steps
      .filter((step) => step.stage === stage.number)
      .map((step) => glueFigure(solids, papers.glueUp, step));
    const clamped = clampFigure(picture, papers.clamps, stage.number);
    return [...blocks, ...figureRows([...figures, ...(clamped ? [clamped] : [])], room.maxX - room.minX)];
  });
}

/** Every sheet and board of stock with its parts, then its cuts in order. */
export function layoutBlocks({ papers, layoutRows }: PlanParts): readonly Block[] {
  return papers.layouts.flatMap((layout, i) => [
    heading(`Layout: ${layout.title}`),
    ...(crosscutsOnly(layout) ? [crosscutTable(layout, layoutRows[i] ?? [])] : []),
    ...(crosscutsOnly(layout) ? [] : layout.plan.pieces).flatMap((piece, k): readonly Block[] => [
      ...(layout.plan.pieces.length > 1
        ? [paragraph(`Piece ${k + 1} of ${layout.plan.pieces.length}.`)]
        : []),
      layoutFigure(piece, layout),
      ...inTwoColumns(layoutRows[i]?.[k] ?? []),
    ]),
    ...layout.notes.map((text): Block => ({ kind: 'bullet', text })),
  ]);
}

/** Lengths that are only cut off one after the other need no drawing. */
const crosscutsOnly = ({ plan }: StockLayout): boolean =>
  plan.pieces.length > 0 &&
  plan.pieces.every(({ stock, parts, cuts }) =>
    [
      ...cuts.map(({ direction }) => direction === 'crosscut'),
      ...parts.map(({ width }) => width === stock.width),
    ].every(Boolean),
  );

const crosscutTable = ({ plan }: StockLayout, rows: readonly (readonly string[])[]): Block =>
  tableBlock([
    ['length', 'pieces', 'cuts in order'],
    ...plan.pieces.map(({ stock, parts }, i) => [
      stock.name,
      parts.map(({ id }) => id).join(', '),
      (rows[i] ?? []).join('; '),
    ]),
  ]);

/** Cuts in their order, down the left column and then the right. */
function inTwoColumns(rows: readonly string[]): readonly Block[] {
  if (rows.length === 0) return [];
  const half = Math.ceil(rows.length / 2);
  return [
    tableBlock([
      ['cuts in order', ''],
      ...Array.from({ length: half }, (_, i) => [rows[i]!, rows[half + i] ?? '']),
    ]),
  ];
}

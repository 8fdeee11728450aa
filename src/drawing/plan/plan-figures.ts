import type { Block, FigureKey } from '../../shop/index.js';
import {
  barFigure,
  clampFigure,
  feetFigure,
  glueFigure,
  layoutFigure,
  markingFigure,
  workFigure,
} from '../figure/index.js';
import { type DrawnFigure, type FlowBlock, figureRows } from '../flow/index.js';
import { cardFigure } from '../set-up/index.js';
import type { View } from '../view/index.js';
import type { PlanParts } from './plan-parts.js';

/**
 * Blocks of a paper with every figure drawn in its place, those that follow each other side by side.
 *
 * @param picture of the whole piece, isometric
 * @param room width of the page's live area, mm
 */
export function withFigures(
  blocks: readonly Block[],
  parts: PlanParts,
  picture: View,
  room: number,
): readonly FlowBlock[] {
  const found: FlowBlock[] = [];
  let together: DrawnFigure[] = [];
  const set = () => {
    found.push(...figureRows(together, room));
    together = [];
  };
  for (const block of blocks) {
    if (block.kind === 'figure') together.push(drawn(block.figure, parts, picture, room));
    else {
      set();
      if (block.kind === 'bars') found.push(...block.rows.map((row) => barFigure(row, room)));
      else found.push(block);
    }
  }
  set();
  return found;
}

/** @throws RangeError when a paper asks for a drawing of something that is not there */
function drawn(
  key: FigureKey,
  { papers, solids, units }: PlanParts,
  picture: View,
  room: number,
): DrawnFigure {
  switch (key.of) {
    case 'card':
      return cardFigure(
        there(
          papers.cards.find(({ id }) => id === key.card),
          key,
        ),
        units,
      );
    case 'marking out': {
      const boards = solids.design.boards.map(({ board }) => board);
      const card = there(
        papers.cards.find(({ id }) => id === key.card),
        key,
      );
      return there(markingFigure(card, boards, key, units), key);
    }
    case 'work step':
      return workFigure(solids, papers, key);
    case 'glue-up step':
      return glueFigure(
        solids,
        papers.glueUp,
        there(
          papers.glueUp.steps.find(({ id }) => id === key.step),
          key,
        ),
      );
    case 'feet':
      return there(papers.strength && feetFigure(papers.strength), key);
    case 'clamps':
      return there(clampFigure(picture, papers.clamps, key.stage), key);
    case 'layout': {
      const layout = there(papers.layouts[key.layout], key);
      return layoutFigure(there(layout.plan.pieces[key.piece], key), layout, units, room);
    }
    default:
      return key satisfies never;
  }
}

function there<T>(thing: T | undefined, key: FigureKey): T {
  if (thing === undefined) throw new RangeError(`a paper has a figure of nothing: ${JSON.stringify(key)}`);
  return thing;
}

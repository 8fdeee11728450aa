import type { Board } from '../../board/index.js';
import { add, frame, type Vec2, type Vec3, WORLD } from '../../frame/index.js';
import { boardStates, hornsOf, type ShopPapers, type WorkStep } from '../../shop/index.js';
import { boardOf, featureEdges, type Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { letters, wrappedText } from '../sheet/index.js';
import { VIEW_FRAMES, type View, viewBox, viewLines, viewOf } from '../view/index.js';
import { lookOf, seenParts } from './picture.js';

/** Of a picture, mm: four stand side by side on a page. */
const MOST: readonly [width: number, height: number] = [39, 23];

/** Of the words below it. */
const WORDS = 4.5;

/** A board as a step of the work leaves it, seen from the side that was worked on; for a dry fit the boards so far. */
export function workFigure(
  solids: Solids,
  papers: ShopPapers,
  { step: number, said }: { readonly step: number; readonly said: string },
): DrawnFigure {
  const step = papers.order.steps.find((one) => one.number === number)!;
  const view = step.board === undefined ? boardsSoFar(solids, papers) : boardAfter(solids, papers, step);
  const box = viewBox(view);
  const factor = Math.min(MOST[0] / (box.maxX - box.minX), MOST[1] / (box.maxY - box.minY));
  const height = factor * (box.maxY - box.minY) + WORDS;
  return {
    kind: 'drawn',
    said: `What step ${said} leaves.`,
    width: MOST[0],
    height,
    draw: ([x, y]) => {
      const at: Vec2 = [x + (MOST[0] - factor * (box.minX + box.maxX)) / 2, y + WORDS - factor * box.minY];
      const [words = ''] = wrappedText(said, MOST[0], 2.5, true);
      return [
        ...viewLines(view, { at, factor }),
        letters([x + MOST[0] / 2, y], words, { anchor: 'middle', bold: true }),
      ];
    },
  };
}

function boardsSoFar(solids: Solids, { order }: ShopPapers): View {
  const there = new Set([...solids.boards.keys()].filter((id) => !order.fitAfter.has(id)));
  const parts = seenParts(solids).filter(({ id }) => there.has(id));
  return viewOf(parts, VIEW_FRAMES.isometric, { hidden: false, toned: 'standing' });
}

/** Which state of the outline a step leads to. */
const STATES: Partial<Readonly<Record<WorkStep['kind'], string>>> = {
  'trim horn': 'horns off',
  'cut ends': 'ends cut',
  outline: 'outline cut',
  bevel: 'bevels cut',
  opening: 'openings cut',
};

function boardAfter({ kernel, boards }: Solids, { order, holdings }: ShopPapers, step: WorkStep): View {
  const finished = boards.get(step.board!)!.board;
  const done = order.steps.filter(({ board, number }) => board === step.board && number <= step.number);
  const states = boardStates(finished, hornsOf(finished.id, holdings));
  const reached = done.flatMap(({ kind }) => states.find(({ name }) => name === STATES[kind]) ?? []);
  const state = reached.at(-1) ?? states[0]!;
  const cut = new Set(done.flatMap(({ cuts }) => cuts));
  const kept = <T extends { readonly id: string }>(all: readonly T[]) => all.filter(({ id }) => cut.has(id));
  const board: Board = {
    ...state.board,
    mortises: kept(finished.mortises),
    holes: kept(finished.holes),
    slots: kept(finished.slots),
    grooves: kept(finished.grooves),
  };
  const body = boardOf(kernel, board);
  const look = lookOf({ ...boards.get(step.board!)!, place: WORLD });
  const part = { id: board.id, solid: featureEdges(body), look };
  return viewOf([part], seenFrom(finished, new Set(step.cuts)), { hidden: false, toned: 'apart' });
}

/** From above and the front, turned so that what was cut faces the viewer. */
function seenFrom({ mortises, holes, slots, grooves }: Board, cuts: ReadonlySet<string>) {
  const out = [...mortises, ...holes, ...slots, ...grooves]
    .filter(({ id }) => cuts.has(id))
    .reduce<Vec3>((sum, { at }) => add(sum, at.z), [0, 0, 0]);
  const side = (part: number, usual: 1 | -1) => (Math.abs(part) < 0.2 ? usual : Math.sign(part));
  const up = side(out[2], 1);
  const [dx, dy] = [side(out[0], 1), side(out[1], up > 0 ? -1 : 1)];
  return frame([0, 0, 0], [dx, dy, up], [-dy * up, dx * up, 0]);
}

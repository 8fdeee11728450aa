import type { Board } from '../../board/index.js';
import { SAME_POINT } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';
import { traitsOf } from './board-traits.js';
import { boardKinds } from './same-boards.js';

/** A template to rout the outline or the openings of a board along; a left and a right board share one, turned over. mm */
export interface OutlineTemplate {
  readonly id: string;
  readonly boards: readonly string[];
  readonly material: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** Sheet taken for templates, and what it stands beyond the part: common practice, no source. mm */
const TEMPLATE = {
  material: 'medium density fibreboard',
  thickness: 6,
  /** Thick enough for a bearing or a bush to run on, thin enough to leave the cutter its reach. */
  least: 5,
  most: 9,
  /** Beyond each end, for the router to run in and out. */
  beyondEnds: 50,
  /** Beyond each edge, for screws and clamps. */
  beyondEdges: 20,
} as const;

/** A template for every shape of board that is not cut with straight saw cuts alone, from the sheet at hand for it. */
export function outlineTemplates(boards: readonly Board[], shop: Shop): readonly OutlineTemplate[] {
  const kinds = boardKinds(boards);
  const order = kinds.map((kind) => kind.boards[0]!.id);
  const { beyondEnds, beyondEdges } = TEMPLATE;
  const sheet = shop.sheets.find(
    ({ name, thickness }) =>
      name === TEMPLATE.material && thickness >= TEMPLATE.least && thickness <= TEMPLATE.most,
  );
  return kinds
    .filter(({ mirrorOf }, i) => mirrorOf === undefined || order.indexOf(mirrorOf) > i)
    .filter(({ boards: [first] }) => isRouted(first!))
    .map((kind): OutlineTemplate => {
      const { id, blank } = kind.boards[0]!;
      const mirrored = kinds.find((other) => other.boards[0]!.id === kind.mirrorOf)?.boards ?? [];
      return {
        id: `${id}-template`,
        boards: [...kind.boards, ...mirrored].map((board) => board.id),
        material: TEMPLATE.material,
        thickness: sheet?.thickness ?? TEMPLATE.thickness,
        length: blank.length + 2 * beyondEnds,
        width: blank.width + 2 * beyondEdges,
      };
    });
}

/** An arc, an opening, or an inner corner: what a saw cannot cut from edge to edge. */
const isRouted = (board: Board): boolean =>
  board.openings.length > 0 ||
  traitsOf(board).some(({ kind }) => kind === 'outline arc') ||
  board.outline.some((corner, i) => {
    const before = board.outline.at(i - 1)!;
    const after = board.outline[(i + 1) % board.outline.length]!;
    const turn = (corner.x - before.x) * (after.y - corner.y) - (corner.y - before.y) * (after.x - corner.x);
    return turn < -SAME_POINT;
  });

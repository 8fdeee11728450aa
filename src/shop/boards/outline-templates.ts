import { type Board, entersWideFace } from '../../board/index.js';
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
  /** Thickness of the boards: a cutter that follows the template cuts all of it. */
  readonly cuts: number;
}

/** A template to print: boards of one shape, and those of its mirror image, for which it is turned over. */
export interface PrintedTemplate {
  readonly serves: readonly Board[];
  readonly turnedOver: readonly Board[];
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

/** A template to print for every shape of board that is routed along its outline, or that has something cut into a wide face. */
export const printedTemplates = (boards: readonly Board[]): readonly PrintedTemplate[] =>
  shapes(boards).filter(
    ({ serves: [board] }) =>
      isRouted(board!) ||
      [...board!.mortises, ...board!.holes, ...board!.slots].some(({ face }) => entersWideFace(face)),
  );

/** A template for every shape of board that is not cut with straight saw cuts alone, from the sheet at hand for it. */
export function outlineTemplates(boards: readonly Board[], shop: Shop): readonly OutlineTemplate[] {
  const { beyondEnds, beyondEdges } = TEMPLATE;
  const sheet = shop.sheets.find(
    ({ name, thickness }) =>
      name === TEMPLATE.material && thickness >= TEMPLATE.least && thickness <= TEMPLATE.most,
  );
  return shapes(boards)
    .filter(({ serves: [first] }) => isRouted(first!))
    .map(({ serves, turnedOver }): OutlineTemplate => {
      const { id, blank } = serves[0]!;
      return {
        id: `${id}-template`,
        boards: [...serves, ...turnedOver].map((board) => board.id),
        cuts: blank.thickness,
        material: TEMPLATE.material,
        thickness: sheet?.thickness ?? TEMPLATE.thickness,
        length: blank.length + 2 * beyondEnds,
        width: blank.width + 2 * beyondEdges,
      };
    });
}

/** Each shape once, with its mirror image. */
function shapes(boards: readonly Board[]): readonly PrintedTemplate[] {
  const kinds = boardKinds(boards);
  const order = kinds.map((kind) => kind.boards[0]!.id);
  return kinds
    .filter(({ mirrorOf }, i) => mirrorOf === undefined || order.indexOf(mirrorOf) > i)
    .map((kind) => ({
      serves: kind.boards,
      turnedOver: kinds.find((other) => other.boards[0]!.id === kind.mirrorOf)?.boards ?? [],
    }));
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

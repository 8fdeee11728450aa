import { onceForEach } from '../once.js';
import type { Board } from './board.js';

/** Shapes kept at once: more than the boards of a large design at all their stages. */
const KEPT = 1000;

/**
 * Work that is done once for each shape of board: equal boards share it, and one board at stages that do not differ.
 *
 * @param work may look at blank, outline, openings and bevels, and at nothing else of the board
 */
export function onceAShape<T>(work: (board: Board) => T): (board: Board) => T {
  const known = new Map<string, T>();
  return (board) => {
    const shape = shapeText(board);
    const found = known.get(shape);
    if (found !== undefined) return found;
    // a long-lived page must not keep every design it ever drew
    if (known.size >= KEPT) known.clear();
    const worked = work(board);
    known.set(shape, worked);
    return worked;
  };
}

/** The shape of a board in words, without its mortises and other cuts. */
export const shapeText = (board: Board): string => shapeOf(board).text;

const shapeOf = onceForEach(({ blank, outline, openings, bevels }: Board) => ({
  text: JSON.stringify([blank, outline, openings, bevels]),
}));

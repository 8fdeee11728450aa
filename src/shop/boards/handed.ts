import { blankMiddle, type Design } from '../../assembly/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { boardKinds } from './same-boards.js';

export type Hand = 'left' | 'right';

/**
 * Boards that have a mirror image in the design, each with its hand: left is the one that stands farther to the left as seen
 * by the person in front, or nearer to the person, or lower, when that does not tell them apart.
 */
export function handsOf(design: Design): ReadonlyMap<string, Hand> {
  const placed = new Map(design.boards.map((one) => [one.board.id, one]));
  const kinds = boardKinds(design.boards.map(({ board }) => board));
  return new Map(
    kinds.flatMap((kind) => {
      const mirror = kinds.find(({ boards }) => boards[0]!.id === kind.mirrorOf);
      if (!mirror) return [];
      const isLeft = before(
        blankMiddle(placed.get(kind.boards[0]!.id)!),
        blankMiddle(placed.get(mirror.boards[0]!.id)!),
      );
      return kind.boards.map(({ id }) => [id, isLeft ? 'left' : 'right'] as const);
    }),
  );
}

const before = (a: readonly number[], b: readonly number[]): boolean => {
  const at = a.findIndex((one, i) => Math.abs(one - b[i]!) > SAME_POINT);
  return at >= 0 && a[at]! < b[at]!;
};

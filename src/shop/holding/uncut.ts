import type { Design } from '../../assembly/index.js';
import { type Mortise, mouthOf } from '../../board/index.js';
import { type Say, speaker } from '../../length/index.js';
import type { BrokenLimit, Holding, LimitCode } from './holding.js';

/** A mortise that cannot be cut with the shop at hand, the limit it breaks, and what would cure it. */
export interface Uncut extends Omit<BrokenLimit, 'code'> {
  readonly code: `cannot-be-cut-${LimitCode}` | 'mortise-without-mouth';
  readonly board: string;
  /** The reason alone, where the mortise is named already. */
  readonly why: string;
  readonly mortise: Mortise;
}

/**
 * Every mortise that cannot be cut with the router and jig at hand, once for each limit it breaks. None of them stands on a
 * set-up card or in the order of work.
 *
 * @param say voice of the messages; millimetres when left out
 */
export const uncutMortises = (
  design: Design,
  holdings: readonly Holding[],
  say: Say = speaker('mm'),
): readonly Uncut[] => [
  ...unheld(design, holdings).map(
    ({ board, mortise }): Uncut => ({ mortise, ...withoutMouth(board, mortise, say) }),
  ),
  ...holdings.flatMap(({ board, mortise, broken }) =>
    broken.map(
      (limit): Uncut => ({
        ...limit,
        board,
        mortise,
        why: limit.message,
        code: `cannot-be-cut-${limit.code}`,
        message: `mortise ${mortise.id} in ${board} cannot be cut with the router and jig at hand: ${limit.message}`,
      }),
    ),
  ),
];

function withoutMouth(board: string, mortise: Mortise, say: Say): Omit<Uncut, 'mortise'> {
  const leans = mortise.faceNormal !== undefined;
  const why = leans
    ? `leans ${say.angle(mouthOf(mortise).leanDeg)} from its face, and no face square to its axis is there before that face is cut: a router stands square to its cutter`
    : 'has no flat face with a straight edge round its mouth at any stage: neither a jig nor a router can be set on it';
  return {
    board,
    code: 'mortise-without-mouth',
    measured: 0,
    limit: mortise.length,
    why: `it ${why}`,
    message: `mortise ${mortise.id} in ${board} ${why}`,
    remedy: leans ? "turn the joint's axis square to the face" : 'move it onto a flat face',
  };
}

/** The mortises of a design that no stage shows a mouth for: their face is not flat, or not wide enough. */
export function unheld(
  design: Design,
  held: readonly Holding[],
): readonly { board: string; mortise: Mortise }[] {
  const known = new Set(held.map((one) => `${one.board} ${one.mortise.id}`));
  return design.boards.flatMap(({ board }) =>
    board.mortises
      .filter((mortise) => !known.has(`${board.id} ${mortise.id}`))
      .map((mortise) => ({ board: board.id, mortise })),
  );
}

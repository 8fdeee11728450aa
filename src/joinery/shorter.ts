import type { Pocket } from '../board/index.js';
import type { Give, Laid } from './layout.js';
import { type InBoard, isJoint, type Meeting, tooNear } from './meetings.js';
import { pocketsIn } from './parts.js';

/** Depths are given to this, mm. */
const DEPTH_STEP = 0.5;

/** Both mortises shallower in the same share, or one alone, until the wood kept is between them. */
export function shorter(
  laid: readonly Laid[],
  { one, other }: Meeting,
  yielding: readonly InBoard[],
): readonly Partial<Give>[] | undefined {
  const stuck = ({ index, which }: InBoard) => {
    const { draft, give } = laid[index]!;
    return (
      draft.options.depths?.[draft.sides[which]!.board.id] !== undefined || give.mitres[which] !== undefined
    );
  };
  if (yielding.some(stuck)) return undefined;
  const pockets = (joint: InBoard, share: number): readonly Pocket[] => {
    const own = pocketsIn(laid[joint.index]!, joint.which);
    return yielding.includes(joint) ? own.map((pocket) => ({ ...pocket, depth: pocket.depth * share })) : own;
  };
  const meet = (share: number): boolean => {
    const second = isJoint(other) ? laid[other.index]! : undefined;
    const ofOther = isJoint(other) ? pockets(other, share) : [other];
    return tooNear(laid[one.index]!, pockets(one, share), second, ofOther);
  };
  if (meet(0.02)) return undefined;
  let [clear, near] = [0.02, 1];
  while (near - clear > 1e-4) {
    const middle = (clear + near) / 2;
    if (meet(middle)) near = middle;
    else clear = middle;
  }
  return yielding.map(({ index, which }) => {
    const depth = laid[index]!.depths[which] * clear;
    const most = Math.floor((depth + 0.01) / DEPTH_STEP) * DEPTH_STEP;
    return { most: which === 0 ? [most, undefined] : [undefined, most] };
  });
}

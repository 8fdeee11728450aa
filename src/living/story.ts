import type { LivingState } from '../files/index.js';

/** The states a person went through, and where in them the page stands. */
export interface Story {
  readonly now: () => LivingState;
  /** While a slider is dragged: shown, and not a step to go back to. */
  readonly touch: (state: LivingState) => void;
  /** A step to go back to. */
  readonly step: (state: LivingState) => void;
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  readonly canUndo: () => boolean;
  readonly canRedo: () => boolean;
}

/** Steps that can be taken back; a page that lives long must not keep them all. */
const MOST = 200;

export function storyOf(start: LivingState): Story {
  let steps: readonly LivingState[] = [start];
  let at = 0;
  let touched: LivingState | undefined;
  const go = (by: -1 | 1): boolean => {
    const to = at + by;
    if (!steps[to]) return false;
    touched = undefined;
    at = to;
    return true;
  };
  return {
    now: () => touched ?? steps[at]!,
    touch: (state) => {
      touched = state;
    },
    step: (state) => {
      touched = undefined;
      if (sameState(state, steps[at]!)) return;
      steps = [...steps.slice(0, at + 1), state].slice(-MOST);
      at = steps.length - 1;
    },
    undo: () => go(-1),
    redo: () => go(1),
    canUndo: () => at > 0,
    canRedo: () => at < steps.length - 1,
  };
}

/** Whether two states are told alike, in whatever order their sizes were given. */
export const sameState = (a: LivingState, b: LivingState): boolean => told(a) === told(b);

const told = ({ design, told: piece, given, units, shop, bush }: LivingState): string =>
  JSON.stringify([design, piece?.text, Object.entries(given).toSorted(), units, shop?.text, bush]);

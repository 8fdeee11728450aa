import { type Choices, stepsOf } from '../over/index.js';
import type { PreviewData } from '../told/index.js';
import { onPage, say } from './on-page.js';

/** Shows the piece being put together, step by step or on and on. */
export interface Player {
  /** Goes to a step and shows its move; undefined: everything together. */
  readonly goTo: (step: number | undefined) => void;
  /** The step before or after; after the last, and before the first, everything is together. */
  readonly by: (by: 1 | -1) => void;
  /** Plays all that is left, from the first step when all is together; or pauses. */
  readonly toggle: () => void;
  readonly pause: () => void;
}

/** What a player needs of the page at work. */
export interface Playable {
  readonly data: PreviewData;
  readonly now: () => Choices;
  readonly change: (by: Partial<Choices>) => void;
  /** Brings all of the piece into the picture, wherever its boards stand. */
  readonly frame: () => void;
}

/** A move, the rest after it, and how long a step stands where nothing may move. */
const [MOVE_MS, REST_MS, STAND_MS] = [1100, 350, 1800];

/** The person has asked their system for no movement. */
const STILL = window.matchMedia('(prefers-reduced-motion: reduce)');

const eased = (share: number): number => share * share * (3 - 2 * share);
const shareOf = (along: number): number => 0.5 - Math.sin(Math.asin(1 - 2 * along) / 3);

function wordsOf({ first, steps }: PreviewData, step: number | undefined): string {
  if (step === undefined) return 'All together.';
  const [what, at, all] =
    step < first.length
      ? (['Tenons', step, first] as const)
      : (['Step', step - first.length, steps] as const);
  return `${what} ${at + 1} of ${all.length}: ${all[at]!.text}`;
}

export function playerOf(page: Playable): Player {
  let run = 0;
  let playing = false;
  const showPlaying = (on: boolean): void => {
    playing = on;
    onPage('play').textContent = on ? 'pause' : 'play';
  };
  const pause = (): void => {
    run += 1;
    showPlaying(false);
  };
  const place = (step: number | undefined, along: number): void => {
    const before = page.now().step;
    page.change({ step, along, apart: 0 });
    say(wordsOf(page.data, step));
    if ((step === undefined) !== (before === undefined)) page.frame();
  };
  /** Moves from where the step is to its end, then does what comes next; another move, or another choice, ends it. */
  const move = (then: () => void): void => {
    const { step, along } = page.now();
    run += 1;
    const own = run;
    const mine = (): boolean => {
      if (own !== run) return false;
      if (page.now().step === step) return true;
      pause();
      return false;
    };
    const later = (rest: number): void => void setTimeout(() => mine() && then(), rest);
    if (STILL.matches) {
      page.change({ along: 1 });
      later(STAND_MS);
      return;
    }
    const since = performance.now() - MOVE_MS * shareOf(along);
    const go = (at: number): void => {
      if (!mine()) return;
      const share = Math.min(1, Math.max(0, (at - since) / MOVE_MS));
      page.change({ along: eased(share) });
      if (share < 1) requestAnimationFrame(go);
      else later(REST_MS);
    };
    requestAnimationFrame(go);
  };
  const next = (): void => {
    const step = (page.now().step ?? -1) + 1;
    if (step < stepsOf(page.data).length) {
      place(step, 0);
      move(next);
    } else {
      pause();
      place(undefined, 1);
    }
  };
  const goTo = (step: number | undefined): void => {
    pause();
    place(step, step === undefined || STILL.matches ? 1 : 0);
    if (page.now().along < 1) move(() => {});
  };
  return {
    goTo,
    by: (by) => {
      const count = stepsOf(page.data).length;
      if (count === 0) return;
      const { step } = page.now();
      const to = step === undefined ? (by > 0 ? 0 : count - 1) : step + by;
      goTo(to < 0 || to >= count ? undefined : to);
    },
    toggle: () => {
      const { step, along } = page.now();
      if (playing) pause();
      else if (stepsOf(page.data).length > 0) {
        showPlaying(true);
        if (step === undefined || along === 1) next();
        else move(next);
      }
    },
    pause,
  };
}

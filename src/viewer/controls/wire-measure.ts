import type { Pixel } from '../over/index.js';
import { measuredWords, nameOfSpot } from '../over/index.js';
import type { Spot } from '../piece/index.js';
import type { Stage } from '../stage/index.js';
import type { Looker } from './looker.js';
import { onPage, say } from './on-page.js';

/** How near a corner or an edge must be to be meant, by mouse and by finger, in pixels. */
const [NEAR, NEAR_FINGER] = [10, 22];

/** A move of the cross by one press of a key, with and without Shift, in pixels. */
const [FINE, COARSE] = [1, 12];

const MOVES: Readonly<Record<string, Pixel>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Measuring from spot to spot. */
export interface Measure {
  readonly toggle: () => void;
  readonly aim: (at: Pixel) => void;
  readonly set: (at: Pixel, finger: boolean) => void;
  /** @returns whether the key was meant for measuring */
  readonly key: (event: KeyboardEvent) => boolean;
}

export function wireMeasure(looker: Looker, stage: Stage): Measure {
  const { change, now } = looker;
  const spotAt = ([x, y]: Pixel, reach = NEAR): Spot | undefined => stage.spot(x, y, reach, now().seeThrough);
  const toggle = (): void => {
    const measuring = !now().measuring;
    change({ measuring, spots: [], aim: undefined, cross: undefined, hovered: new Set() });
    onPage('under').textContent = '';
    say(measuring ? 'Measuring: choose two corners, edges or faces.' : '');
  };
  const put = (spot: Spot | undefined): void => {
    if (!spot) {
      say('Nothing is there: choose a corner, an edge or a face.');
      return;
    }
    const before = now().spots;
    const spots = before.length === 1 ? [before[0]!, spot] : [spot];
    change({ spots, aim: undefined });
    const [from, to] = spots;
    say(
      from && to
        ? measuredWords(looker.data, [from, to])
        : `From the ${nameOfSpot(looker.data, spot)}; now choose where to.`,
    );
  };
  const key = ({ key: name, shiftKey }: KeyboardEvent): boolean => {
    if (!now().measuring) return false;
    const { clientWidth, clientHeight } = stage.canvas;
    const [x, y] = now().cross ?? [clientWidth / 2, clientHeight / 2];
    const move = MOVES[name];
    if (move) {
      const by = shiftKey ? FINE : COARSE;
      const cross: Pixel = [
        Math.min(clientWidth, Math.max(0, x + by * move[0])),
        Math.min(clientHeight, Math.max(0, y + by * move[1])),
      ];
      const aim = spotAt(cross);
      change({ cross, aim });
      say(aim ? `At the ${nameOfSpot(looker.data, aim)}.` : 'At nothing.');
    } else if (name === 'Enter') put(spotAt([x, y]));
    else if (name === 'Escape') toggle();
    else return false;
    return true;
  };
  onPage('measure').addEventListener('click', toggle);
  return {
    toggle,
    key,
    aim: (at) => {
      const aim = spotAt(at);
      change({ aim, cross: undefined });
      onPage('under').textContent = aim ? nameOfSpot(looker.data, aim) : '';
    },
    set: (at, finger) => put(spotAt(at, finger ? NEAR_FINGER : NEAR)),
  };
}

import type { Answer, Glance, Judge, Unsound } from './answer.js';
import { type Dimension, type Side, stepsTo, valueAt } from './dimension.js';

/** Full verdicts asked for on each side of the chosen value, evenly spread, before ends are looked for. */
const FULL_LOOKS = 4;

/** Places on each side where the data alone are asked: where their answer changes, a full verdict is asked for. */
const GLANCES = 24;

/** Values of a dimension that are sound, from one end to the other, the smaller first. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** What was found just beyond the end of a span. */
export interface Beyond extends Unsound {
  /** The value that was tried: a step from the last sound one. */
  readonly value: number;
}

/** One dimension moved by itself. */
export interface Alone {
  readonly dimension: Dimension;
  /** The sound values round the chosen one. */
  readonly span: Span;
  /** What ends the span below and above; undefined where the stated range ends first. */
  readonly below: Beyond | undefined;
  readonly above: Beyond | undefined;
  /** Sound again further away, behind values that are not. */
  readonly again: readonly Span[];
  /** Values between which nothing was tried lie no further apart than this. */
  readonly looked: number;
}

/**
 * How far one dimension may be moved while the others stay.
 *
 * Both sides are looked at by full verdicts at a few places and by the data alone at many; wherever two neighbours differ,
 * the change is found by halving, so that a full verdict stands on either side of every end.
 */
export async function aloneOf(dimension: Dimension, judge: Judge, glance: Glance): Promise<Alone> {
  const [down, up] = await Promise.all([
    oneSide(dimension, -1, judge, glance),
    oneSide(dimension, 1, judge, glance),
  ]);
  return {
    dimension,
    span: { from: down.last, to: up.last },
    below: down.beyond,
    above: up.beyond,
    again: [
      ...down.again.map(([far, near]) => ({ from: far, to: near })).reverse(),
      ...up.again.map(([near, far]) => ({ from: near, to: far })),
    ],
    looked: Math.max(down.looked, up.looked),
  };
}

interface OneSide {
  readonly last: number;
  readonly beyond: Beyond | undefined;
  /** Nearest end first, then the furthest. */
  readonly again: readonly (readonly [number, number])[];
  readonly looked: number;
}

async function oneSide(dimension: Dimension, side: Side, judge: Judge, glance: Glance): Promise<OneSide> {
  const all = stepsTo(dimension, side);
  const at = (steps: number) => valueAt(dimension, side, steps);
  const known = new Map<number, Answer>();
  const ask = async (steps: number): Promise<Answer> => {
    const answer = known.get(steps) ?? (await judge({ [dimension.name]: at(steps) }));
    known.set(steps, answer);
    return answer;
  };
  const places = spread(all, GLANCES);
  const glances = places.map((steps) => glance({ [dimension.name]: at(steps) }));
  const changes = places.flatMap((steps, i) =>
    i > 0 && glances[i] !== glances[i - 1] ? [places[i - 1]!, steps] : [],
  );
  await Promise.all([...new Set([...spread(all, FULL_LOOKS), ...changes])].map(ask));
  const tried = [...known.keys()].toSorted((a, b) => a - b);
  await Promise.all(tried.slice(1).map((steps, i) => halve(tried[i]!, steps, ask)));
  return read(at, known);
}

/** Even places from 0 to the end, each once. */
const spread = (all: number, parts: number): readonly number[] => [
  ...new Set(Array.from({ length: parts + 1 }, (_, i) => Math.round((all * i) / parts))),
];

/** Where two places differ, asks between them until the change lies within one step. */
async function halve(near: number, far: number, ask: (steps: number) => Promise<Answer>): Promise<void> {
  let [from, to] = [near, far];
  const wanted = (await ask(from)).sound;
  if ((await ask(to)).sound === wanted) return;
  while (to - from > 1) {
    const middle = Math.floor((from + to) / 2);
    if ((await ask(middle)).sound === wanted) from = middle;
    else to = middle;
  }
}

function read(at: (steps: number) => number, known: ReadonlyMap<number, Answer>): OneSide {
  const tried = [...known].toSorted(([a], [b]) => a - b);
  const first = tried.findIndex(([, { sound }]) => !sound);
  const beyond = first < 0 ? undefined : tried[first]!;
  const again: [number, number][] = [];
  for (const [i, [steps, { sound }]] of tried.entries()) {
    if (!sound || first < 0 || i < first) continue;
    if (tried[i - 1]![1].sound) again.at(-1)![1] = at(steps);
    else again.push([at(steps), at(steps)]);
  }
  const gaps = tried.slice(1).map(([steps], i) => Math.abs(at(steps) - at(tried[i]![0])));
  return {
    last: at(first < 0 ? tried.at(-1)![0] : tried[first - 1]![0]),
    beyond: beyond && { ...(beyond[1] as Unsound), value: at(beyond[0]) },
    again,
    looked: Math.max(0, ...gaps),
  };
}

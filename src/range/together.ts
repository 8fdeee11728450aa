import type { Alone } from './alone.js';
import type { At, Judge, Unsound } from './answer.js';
import { type Dimension, stepsTo, valueAt } from './dimension.js';

/** Random verdicts asked for at once; the figure is part of the result, whatever number of workers there are. */
const AT_ONCE = 16;

/** All dimensions moved at once, each within its own limits. */
export interface Box {
  readonly limits: readonly BoxLimits[];
  /** Random full verdicts inside the box: every one of them is sound. */
  readonly tried: number;
  /** Verdicts that were not sound and for which a limit was drawn in. */
  readonly broke: number;
}

export interface BoxLimits {
  readonly dimension: Dimension;
  readonly from: number;
  readonly to: number;
  /** What drew the limits in last; undefined where they are those of the dimension by itself. */
  readonly drawnIn: Unsound | undefined;
}

/**
 * A box round the chosen values that so many random full verdicts do not break.
 *
 * It begins as wide as each dimension may be moved alone, less what is known to be unsound. Each place that is not sound is shut out by drawing in the one limit
 * that loses the least of the box; the places found sound that are still inside count on, as they are spread evenly over what
 * is left.
 *
 * @param wanted sound places inside the box
 */
export async function togetherOf(
  alone: readonly Alone[],
  wanted: number,
  judge: Judge,
  known: readonly (readonly [At, Unsound])[],
  seed = 1,
): Promise<Box> {
  let limits: BoxLimits[] = alone.map(({ dimension, span }) => ({ dimension, ...span, drawnIn: undefined }));
  const chosen = Object.fromEntries(alone.map(({ dimension: { name, value } }) => [name, value]));
  for (const [at, why] of known) {
    const place = { ...chosen, ...at };
    if (inside(limits, place)) limits = drawnIn(limits, place, why);
  }
  let sound: At[] = [];
  let broke = 0;
  const draw = fractions(seed);
  while (sound.length < wanted && limits.some(({ from, to }) => from < to)) {
    const places = Array.from({ length: Math.min(AT_ONCE, wanted - sound.length) }, () =>
      placeIn(limits, draw),
    );
    const answers = await Promise.all(places.map(judge));
    for (const [i, answer] of answers.entries()) {
      const place = places[i]!;
      // shut out already by one before it
      if (!inside(limits, place)) continue;
      if (answer.sound) {
        sound.push(place);
        continue;
      }
      broke += 1;
      limits = drawnIn(limits, place, answer);
      sound = sound.filter((one) => inside(limits, one));
    }
  }
  return { limits, tried: sound.length, broke };
}

function placeIn(limits: readonly BoxLimits[], draw: () => number): At {
  const places = limits.map(({ dimension, from, to }): [string, number] => {
    const start: Dimension = { ...dimension, value: from, most: to };
    return [dimension.name, valueAt(start, 1, Math.floor(draw() * (stepsTo(start, 1) + 1)))];
  });
  return Object.fromEntries(places);
}

const inside = (limits: readonly BoxLimits[], place: At): boolean =>
  limits.every(({ dimension: { name }, from, to }) => place[name]! >= from && place[name]! <= to);

/** The limit is drawn in, to the step before the place, that leaves the largest share of the box. */
function drawnIn(limits: readonly BoxLimits[], place: At, why: Unsound): BoxLimits[] {
  let best: { readonly i: number; readonly limits: BoxLimits; readonly left: number } | undefined;
  for (const [i, one] of limits.entries()) {
    const { dimension, from, to } = one;
    const value = place[dimension.name]!;
    if (value === dimension.value) continue;
    const side = value < dimension.value ? 1 : -1;
    const start: Dimension = {
      ...dimension,
      value,
      least: Math.min(value, dimension.value),
      most: Math.max(value, dimension.value),
    };
    const end = valueAt(start, side, 1);
    const next: BoxLimits = { dimension, from: side > 0 ? end : from, to: side > 0 ? to : end, drawnIn: why };
    const left = (next.to - next.from + dimension.step) / (to - from + dimension.step);
    if (!best || left > best.left) best = { i, limits: next, left };
  }
  if (!best) throw new Error('the chosen values themselves are not sound');
  return limits.map((one, i) => (i === best.i ? best.limits : one));
}

/** Evenly spread fractions of one, the same for a seed: the multiplier of Park, Miller and Stockmeyer (CACM 36, 1993), from memory. */
function fractions(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

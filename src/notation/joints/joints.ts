import { JoinError } from '../../errors.js';
import { type Contact, contacts } from '../../joinery/index.js';
import { ALL_AXES, AXIS_WORDS, type Box, boardsCalled, type Stood } from '../places/index.js';
import { type PairEntry, type Phrase, Problem, partsOf, problemWith } from '../text/index.js';

/** Two boards that touch, the first one of those named first. */
export interface Touching {
  readonly a: Stood;
  readonly b: Stood;
  readonly patches: readonly Contact[];
}

/** All boards named by names joined by `and`, each once. */
export const allCalled = (phrase: Phrase, standing: readonly Stood[]): readonly Stood[] => [
  ...new Set(partsOf(phrase).flatMap((part) => boardsCalled(part, standing))),
];

/** Boxes nearer than this may touch, mm. */
const NEAR = 1;

/**
 * Every pair of `A to B` that touches.
 *
 * @throws Problem when one of A touches none of B, with the nearest and its gap
 */
export function touchingPairs({ a, b }: PairEntry, standing: readonly Stood[]): readonly Touching[] {
  const [ones, others] = [allCalled(a, standing), allCalled(b, standing)];
  const found: Touching[] = [];
  for (const one of ones) {
    let touches = false;
    for (const other of others) {
      if (other === one) continue;
      if (found.some((pair) => pair.a === other && pair.b === one)) {
        touches = true;
        continue;
      }
      if (gapBetween(one.box, other.box) > NEAR) continue;
      const patches = touch(one, other);
      if (patches instanceof JoinError) continue;
      touches = true;
      found.push({ a: one, b: other, patches });
    }
    if (!touches) throw untouched(a, b, one, others);
  }
  return found;
}

function touch(a: Stood, b: Stood): readonly Contact[] | JoinError {
  try {
    return contacts(a.placed, b.placed);
  } catch (error) {
    if (error instanceof JoinError && error.code === 'no-contact') return error;
    throw error;
  }
}

/** How far two boxes are apart in each direction, mm; 0 or less where they overlap. */
const gaps = (a: Box, b: Box): readonly number[] =>
  ALL_AXES.map((axis) => Math.max(b.min[axis] - a.max[axis], a.min[axis] - b.max[axis]));

/** How far two boxes are apart, mm; 0 where they meet. */
const gapBetween = (a: Box, b: Box): number => Math.hypot(...gaps(a, b).map((gap) => Math.max(0, gap)));

/** In which direction they are furthest apart. @example 'up-down' */
const farWay = (a: Box, b: Box): string =>
  AXIS_WORDS[gaps(a, b).reduce((most, gap, axis, all) => (gap > all[most]! ? axis : most), 0)]!;

function untouched(a: Phrase, b: Phrase, one: Stood, others: readonly Stood[]): Problem {
  const nearest = others
    .filter((other) => other !== one)
    .map((other) => ({ other, gap: gapBetween(one.box, other.box) }))
    .toSorted((p, q) => p.gap - q.gap)[0];
  if (!nearest) return problemWith(b, `'${one.name}' cannot be joined to itself`, 'name another board');
  const { other, gap } = nearest;
  const length = b.at.line === a.at.line ? b.at.column + b.value.length - a.at.column : a.value.length;
  const miss = gap <= NEAR ? touch(one, other) : undefined;
  return new Problem(
    a.at,
    length,
    miss instanceof JoinError
      ? (say) => `'${one.name}' touches no ${b.value}: ${miss.explain(say)}`
      : (say) =>
          `'${one.name}' touches no ${b.value}: the nearest, '${other.name}', is ${say.fine(gap)} away${gap > NEAR ? ` ${farWay(one.box, other.box)}` : ''}`,
    miss instanceof JoinError ? undefined : 'move one of them until they meet',
  );
}

import { eachAxis } from '../../frame/index.js';
import { type Phrase, partsOf, problemWith } from '../text/index.js';
import { type Named, named, type Spot, type Surroundings, sideSpot } from './place.js';
import { placePhrase } from './place-phrase.js';
import { ALL_AXES, type Axis, SIDES } from './sides.js';
import type { Box } from './stood.js';

/** One of two things a board reaches between. */
export interface PairEnd {
  /** Where the box of it stands, towards the other, mm. */
  readonly at: number;
  /** The boards whose faces the ends are cut to; none for the floor, the piece, or a side that was named. */
  readonly thing?: Named;
}

/** `between: A and B`, the lower first. */
export interface Pair {
  readonly axis: Axis;
  readonly low: PairEnd;
  readonly high: PairEnd;
  /** How far the board goes into both, mm. */
  readonly into: number;
  readonly phrase: Phrase;
}

/**
 * Two things and the direction that parts them.
 *
 * @param preferred the direction taken where several part them
 * @param taken directions that are told already
 * @throws Problem when nothing parts them
 */
export function pairOf(phrase: Phrase, around: Surroundings, preferred: Axis, taken: readonly Axis[]): Pair {
  const parts = partsOf(phrase);
  if (parts.length !== 2)
    throw problemWith(phrase, `'${phrase.value}' does not name two things`, `write 'left leg and right leg'`);
  const [a, b] = parts.map((part) => endOf(part, around));
  const gaps = ALL_AXES.filter((axis) => !taken.includes(axis)).map((axis) => ({
    axis,
    gap: Math.max(lowOf(b!, axis) - highOf(a!, axis), lowOf(a!, axis) - highOf(b!, axis)),
  }));
  const apart = gaps.filter(({ gap }) => gap > 0 && Number.isFinite(gap));
  const found =
    apart.find(({ axis }) => axis === preferred) ?? apart.toSorted((one, two) => two.gap - one.gap)[0];
  if (!found)
    throw problemWith(
      phrase,
      `nothing is between '${parts[0]!.value}' and '${parts[1]!.value}'`,
      'name two boards with room between them',
    );
  const { axis } = found;
  const [low, high] = lowOf(b!, axis) >= highOf(a!, axis) ? [a!, b!] : [b!, a!];
  return {
    axis,
    low: { at: highOf(low, axis), ...(low.thing && { thing: low.thing }) },
    high: { at: lowOf(high, axis), ...(high.thing && { thing: high.thing }) },
    into: 0,
    phrase,
  };
}

interface End {
  readonly box: Box;
  readonly spot?: Spot;
  readonly thing?: Named;
}

function endOf(phrase: Phrase, around: Surroundings): End {
  const told = placePhrase(phrase);
  if (told.side === undefined && !told.measure && told.of.value !== 'floor') {
    const thing = named(told.of, around);
    return { box: thing.box, thing };
  }
  const at = (spot: Spot): number => {
    if ('at' in spot) return spot.at;
    throw problemWith(phrase, `'${phrase.value}' leans`, 'name the board alone: its face is found');
  };
  if (told.of.value === 'floor')
    return flat(2, told.measure ? around.reckon.figure(told.measure.formula, 'length') : 0);
  if (told.side === undefined || told.side === 'middle' || told.measure)
    throw problemWith(phrase, `'${phrase.value}' is no side of a board`, 'name a board, or a side of one');
  const { axis } = SIDES[told.side];
  return flat(axis, at(sideSpot(named(told.of, around), told.side)));
}

/** A side alone: it parts in its own direction only. */
const flat = (axis: Axis, at: number): End => {
  const part = (far: number) => eachAxis((one) => (one === axis ? at : far));
  return { box: { min: part(Number.NEGATIVE_INFINITY), max: part(Number.POSITIVE_INFINITY) } };
};

const lowOf = ({ box }: End, axis: Axis): number => box.min[axis];
const highOf = ({ box }: End, axis: Axis): number => box.max[axis];

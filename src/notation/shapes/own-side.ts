import type { PlacedBoard } from '../../assembly/index.js';
import { faces } from '../../board/index.js';
import { dot, type Vec3 } from '../../frame/index.js';
import type { Reckoning } from '../formulas/index.js';
import { type Axes, isSide, placePhrase, SIDES, type Side } from '../places/index.js';
import { type Phrase, partsOf, problemWith } from '../text/index.js';

/** A board being shaped, and which of its directions the words left, front, top … mean. */
export interface Shaped {
  readonly placed: PlacedBoard;
  readonly axes: Axes;
  readonly reckon: Reckoning;
}

/** A side of a board in its own frame: 0 along the grain, 1 across, 2 through the thickness. */
export interface OwnSide {
  readonly side: Side;
  readonly axis: 0 | 1 | 2;
  readonly sign: 1 | -1;
  /** Where the side of the blank lies on that axis, mm. */
  readonly at: number;
  /** How long the blank is that way. */
  readonly whole: number;
}

export function ownSide({ placed, axes }: Shaped, side: Side): OwnSide {
  const { axis, sign } = SIDES[side];
  const own = axis === axes.grain ? 0 : axis === axes.edge ? 1 : 2;
  const way = [placed.place.x, placed.place.y, placed.place.z][own]!;
  const sense = (Math.sign(way[axis]) * sign) as 1 | -1;
  const { length, width, thickness } = placed.board.blank;
  const whole = [length, width, thickness][own]!;
  return { side, axis: own, sign: sense, at: sense < 0 ? 0 : whole, whole };
}

/** One side word. @throws Problem */
export function sideWord(phrase: Phrase): Side {
  if (isSide(phrase.value)) return phrase.value;
  throw problemWith(
    phrase,
    `'${phrase.value}' is no side of a board`,
    `write one of ${Object.keys(SIDES).join(', ')}`,
  );
}

/** Sides joined by `and`. */
export const sideWords = (phrase: Phrase): readonly Side[] => partsOf(phrase).map(sideWord);

/** Two sides that meet at a corner or arris: `back bottom`. @throws Problem */
export function cornerWords(phrase: Phrase): readonly [Side, Side] {
  const words = phrase.value.split(/\s+/);
  const [a, b] = words;
  if (words.length === 2 && isSide(a!) && isSide(b!) && SIDES[a].axis !== SIDES[b].axis) return [a, b];
  throw problemWith(phrase, `'${phrase.value}' is no corner`, `name two sides that meet, like 'back bottom'`);
}

/** A place on the board itself, measured from one of its sides: `40 short of front`, `105 below top`. */
export function ownPlace(phrase: Phrase, shaped: Shaped): { readonly axis: 0 | 1 | 2; readonly at: number } {
  const { measure, side, of, whole } = placePhrase(phrase);
  if (side === undefined || side === 'middle' || of.value !== '')
    throw problemWith(
      whole,
      `'${whole.value}' does not say which side of the board it is measured from`,
      `write '${measure ? measure.formula.value : '40'} short of top'`,
    );
  const own = ownSide(shaped, side);
  const by = measure ? shaped.reckon.figure(measure.formula, 'length') : 0;
  const outwards = measure?.relation === 'past' || (measure?.relation === 'above') === (side === 'top');
  const sense = measure?.relation === 'short of' ? -1 : outwards ? 1 : -1;
  return { axis: own.axis, at: own.at + sense * by * own.sign };
}

/** The face of a board that looks most a certain way of its own frame. */
export function faceToward({ placed: { board } }: Shaped, { axis, sign }: OwnSide): string {
  const way: Vec3 = [axis === 0 ? sign : 0, axis === 1 ? sign : 0, axis === 2 ? sign : 0];
  return faces(board).reduce((most, next) =>
    dot(next.frame.z, way) > dot(most.frame.z, way) + 1e-6 ? next : most,
  ).id;
}

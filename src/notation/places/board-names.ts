import { didYouMeanWord, type Phrase, Problem } from '../text/index.js';
import { type Axis, isSide, SIDES, type Side, sideOn } from './sides.js';
import type { Stood } from './stood.js';

/** A name taken apart: side words in any order, the number of a copy, and the rest. */
interface Parts {
  readonly sides: readonly Side[];
  readonly rest: readonly string[];
  readonly number: string | undefined;
}

function partsOfName(name: string): Parts {
  const words = name.split(/\s+/);
  const last = words.at(-1)!;
  const number = words.length > 1 && /^\d+$/.test(last) ? last : undefined;
  const named = number === undefined ? words : words.slice(0, -1);
  return { sides: named.filter(isSide), rest: named.filter((word) => !isSide(word)), number };
}

/** `legs` is `leg`; a word that is no plural stays. */
const singular = (word: string): readonly string[] =>
  word.endsWith('s') ? [word, word.slice(0, -1), word.replace(/es$/, '')] : [word];

/**
 * Whether a board is one of those a name stands for: `leg` is every leg, `left leg` every one on the left, `apron` every board whose
 * name ends so.
 */
function standsFor(asked: Parts, board: Parts): boolean {
  const { rest } = asked;
  if (asked.number !== undefined && asked.number !== board.number) return false;
  if (!asked.sides.every((side) => board.sides.includes(side))) return false;
  if (rest.length === 0 || rest.length > board.rest.length) return false;
  const end = board.rest.slice(-rest.length);
  return end.every((word, i) =>
    i === rest.length - 1 ? singular(rest[i]!).includes(word) : word === rest[i],
  );
}

/** A name that stands for no board above. */
export class NoBoard extends Problem {
  constructor(
    readonly phrase: Phrase,
    text: string,
    remedy: string,
  ) {
    super(phrase.at, phrase.value.length, text, remedy);
  }

  /** Whether a board called so, with its copies and images, might be the one. */
  mayBe(name: string): boolean {
    const [{ rest }, board] = [partsOfName(this.phrase.value.trim()), partsOfName(name)];
    return standsFor({ sides: [], rest: rest.length > 0 ? rest : board.rest, number: undefined }, board);
  }
}

/**
 * The boards a name stands for: the one called exactly so, or all it fits.
 *
 * @throws Problem when there is none among those that stand already
 */
export function boardsCalled(phrase: Phrase, standing: readonly Stood[]): readonly Stood[] {
  const name = phrase.value.trim().replace(/\s+/g, ' ');
  const exact = standing.filter((board) => board.name === name);
  if (exact.length > 0) return exact;
  const asked = partsOfName(name);
  const found = standing.filter((board) => standsFor(asked, partsOfName(board.name)));
  if (found.length > 0) return found;
  throw new NoBoard(
    phrase,
    `there is no board '${name}' above this line`,
    didYouMeanWord(name, [
      'piece',
      ...new Set(standing.flatMap((board) => [board.name, groupOf(board.name)])),
    ]),
  );
}

/** What all copies of a board are called together. @example groupOf('front left leg') // 'leg' */
const groupOf = (name: string): string => {
  const { rest } = partsOfName(name);
  return rest.length > 0 ? rest.join(' ') : name;
};

/** In which order side words of a name are written: `front left leg`. */
const ORDER: readonly Axis[] = [2, 1, 0];

/**
 * The name of a board and of its mirror image: a side word the name has is swapped, else the side it stands on is put before it.
 *
 * @param sign on which side of the middle the told board stands
 * @example namesOfPair('leg', 0, -1) // ['left leg', 'right leg']
 */
export function namesOfPair(name: string, axis: Axis, sign: 1 | -1): readonly [told: string, image: string] {
  const words = name.split(/\s+/);
  const leading = words.findIndex((word) => !isSide(word));
  const sides = words.slice(0, leading < 0 ? words.length : leading).filter(isSide);
  const rest = words.slice(sides.length);
  const own = sides.find((side) => SIDES[side].axis === axis) ?? sideOn(axis, sign);
  const others = sides.filter((side) => SIDES[side].axis !== axis);
  const named = (side: Side) =>
    [...[...others, side].toSorted((a, b) => rank(a) - rank(b)), ...rest].join(' ');
  return [named(own), named(sideOn(axis, SIDES[own].sign === 1 ? -1 : 1))];
}

const rank = (side: Side): number => ORDER.indexOf(SIDES[side].axis);

import { add, scale } from '../../frame/index.js';
import { MIRRORS, middleAt, namesOfPair, SIDES, type Stood, type Surroundings } from '../places/index.js';
import {
  type BoardEntry,
  keysOf,
  needed,
  oneOf,
  onlyKeys,
  Problem,
  partsOf,
  phraseOf,
  problemWith,
} from '../text/index.js';
import { type Image, imageOf, mirrorImage, turnedImage } from './image.js';

/** The most copies of one board. */
const MOST_COPIES = 50;

/** How many copies a key asks for. @throws Problem */
export function copiesOf({ keys }: BoardEntry, key: string, around: Surroundings): number | undefined {
  const entry = keys.get(key);
  if (!entry) return undefined;
  const phrase = phraseOf(entry, key);
  const count = around.reckon.figure(phrase, 'number');
  if (Number.isInteger(count) && count >= 1 && count <= MOST_COPIES) return count;
  throw problemWith(phrase, `'${key}' comes to ${count}`, `give a whole number, 1 to ${MOST_COPIES}`);
}

/** A board with its mirror images, or its copies round a middle; `stood` stands the one of a number, from 1. */
export function imagesOf(
  entry: BoardEntry,
  stood: (n: number) => Stood,
  around: Surroundings,
): readonly Stood[] {
  const { keys } = entry;
  const [mirrored, round] = [keys.get('mirrored'), keys.get('around')];
  if (mirrored && round)
    throw new Problem(round.at, 6, 'a board is mirrored or stands round a middle, not both', 'leave one out');
  if (round) return roundMiddle(entry, stood, around);
  const told = stood(1);
  if (!mirrored) return [told];
  const { min, max } = around.piece;
  const middle = scale(add(min, max), 1 / 2);
  let boards: readonly Stood[] = [told];
  for (const part of partsOf(phraseOf(mirrored, 'mirrored'))) {
    const axis = MIRRORS[oneOf(part, Object.keys(MIRRORS) as (keyof typeof MIRRORS)[])];
    boards = boards.flatMap((one) => {
      const at = (one.box.min[axis] + one.box.max[axis]) / 2 - middle[axis];
      if (Math.abs(at) < 1e-6)
        throw problemWith(
          part,
          `board '${one.name}' stands in the middle ${part.value}, and its mirror image is itself`,
          'leave mirrored out',
        );
      const [own, other] = namesOfPair(one.name, axis, at < 0 ? -1 : 1);
      return [renamed(one, own), imageOf(one, other, idOf(other), mirrorImage(axis, middle))];
    });
  }
  return boards;
}

const idOf = (name: string): string => name.replace(/\s+/g, '-');

const STAY: Image = {
  point: (point) => point,
  board: (placed, id, name) => ({ ...placed, board: { ...placed.board, id, name } }),
  back: (plane) => plane,
};

const renamed = (of: Stood, name: string): Stood => imageOf(of, name, idOf(name), STAY);

/** Copies evenly round an upright line, counter-clockwise seen from above, each as told for its number and then turned. */
function roundMiddle(
  { keys, name }: BoardEntry,
  stood: (n: number) => Stood,
  around: Surroundings,
): readonly Stood[] {
  const entry = keys.get('around')!;
  const form = 'around: { middle: seat, copies: 3 }';
  const [how] = keysOf(entry, 'around', form);
  onlyKeys(how!, ['middle', 'copies', 'first'], `'around'`);
  const phrase = phraseOf(needed(how!, 'middle', entry.at, `'around'`, `write ${form}`), 'middle');
  const spots = middleAt(phrase, around);
  if (spots.length !== 3) throw problemWith(phrase, `'${phrase.value}' is no middle`, `write ${form}`);
  const count = copiesOf({ name, keys: how! }, 'copies', around) ?? 0;
  if (count < 2) throw new Problem(entry.at, 6, 'how many stand round it is not said', `write ${form}`);
  const centre = spots.map((spot) => (spot as { at: number }).at) as unknown as [number, number, number];
  const all = Array.from({ length: count }, (_, i) => stood(i + 1));
  checkFirst(how!, all[0]!, centre);
  return all.map((told, i) => {
    const called = `${told.name} ${i + 1}`;
    return {
      ...imageOf(told, called, idOf(called), turnedImage(centre, (360 * i) / count)),
      leans: told.leans || i > 0,
    };
  });
}

/** `first: front` says where the told board stands, and must be so. */
function checkFirst(how: BoardEntry['keys'], told: Stood, centre: readonly number[]): void {
  const entry = how.get('first');
  if (!entry) return;
  const phrase = phraseOf(entry, 'first');
  const side = oneOf(phrase, ['left', 'right', 'front', 'back']);
  const { axis, sign } = SIDES[side];
  const off = ([0, 1] as const).map((one) => (told.box.min[one] + told.box.max[one]) / 2 - centre[one]!);
  if (off[axis as 0 | 1]! * sign > Math.abs(off[axis === 0 ? 1 : 0]!)) return;
  throw problemWith(
    phrase,
    `the first '${told.name}' does not stand at the ${side} of that middle`,
    'change where it stands, or leave first out',
  );
}

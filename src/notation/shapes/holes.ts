import {
  type Board,
  type FaceId,
  faceFrame,
  type GrooveSpec,
  type Hole,
  withGroove,
} from '../../board/index.js';
import { frame, type Vec3 } from '../../frame/index.js';
import { obround } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import {
  type Keys,
  keysOf,
  needed,
  onlyKeys,
  type Phrase,
  type Place,
  Problem,
  partsOf,
  phraseOf,
  phrasesOf,
  problemWith,
} from '../text/index.js';
import { faceToward, type OwnSide, ownPlace, ownSide, type Shaped, sideWord } from './own-side.js';

/** A hole of any size through the board: as long as it is wide it is round. @throws Problem */
export function opening(board: Board, keys: Keys, shaped: Shaped, at: Place, id: string): Board {
  onlyKeys(keys, ['long', 'wide', 'middle'], 'an opening');
  const form = 'write opening: { long: 90, wide: 30 }';
  const size = (key: string) =>
    shaped.reckon.figure(phraseOf(needed(keys, key, at, 'an opening', form), key), 'length');
  const [length, width] = [size('long'), size('wide')];
  if (length < width)
    throw new Problem(
      at,
      7,
      'an opening is at least as long as it is wide',
      'long runs along the grain: swap them, or take a round one',
    );
  const { blank } = board;
  const [x, y] = middleOf(keys, shaped, [blank.length / 2, blank.width / 2, 0], [0, 1]);
  return {
    ...board,
    openings: [...board.openings, { id, outline: obround({ length, width, centre: [x, y] }) }],
  };
}

/** Where the middle of something stands on the board, from `middle`; in the middle where nothing is said. */
function middleOf(keys: Keys, shaped: Shaped, usual: Vec3, free: readonly (0 | 1 | 2)[]): Vec3 {
  const found: [number, number, number] = [...usual];
  const entry = keys.get('middle');
  for (const phrase of entry ? phrasesOf(entry, 'middle') : []) {
    const place = ownPlace(phrase, shaped);
    if (!free.includes(place.axis))
      throw problemWith(phrase, 'nothing is placed that way here', 'measure from another side');
    found[place.axis] = place.at;
  }
  return found;
}

/** A groove along a side, or with `from` at a side itself a rebate. @throws Problem */
export function groove(board: Board, keys: Keys, shaped: Shaped, at: Place, id: string): Board {
  onlyKeys(keys, ['side', 'wide', 'deep', 'from', 'stops'], 'a groove');
  const form = 'write groove: { side: right, wide: 8, deep: 10 }';
  const told = (key: string) => phraseOf(needed(keys, key, at, 'a groove', form), key);
  const side = ownSide(shaped, sideWord(told('side')));
  const [width, depth] = [
    shaped.reckon.figure(told('wide'), 'length'),
    shaped.reckon.figure(told('deep'), 'length'),
  ];
  const standing = { ...shaped, placed: { ...shaped.placed, board } };
  const face = faceToward(standing, side);
  const { from, distance } = fenceOf(keys, standing, side, width);
  const stopsEntry = keys.get('stops');
  const stop = stopsEntry
    ? stopsOf(keysOf(stopsEntry, 'stops', 'stops: { top: 60 }')[0]!, standing)
    : undefined;
  const spec: GrooveSpec = { id, face, from, distance, width, depth, ...(stop && { stop }) };
  return withGroove(board, spec);
}

/** The face its fence follows and how far off: in the middle of the thickness, or from the side that is told. */
function fenceOf(
  keys: Keys,
  shaped: Shaped,
  side: OwnSide,
  width: number,
): { from: FaceId; distance: number } {
  const entry = keys.get('from');
  const { thickness } = shaped.placed.board.blank;
  if (!entry) {
    if (side.axis === 2)
      throw new Problem(
        keys.get('side')!.at,
        4,
        'a groove in a wide face has no usual place',
        `write from: 20 short of bottom`,
      );
    return { from: 'reference-face', distance: (thickness - width) / 2 };
  }
  const phrase = phraseOf(entry, 'from');
  const place = ownPlace(phrase, shaped);
  if (place.axis === side.axis)
    throw problemWith(phrase, 'a groove is not measured into its own side', 'measure from a side beside it');
  const word = /(\S+)$/.exec(phrase.value)![1]!;
  const fence = ownSide(shaped, sideWord({ value: word, at: phrase.at }));
  return { from: faceToward(shaped, fence), distance: Math.abs(place.at - fence.at) };
}

/** How far before the ends of the board it stops. */
function stopsOf(keys: Keys, shaped: Shaped): { start?: number; end?: number } {
  const found: { start?: number; end?: number } = {};
  for (const [key, entry] of keys) {
    const phrase = phraseOf(entry, key);
    const side = ownSide(shaped, sideWord({ value: key, at: entry.at }));
    found[side.sign < 0 ? 'start' : 'end'] = shaped.reckon.figure(phrase, 'length');
  }
  return found;
}

/** Holes of one row. */
const MOST_HOLES = 200;

/** Round holes: one, or rows of them along the board; `every` without `count` fills the side, half a step kept at its ends. @throws Problem */
export function holes(board: Board, keys: Keys, shaped: Shaped, at: Place, id: string): Board {
  onlyKeys(keys, ['side', 'wide', 'deep', 'middle', 'every', 'count', 'rows'], 'holes');
  const form =
    'write holes: { side: right, wide: 5, deep: 10, middle: [200 above bottom, 30 short of front] }';
  const told = (key: string) => phraseOf(needed(keys, key, at, 'holes', form), key);
  const side = ownSide(shaped, sideWord(told('side')));
  const diameter = shaped.reckon.figure(told('wide'), 'length');
  const deep = told('deep');
  const depth = deep.value === 'through' ? ('through' as const) : shaped.reckon.figure(deep, 'length');
  const free = ([0, 1, 2] as const).filter((axis) => axis !== side.axis);
  const { length, width, thickness } = board.blank;
  const start = middleOf(keys, shaped, [length / 2, width / 2, thickness / 2], free);
  const every = keys.get('every');
  const step = every ? shaped.reckon.figure(phraseOf(every, 'every'), 'length') : 0;
  if (every && step <= 0)
    throw problemWith(phraseOf(every, 'every'), 'it must be more than 0', 'write every: 32');
  const run = free[0]!;
  const end = [length, width, thickness][run]!;
  // a row that is not told where to begin stands in the middle; else it runs away from the nearer end
  const centred = Math.abs(start[run] - end / 2) < SAME_POINT;
  const sense = start[run] > end / 2 ? -1 : 1;
  const room = sense > 0 ? end - start[run] : start[run];
  const countEntry = keys.get('count');
  const count = countEntry
    ? wholeOf(phraseOf(countEntry, 'count'), shaped)
    : step > 0
      ? Math.max(1, Math.floor((centred ? end : room + step / 2) / step + SAME_POINT))
      : 1;
  if (count > MOST_HOLES)
    throw new Problem(at, 5, `a row of ${count} holes`, `${MOST_HOLES} is the limit: set them further apart`);
  if (count > 1 && step <= 0)
    throw new Problem(at, 5, 'several holes are told and not how far apart', 'write every: 32');
  const rows = keys.get('rows');
  const across = rows
    ? partsOf(phraseOf(rows, 'rows')).map((phrase) => ownPlace(phrase, shaped))
    : [undefined];
  const standing = { ...shaped, placed: { ...shaped.placed, board } };
  const face = faceToward(standing, side);
  const on = faceFrame(board, face)!;
  const made = across.flatMap((row, r) =>
    Array.from({ length: count }, (_, i): Hole => {
      const p: [number, number, number] = [...start];
      p[side.axis] = side.at;
      if (row) p[row.axis] = row.at;
      p[run] += sense * (i - (centred ? (count - 1) / 2 : 0)) * step;
      return { id: `${id}-${r * count + i + 1}`, face, at: frame(p, on.z, on.x), diameter, depth };
    }),
  );
  return { ...board, holes: [...board.holes, ...made] };
}

const wholeOf = (phrase: Phrase, { reckon }: Shaped): number => {
  const value = reckon.figure(phrase, 'number');
  if (Number.isInteger(value) && value >= 1 && value <= MOST_HOLES) return value;
  throw problemWith(phrase, `it comes to ${value}`, `give a whole number, 1 to ${MOST_HOLES}`);
};

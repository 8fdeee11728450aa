import { cross, scale } from '../../frame/index.js';
import { type Season, seasonalMovement } from '../../movement/index.js';
import {
  ALL_AXES,
  AXIS_WORDS,
  type Axes,
  type Axis,
  type AxisTold,
  type Fact,
  GRAINS,
  LOOKS,
  middleAt,
  named,
  type Pair,
  pairOf,
  readEvenly,
  SIDES,
  type Side,
  type Spot,
  type Surroundings,
  sideAt,
  vectorOf,
  type Way,
} from '../places/index.js';
import {
  type BoardEntry,
  type Entry,
  type Keys,
  keysOf,
  needed,
  oneOf,
  onlyKeys,
  type Phrase,
  Problem,
  phraseOf,
  phrasesOf,
  problemWith,
} from '../text/index.js';

/** A side that stands at a plane which is not square to its direction: it is cut to it. */
export interface CutSide {
  readonly axis: Axis;
  readonly sign: 1 | -1;
  readonly plane: Extract<Spot, { plane: unknown }>['plane'];
}

/** What a board's keys say of its place, direction by direction. */
export interface ToldBoard {
  readonly name: Phrase;
  readonly axes: Axes;
  /** Where its reference face and edge look. */
  readonly face: Way;
  readonly edge: Way;
  readonly told: ReadonlyMap<Axis, AxisTold>;
  readonly cuts: readonly CutSide[];
  readonly pairs: readonly Pair[];
  /** What sizes are called, by direction. */
  readonly sizeKeys: readonly [string, string, string];
}

/** Reads grain, face and edge. @throws Problem */
export function lies({ name, keys }: BoardEntry): Pick<ToldBoard, 'axes' | 'face' | 'edge' | 'sizeKeys'> {
  const of = `board '${name.value}'`;
  const word = (key: string, remedy: string) => phraseOf(needed(keys, key, name, of, remedy), key);
  const grain =
    GRAINS[
      oneOf(
        word('grain', 'write grain: left-right, front-back or up'),
        Object.keys(GRAINS) as (keyof typeof GRAINS)[],
      )
    ];
  const looks = Object.keys(LOOKS) as (keyof typeof LOOKS)[];
  const faceWord = word('face', 'write face: front, or left, up, …, where its wide reference face looks');
  const face = LOOKS[oneOf(faceWord, looks)];
  if (face.axis === grain)
    throw problemWith(
      faceWord,
      `a face cannot look ${faceWord.value} when the grain runs ${AXIS_WORDS[grain]}`,
      'the grain runs along the face: change one of them',
    );
  const axis = ALL_AXES.find((one) => one !== grain && one !== face.axis)!;
  const edgeEntry = keys.get('edge');
  const edgeWord = edgeEntry && phraseOf(edgeEntry, 'edge');
  const edge: Way = edgeWord ? LOOKS[oneOf(edgeWord, looks)] : { axis, sign: usualEdge(grain, face, axis) };
  if (edge.axis !== axis)
    throw problemWith(
      edgeWord!,
      `an edge cannot look ${edgeWord!.value} here`,
      `write ${sideWord(axis, -1)} or ${sideWord(axis, 1)}`,
    );
  const axes = { grain, face: face.axis, edge: axis };
  const sizeKeys = ALL_AXES.map((one) => (one === grain ? 'long' : one === axis ? 'wide' : 'thick'));
  return { axes, face, edge, sizeKeys: sizeKeys as unknown as ToldBoard['sizeKeys'] };
}

/** The lower edge, the front one or the left; of an upright board the one from which its foot is the reference end. */
const usualEdge = (grain: Axis, face: Way, axis: Axis): 1 | -1 =>
  grain === 2 && cross(vectorOf({ axis, sign: -1 }), vectorOf(face))[2] < 0 ? 1 : -1;

const sideWord = (axis: Axis, sign: 1 | -1): string =>
  (Object.keys(LOOKS) as (keyof typeof LOOKS)[]).find(
    (look) => LOOKS[look].axis === axis && LOOKS[look].sign === sign,
  )!;

/** How many copies there are and which this is, from 1. */
export interface Copy {
  readonly count: number;
  readonly n: number;
}

/** Reads everything that says where a board stands. @throws Problem */
export function toldBoard(entry: BoardEntry, around: Surroundings, copy: Copy, material: string): ToldBoard {
  const { name, keys } = entry;
  const how = lies(entry);
  const facts: Fact[][] = [[], [], []];
  const cuts: CutSide[] = [];
  const sizes = ALL_AXES.map((axis) => {
    const key = how.sizeKeys[axis];
    const told = keys.get(key);
    return told && { key, value: around.reckon.figure(phraseOf(told, key), 'length') };
  });
  const side = (key: Side, entryOf: Entry): void => {
    const { axis, sign } = SIDES[key];
    const spot = sideAt(phraseOf(entryOf, key), key, around);
    if ('at' in spot) facts[axis]!.push({ kind: sign < 0 ? 'low' : 'high', value: spot.at, key });
    else cuts.push({ axis, sign, plane: facing(spot.plane, SIDES[key]) });
  };
  for (const key of Object.keys(SIDES) as Side[]) {
    const found = keys.get(key);
    if (found) side(key, found);
  }
  const fill = readMiddle(keys, around, facts);
  const likeEntry = keys.get('like');
  const like = likeEntry && named(phraseOf(likeEntry, 'like'), around).box;
  const pairs = readPairs(keys, around, how.axes, material);
  readEvenly(keys, around, how, sizes, copy, facts);
  const told = new Map(
    ALL_AXES.map((axis): [Axis, AxisTold] => [
      axis,
      {
        facts: facts[axis]!,
        size: sizes[axis],
        ...(like && { like: { min: like.min[axis], max: like.max[axis] } }),
        fill: fill?.[axis],
      },
    ]),
  );
  return { name, ...how, told, cuts, pairs };
}

/** A plane with its normal the way a side looks, off the wood that stays. */
const facing = ({ point, normal }: CutSide['plane'], { axis, sign }: Way): CutSide['plane'] => ({
  point,
  normal: normal[axis] * sign < 0 ? scale(normal, -1) : normal,
});

/** Middles that say their direction become facts; `middle of X` fills what is open last. */
function readMiddle(keys: Keys, around: Surroundings, facts: Fact[][]): readonly number[] | undefined {
  const entry = keys.get('middle');
  if (!entry) return undefined;
  let fill: readonly number[] | undefined;
  for (const phrase of phrasesOf(entry, 'middle')) {
    const spots = middleAt(phrase, around);
    for (const spot of spots)
      if (!('at' in spot))
        throw problemWith(phrase, 'that side leans', 'name a board that stands upright, or the floor');
    const at = spots.map((spot) => (spot as { at: number }).at);
    if (spots.length === 3) {
      if (fill)
        throw problemWith(
          phrase,
          `a second 'middle of' fills nothing`,
          'say it from a side, like 60 short of left of seat',
        );
      fill = at;
    } else facts[spots[0]!.axis]!.push({ kind: 'middle', value: at[0]!, key: 'middle' });
  }
  return fill;
}

function readPairs(keys: Keys, around: Surroundings, { grain }: Axes, material: string): readonly Pair[] {
  const entry = keys.get('between');
  const grooved = groovedDeep(keys, around);
  if (!entry) {
    const at = keys.get('grooved') ?? keys.get('into');
    if (at)
      throw new Problem(
        at.at,
        1,
        'nothing says what it goes into',
        'write between: left stile and right stile',
      );
    return [];
  }
  const into = keys.get('into');
  const told = into && around.reckon.figure(phraseOf(into, 'into'), 'length');
  const pairs: Pair[] = [];
  for (const phrase of phrasesOf(entry, 'between')) {
    const pair = pairOf(
      phrase,
      around,
      grain,
      pairs.map(({ axis }) => axis),
    );
    const room = pair.axis === grain ? END_ROOM : panelRoom(material, pair, grooved ?? 0, around.season);
    pairs.push({ ...pair, into: told ?? (grooved === undefined ? 0 : grooved - room) });
  }
  return pairs;
}

/** Room at each end of a panel, along its grain. Common practice, no source; mm. */
const END_ROOM = 0.5;

/** Room at each edge of a panel: half of what its width moves in a year, to the next half millimetre. */
const panelRoom = (material: string, { low, high }: Pair, deep: number, season?: Season): number =>
  Math.ceil(seasonalMovement(material, high.at - low.at + 2 * deep, season)) / 2;

/** How deep the grooves are that a panel sits in. */
export function groovedDeep(keys: Keys, { reckon }: Surroundings): number | undefined {
  const entry = keys.get('grooved');
  return entry && reckon.figure(phraseOf(entry, 'grooved'), 'length');
}

/** Angles by the side that goes down or out: `{ left: 8°, front: 6° }`. @returns degrees towards left-right and front-back, by axis */
export function anglesOf(entry: Entry, key: string, around: Surroundings): readonly [number, number] {
  const [told] = keysOf(entry, key, `${key}: { left: 8° }`);
  const known = ['left', 'right', 'front', 'back'] as const;
  onlyKeys(told!, known, `'${key}'`);
  const found: [number, number] = [0, 0];
  for (const side of known) {
    const one = told!.get(side);
    if (!one) continue;
    const phrase = phraseOf(one, side);
    const angle = around.reckon.figure(phrase, 'angle');
    if (Math.abs(angle) > MOST_LEAN)
      throw problemWith(phrase, (say) => `${say.angle(angle)} is too much`, `give less than ${MOST_LEAN}°`);
    found[SIDES[side].axis as 0 | 1] += SIDES[side].sign * angle;
  }
  return found;
}

/** Beyond this a leaning board lies. Common practice, no source; degrees. */
const MOST_LEAN = 45;

import type { Vec3 } from '../../frame/index.js';
import { SIDES } from '../places/index.js';
import {
  type Keys,
  needed,
  onlyKeys,
  type Phrase,
  type Place,
  Problem,
  partsOf,
  phraseOf,
  problemWith,
} from '../text/index.js';
import { type Cutting, cutOff, planeThrough } from './cutting.js';
import { cornerWords, type OwnSide, ownPlace, ownSide, type Shaped, sideWord } from './own-side.js';

/**
 * A sloping corner or arris: `long` is measured along the grain, or across it on a long arris; `deep` the other way.
 *
 * @throws Problem
 */
export function bevel(cutting: Cutting, keys: Keys, shaped: Shaped, at: Place): Cutting {
  onlyKeys(keys, ['arris', 'corner', 'long', 'deep'], 'a bevel');
  const form = 'write bevel: { corner: back bottom, long: 60, deep: 20 }';
  const which = keys.get('corner') ?? keys.get('arris');
  if (!which) throw new Problem(at, 5, 'a bevel does not say its corner', form);
  const size = (key: string) => sized(phraseOf(needed(keys, key, at, 'a bevel', form), key), shaped);
  const [long, deep] = [size('long'), size('deep')];
  return partsOf(phraseOf(which, 'corner')).reduce((cut, phrase) => {
    const [first, second] = ordered(phrase, shaped);
    if (long > first.whole || deep > second.whole)
      throw problemWith(
        phrase,
        (say) =>
          `a bevel of ${say.fine(long)} by ${say.fine(deep)} is larger than the board, ${say.fine(first.whole)} by ${say.fine(second.whole)} there`,
        'make it smaller',
      );
    const corner = cornerAt(first, second);
    const move = (side: OwnSide, by: number): Vec3 => {
      const p: [number, number, number] = [...corner];
      p[side.axis] -= side.sign * by;
      return p;
    };
    const along = unitOf(
      ([0, 1, 2] as const).find((axis) => axis !== first.axis && axis !== second.axis)!,
      1,
    );
    const away: [number, number, number] = [0, 0, 0];
    away[first.axis] = first.sign;
    away[second.axis] = second.sign;
    return cutOff(
      cut,
      planeThrough(move(first, long), move(second, deep), along, away),
      `bevel-${first.side}-${second.side}`,
    );
  }, cutting);
}

/** A corner sawn out square: `long` along the grain, `deep` across it. @throws Problem */
export function notch(cutting: Cutting, keys: Keys, shaped: Shaped, at: Place): Cutting {
  onlyKeys(keys, ['corner', 'long', 'deep', 'radius'], 'a notch');
  const form = 'write notch: { corner: front bottom, long: 40, deep: 60 }';
  const told = (key: string) => phraseOf(needed(keys, key, at, 'a notch', form), key);
  const [long, deep] = [sized(told('long'), shaped), sized(told('deep'), shaped)];
  const radius = keys.get('radius') ? sized(phraseOf(keys.get('radius')!, 'radius'), shaped) : 0;
  return partsOf(told('corner')).reduce((cut, phrase) => {
    const [first, second] = ordered(phrase, shaped);
    if (first.axis !== 0 || second.axis !== 1)
      throw problemWith(
        phrase,
        'a notch goes through the thickness, and this corner lies along it',
        'cut a groove, or name a corner of the wide face',
      );
    const found = cornerIndex(cut, first, second);
    const corner = cut.corners[found]!;
    const along = { x: corner.x - first.sign * long, y: corner.y };
    const inner = { x: corner.x - first.sign * long, y: corner.y - second.sign * deep, radius };
    const across = { x: corner.x, y: corner.y - second.sign * deep };
    // counter-clockwise, the side along the grain comes first at two of the corners
    const alongFirst = first.sign > 0 === second.sign < 0;
    const three = alongFirst ? [along, inner, across] : [across, inner, along];
    return withCorners(cut, cut.corners.toSpliced(found, 1, ...three));
  }, cutting);
}

/** Corners of the wide face made round: `all`, or `front left and front right`. @throws Problem */
export function round(cutting: Cutting, keys: Keys, shaped: Shaped, at: Place): Cutting {
  onlyKeys(keys, ['corners', 'radius'], 'a round');
  const form = 'write round: { corners: all, radius: 15 }';
  const corners = phraseOf(needed(keys, 'corners', at, 'a round', form), 'corners');
  const radius = sized(phraseOf(needed(keys, 'radius', at, 'a round', form), 'radius'), shaped);
  const { grain, edge } = shaped.axes;
  const all = (Object.keys(SIDES) as (keyof typeof SIDES)[])
    .filter((side) => SIDES[side].axis === grain)
    .flatMap((a) =>
      (Object.keys(SIDES) as (keyof typeof SIDES)[])
        .filter((side) => SIDES[side].axis === edge)
        .map((b) => [ownSide(shaped, a), ownSide(shaped, b)] as const),
    );
  const asked =
    corners.value === 'all'
      ? all
      : partsOf(corners).map((phrase) => {
          const pair = ordered(phrase, shaped);
          if (pair[0].axis === 0 && pair[1].axis === 1) return pair;
          throw problemWith(
            phrase,
            'only corners of the wide face are made round',
            'name an end and an edge of the board',
          );
        });
  return asked.reduce((cut, [first, second]) => {
    const found = cornerIndex(cut, first, second);
    return withCorners(
      cut,
      cut.corners.map((corner, i) => (i === found ? { ...corner, radius } : corner)),
    );
  }, cutting);
}

/** An end or edge that slopes across the board: `to` at its front or right unless `towards` says where, `from` opposite. @throws Problem */
export function slope(cutting: Cutting, keys: Keys, shaped: Shaped, at: Place): Cutting {
  onlyKeys(keys, ['side', 'from', 'to', 'towards'], 'a slope');
  const form = 'write slope: { side: top, towards: front, from: 0 below top, to: 80 below top }';
  const told = (key: string) => phraseOf(needed(keys, key, at, 'a slope', form), key);
  const side = ownSide(shaped, sideWord(told('side')));
  const acrossAxis = side.axis === 0 ? shaped.axes.edge : shaped.axes.grain;
  const towardsEntry = keys.get('towards');
  const usual = (['right', 'front', 'top'] as const)[acrossAxis];
  const end = ownSide(shaped, towardsEntry ? sideWord(phraseOf(towardsEntry, 'towards')) : usual);
  if (side.axis === 2 || end.axis === 2 || end.axis === side.axis)
    throw problemWith(
      told('side'),
      'a slope runs over the wide face, from one of its sides to the other',
      form,
    );
  const height = (key: 'from' | 'to'): number => {
    const phrase = told(key);
    if (/\b(short of|past|above|below)\b/.test(phrase.value) || phrase.value === side.side) {
      const place = ownPlace(phrase, shaped);
      if (place.axis !== side.axis)
        throw problemWith(phrase, `that is not measured towards ${side.side}`, form);
      return place.at;
    }
    const whole = shaped.reckon.figure(phrase, 'length');
    // a bare length is what is left of the board there
    return side.sign > 0 ? whole : side.whole - whole;
  };
  const point = (along: number, across: number): Vec3 =>
    side.axis === 0 ? [along, across, 0] : [across, along, 0];
  const away = unitOf(side.axis, side.sign);
  const [from, to] = [height('from'), height('to')];
  return cutOff(
    cutting,
    planeThrough(point(from, end.whole - end.at), point(to, end.at), [0, 0, 1], away),
    `slope-${side.side}`,
  );
}

const withCorners = (cut: Cutting, corners: Cutting['corners']): Cutting => ({ ...cut, corners });

const sized = (phrase: Phrase, { reckon }: Shaped): number => {
  const value = reckon.figure(phrase, 'length');
  if (value > 0) return value;
  throw problemWith(phrase, (say) => `it is ${say.fine(value)}; it must be more than 0`, 'give more');
};

/** The two sides of a corner, the one nearer along the grain first. */
function ordered(phrase: Phrase, shaped: Shaped): readonly [OwnSide, OwnSide] {
  const [a, b] = cornerWords(phrase)
    .map((side) => ownSide(shaped, side))
    .toSorted((p, q) => p.axis - q.axis);
  return [a!, b!];
}

const cornerAt = (a: OwnSide, b: OwnSide): [number, number, number] => {
  const p: [number, number, number] = [0, 0, 0];
  p[a.axis] = a.at;
  p[b.axis] = b.at;
  return p;
};

const unitOf = (axis: 0 | 1 | 2, sign: number): Vec3 => [
  axis === 0 ? sign : 0,
  axis === 1 ? sign : 0,
  axis === 2 ? sign : 0,
];

/** The corner of the outline farthest out both ways. */
function cornerIndex({ corners }: Cutting, a: OwnSide, b: OwnSide): number {
  const far = ({ x, y }: { x: number; y: number }) => a.sign * x + b.sign * y;
  return corners.reduce((best, corner, i) => (far(corner) > far(corners[best]!) + 1e-9 ? i : best), 0);
}

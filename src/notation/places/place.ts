import { faces } from '../../board/index.js';
import { add, directionOut, dot, type Plane, pointOut, scale, type Vec3 } from '../../frame/index.js';
import type { Season } from '../../movement/index.js';
import { SAME_DIRECTION } from '../../tolerances.js';
import type { Reckoning } from '../formulas/index.js';
import { type Phrase, Problem, problemWith } from '../text/index.js';
import { boardsCalled, NoBoard } from './board-names.js';
import { type PlacePhrase, placePhrase, type Relation } from './place-phrase.js';
import { AXIS_WORDS, type Axis, SIDES, type Side, sideOn, vectorOf, type Way } from './sides.js';
import { type Box, boxAround, type Stood } from './stood.js';

/** What a place may name: the boards above it, the box the piece fills, the floor. */
export interface Surroundings {
  readonly standing: readonly Stood[];
  readonly piece: Box;
  readonly reckon: Reckoning;
  /** What the wood goes through; a heated room and flat-sawn wood when left out. */
  readonly season?: Season;
}

/** Where something stands in one direction: at a figure, mm, or at a plane that is not square to it. */
export type Spot =
  | { readonly axis: Axis; readonly at: number }
  | { readonly axis: Axis; readonly plane: Plane };

/** Boards that were named together, or the piece; its box, and the boards themselves where there are any. */
export interface Named {
  readonly box: Box;
  readonly boards: readonly Stood[];
}

/** @throws Problem for an unknown name */
export function named(phrase: Phrase, { standing, piece }: Surroundings): Named {
  if (phrase.value === 'piece') return { box: piece, boards: [] };
  const boards = boardsCalled(phrase, standing);
  return { box: boxAround(boards.map(({ box }) => box)), boards };
}

/**
 * Where a side of a board stands: `6 short of leg`, `top of rail`, `60 above floor`.
 *
 * @param side the side that is placed
 * @throws Problem when the place lies in another direction, or is measured from nothing
 */
export function sideAt(phrase: Phrase, side: Side, around: Surroundings): Spot {
  const told = placePhrase(phrase);
  const { axis } = SIDES[side];
  const spot = spotOf(told, SIDES[side], around);
  if (spot.axis === axis) return spot;
  throw problemWith(
    phrase,
    `'${phrase.value}' lies ${AXIS_WORDS[spot.axis]}, and ${side} is ${AXIS_WORDS[axis]}`,
    `name ${sideOn(axis, -1)} or ${sideOn(axis, 1)} of a board`,
  );
}

/**
 * Where the middle of a board stands: one direction, or every direction of `middle of seat`.
 *
 * @throws Problem when the phrase does not say the direction
 */
export function middleAt(phrase: Phrase, around: Surroundings): readonly Spot[] {
  const told = placePhrase(phrase);
  const open = !told.measure && (told.side === 'middle' || told.side === undefined);
  if (open && told.of.value !== 'floor') {
    const { box } = named(told.of, around);
    return ([0, 1, 2] as const).map((axis) => ({ axis, at: (box.min[axis] + box.max[axis]) / 2 }));
  }
  return [spotOf(told, undefined, around)];
}

/** @param way of the side that is placed; undefined for a middle, which says its direction itself */
function spotOf(told: PlacePhrase, way: Way | undefined, around: Surroundings): Spot {
  const { measure, of, whole } = told;
  const upright = measure?.relation === 'above' || measure?.relation === 'below';
  const by = measure ? around.reckon.figure(measure.formula, 'length') : 0;
  if (of.value === 'floor' && told.side === undefined) {
    if (measure && !upright)
      throw problemWith(whole, `nothing is '${measure.relation}' the floor`, `write '… above floor'`);
    return { axis: 2, at: measure?.relation === 'below' ? -by : by };
  }
  if (of.value === '' || !of.value)
    throw problemWith(whole, `'${whole.value}' is measured from nothing`, `write '${whole.value} of piece'`);
  if (!measure && isFigureAlone(of, around))
    // a dimension may be called like a board that could not be stood
    throw new NoBoard(
      whole,
      `'${whole.value}' is measured from nothing`,
      `write '${whole.value} short of ${way ? sideOn(way.axis, way.sign) : 'left'} of piece' or '${whole.value} above floor'`,
    );
  const thing = named(of, around);
  const seen = sideSeen(told, way, upright);
  if (seen === 'middle') {
    const axis = upright ? 2 : way!.axis;
    const at = (thing.box.min[axis] + thing.box.max[axis]) / 2;
    return { axis, at: at + (upright ? (measure!.relation === 'above' ? by : -by) : 0) };
  }
  const shift = measure ? by * senseOf(measure.relation, SIDES[seen]) : 0;
  return shifted(sideSpot(thing, seen), shift);
}

/** Which side of what is named is meant. @throws Problem */
function sideSeen(
  { side, measure, whole }: PlacePhrase,
  way: Way | undefined,
  upright: boolean,
): Side | 'middle' {
  if (side === 'middle' && measure && !upright)
    throw problemWith(
      whole,
      `a middle has no ${measure.relation}`,
      'measure from a side: left, right, front, back',
    );
  if (side === 'middle') return side;
  if (side !== undefined) {
    if (upright && SIDES[side].axis !== 2)
      throw problemWith(
        whole,
        `'${measure!.relation}' goes up or down, '${side}' does not`,
        `write 'short of' or 'past'`,
      );
    return side;
  }
  if (way) {
    if (upright && way.axis !== 2)
      throw problemWith(
        whole,
        `'${measure!.relation}' goes up or down, this side does not`,
        `write 'short of' or 'past'`,
      );
    return sideOn(way.axis, way.sign);
  }
  if (upright) return measure!.relation === 'above' ? 'top' : 'bottom';
  throw problemWith(
    whole,
    `'${whole.value}' does not say from which side`,
    `write '${whole.value.replace(/(short of|past)\s+/, '$1 left of ')}'`,
  );
}

/** `short of` runs towards the middle of what is named, `past` beyond it: right for all six sides. */
const senseOf = (relation: Relation, { sign }: Way): number =>
  relation === 'above' ? 1 : relation === 'below' ? -1 : relation === 'past' ? sign : -sign;

/** Words that are a length and no board. */
function isFigureAlone(phrase: Phrase, around: Surroundings): boolean {
  const reads = (work: () => unknown): boolean => {
    try {
      work();
      return true;
    } catch (error) {
      if (error instanceof Problem) return false;
      throw error;
    }
  };
  return !reads(() => named(phrase, around)) && reads(() => around.reckon.figure(phrase, 'length'));
}

/** Where a side of what is named stands. */
export function sideSpot({ box, boards }: Named, side: Side): Spot {
  const { axis, sign } = SIDES[side];
  const [only, ...more] = boards;
  if (only?.leans && more.length === 0) {
    const plane = sidePlane(only, SIDES[side]);
    if (Math.abs(plane.normal[axis]) < 1 - SAME_DIRECTION) return { axis, plane };
    return { axis, at: plane.point[axis] };
  }
  return { axis, at: (sign < 0 ? box.min : box.max)[axis] };
}

/** The flat face of a board that looks most a certain way, assembly frame, its normal out of the wood. */
export function sidePlane({ placed: { board, place } }: Stood, way: Way): Plane {
  const wanted = vectorOf(way);
  const best = faces(board)
    .map(({ frame }) => ({ point: pointOut(place, frame.origin), normal: directionOut(place, frame.z) }))
    .reduce((most, next) => (dot(next.normal, wanted) > dot(most.normal, wanted) + 1e-9 ? next : most));
  return best;
}

export const shifted = (spot: Spot, by: number): Spot =>
  'at' in spot
    ? { axis: spot.axis, at: spot.at + by }
    : { axis: spot.axis, plane: movedAlong(spot.plane, spot.axis, by) };

const movedAlong = ({ point, normal }: Plane, axis: Axis, by: number): Plane => ({
  point: add(point, scale(vectorOf({ axis, sign: 1 }), by)) as Vec3,
  normal,
});

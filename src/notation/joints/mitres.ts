import type { Blank } from '../../board/index.js';
import {
  add,
  cross,
  dot,
  type Frame,
  length,
  meeting,
  type Plane,
  pointOut,
  scale,
  subtract,
  unit,
  type Vec3,
} from '../../frame/index.js';
import { SAME_DIRECTION } from '../../tolerances.js';
import { ALL_AXES, type Stood } from '../places/index.js';
import { type PairEntry, problemWith } from '../text/index.js';
import { allCalled } from './joints.js';

/** What the ends of boards are mitred to, by the name of the board; normals off the wood. */
export type Mitres = ReadonlyMap<string, readonly Plane[]>;

/**
 * The ends of boards that are mitred into each other: one plane through the outer and the inner corner cuts both, whatever their widths.
 *
 * @throws Problem for boards that do not overlap at a corner
 */
export function mitresOf(entry: PairEntry, standing: readonly Stood[]): Mitres {
  const found = new Map<string, readonly Plane[]>();
  const cut = (board: Stood, plane: Plane) =>
    found.set(board.name, [...(found.get(board.name) ?? []), awayFrom(plane, board)]);
  let corners = 0;
  const others = allCalled(entry.b, standing);
  for (const a of allCalled(entry.a, standing)) {
    for (const b of others) {
      if (a === b || !overlap(a, b)) continue;
      corners += 1;
      const plane = mitrePlane(a, b, entry);
      cut(a, plane);
      cut(b, plane);
    }
  }
  if (corners === 0)
    throw problemWith(
      entry.a,
      `'${entry.a.value}' and '${entry.b.value}' do not share a corner to be mitred`,
      'let both reach to the outer corner, for one by like: piece',
    );
  return found;
}

const overlap = (a: Stood, b: Stood): boolean =>
  ALL_AXES.every(
    (axis) => Math.min(a.box.max[axis], b.box.max[axis]) - Math.max(a.box.min[axis], b.box.min[axis]) > 1e-6,
  );

/**
 * Through the line in which the outer faces of both boards meet and that of their inner ones: it cuts leaning boards at a
 * compound angle.
 */
function mitrePlane(a: Stood, b: Stood, entry: PairEntry): Plane {
  const square = cross(a.placed.place.x, b.placed.place.x);
  if (length(square) < SAME_DIRECTION)
    throw problemWith(entry.a, 'boards in one line are not mitred', 'leave mitred out');
  const [ofA, ofB] = [besides(a, square, b), besides(b, square, a)];
  const [outer, inner] = [meeting(ofA.outer, ofB.outer), meeting(ofA.inner, ofB.inner)];
  return { point: outer.point, normal: unit(cross(subtract(outer.point, inner.point), outer.way)) };
}

/** The two sides of a board that come to the corner beside its end: the outer one looks away from the other board. */
function besides(
  { placed: { board, place } }: Stood,
  square: Vec3,
  other: Stood,
): { readonly outer: Plane; readonly inner: Plane } {
  const { blank } = board;
  const middle = middleOf(place, blank);
  const [normal, size] =
    Math.abs(dot(place.y, square)) < Math.abs(dot(place.z, square))
      ? [place.y, blank.width]
      : [place.z, blank.thickness];
  const away =
    dot(subtract(middleOf(other.placed.place, other.placed.board.blank), middle), normal) > 0 ? -1 : 1;
  const side = (by: number): Plane => ({ point: add(middle, scale(normal, (away * by * size) / 2)), normal });
  return { outer: side(1), inner: side(-1) };
}

const middleOf = (place: Frame, { length: long, width, thickness }: Blank): Vec3 =>
  pointOut(place, [long / 2, width / 2, thickness / 2]);

/** The plane with its normal off the wood of a board that stays. */
function awayFrom({ point, normal }: Plane, { box }: Stood): Plane {
  const middle = ALL_AXES.map((axis) => (box.min[axis] + box.max[axis]) / 2 - point[axis]);
  const side = middle[0]! * normal[0] + middle[1]! * normal[1] + middle[2]! * normal[2];
  return { point, normal: side > 0 ? scale(normal, -1) : normal };
}

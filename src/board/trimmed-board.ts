import { BoardError } from '../errors.js';
import { type Frame, type Plane, subtract, type Vec3 } from '../frame/index.js';
import { type Profile, translate } from '../profile/index.js';
import { SAME_POINT, SQUARE } from '../tolerances.js';
import type { Board, FaceId } from './board.js';

/** A trimmed board, and how far its origin moved along the grain, mm: its reference end lies where it is cut. */
export interface TrimmedBoard {
  readonly board: Board;
  readonly moved: number;
}

/**
 * A board with one end cut to a plane. It becomes as long as it must: the blank ends at the cut's long point.
 *
 * A cut square to the faces is sawn in the outline, any other is a bevel.
 *
 * @param cut board frame; its normal points off the wood that stays, so it also says which end is cut
 * @param id of the bevel
 * @throws BoardError when the plane runs along the grain, the end is bevelled already, the cut meets an edge that does not run along
 *   the grain, or no wood stays
 * @example trimmedBoard(rail, { point: [390, 0, 0], normal: [1, 0, 0] }, 'end').board.blank.length // 390
 */
export function trimmedBoard(board: Board, cut: Plane, id: FaceId): TrimmedBoard {
  const [nx, ny, nz] = cut.normal;
  if (Math.abs(nx) < ALONG_GRAIN)
    throw refused(board, 'the plane runs along the grain: trim its edge instead');
  if (board.grooves.length > 0)
    throw refused(board, 'its grooves are as long as it was: trim before grooving');
  const side = Math.sign(nx);
  if (board.bevels.some((bevel) => !bevel.within && bevel.normal[0] * side > ALONG_GRAIN))
    throw refused(board, 'that end is bevelled already: trim each end once');
  const from = side > 0 ? board.blank.length : 0;
  const atEnd = (x: number) => Math.abs(x - from) < SAME_POINT;
  const square = Math.abs(nz) < SQUARE;
  // a cut that counts as square where the end is already takes nothing off, whichever face it is measured on
  const there = square ? Math.max(SAME_POINT, SQUARE * board.blank.thickness) : SAME_POINT;
  const cutAt = (y: number, z: number): number => {
    const x = cut.point[0] - (ny * (y - cut.point[1]) + nz * (z - cut.point[2])) / nx;
    return Math.abs(x - from) < there ? from : x;
  };
  const end = board.outline.filter((v) => atEnd(v.x));
  const reach = end.flatMap(({ y }) => [cutAt(y, 0), cutAt(y, board.blank.thickness)]);
  const tip = side > 0 ? Math.max(...reach) : Math.min(...reach);
  const outline = board.outline.map((v, i) => {
    if (!atEnd(v.x)) return v;
    const x = square ? cutAt(v.y, 0) : tip;
    const beside = [board.outline.at(i - 1)!, board.outline[(i + 1) % board.outline.length]!];
    const carried = beside.every((other) => atEnd(other.x) || Math.abs(other.y - v.y) < SAME_POINT);
    if (Math.abs(x - from) > SAME_POINT && !carried)
      throw refused(board, 'the cut meets an edge that does not run along the grain: trim before shaping');
    return { ...v, x };
  });
  const others = board.outline.filter((v) => !atEnd(v.x)).map((v) => v.x);
  const beyond = (x: number, other: number) => (x - other) * side > SAME_POINT;
  // a bevel may run past a corner of the outline, as past the root of an arch; a sawn outline may not
  const left = square
    ? reach.every((x) => others.every((other) => beyond(x, other)))
    : others.every((other) => beyond(tip, other)) &&
      others.some((other) => reach.every((x) => beyond(x, other)));
  if (!left) throw refused(board, 'the cut takes the whole board, or passes a corner of it: make it longer');
  const moved = side < 0 ? tip : 0;
  const bevels = square ? board.bevels : [...board.bevels, { id, point: cut.point, normal: cut.normal }];
  const back = (p: Vec3): Vec3 => subtract(p, [moved, 0, 0]);
  const shift = (profile: Profile): Profile => (moved === 0 ? profile : translate(profile, [-moved, 0]));
  const feature = <T extends { readonly at: Frame }>(one: T): T => ({
    ...one,
    at: { ...one.at, origin: back(one.at.origin) },
  });
  return {
    moved,
    board: {
      ...board,
      blank: { ...board.blank, length: (side > 0 ? tip : board.blank.length) - moved },
      outline: shift(outline),
      bevels: bevels.map(({ within, ...bevel }) => ({
        ...bevel,
        point: back(bevel.point),
        ...(within && { within: shift(within) }),
      })),
      openings: board.openings.map((opening) => ({ ...opening, outline: shift(opening.outline) })),
      mortises: board.mortises.map(feature),
      holes: board.holes.map(feature),
      slots: board.slots.map(feature),
      grooves: board.grooves.map(feature),
    },
  };
}

/** The least lean of a cut against the grain, as the part of its normal along the grain: a cut along it has no end. */
const ALONG_GRAIN = 0.01;

const refused = (board: Board, why: string): BoardError =>
  new BoardError('trim', `board ${board.id}: its end cannot be trimmed: ${why}`);

import { type Board, columnRegion, type Face, planeRegion } from '../board/index.js';
import {
  type Frame,
  frameIn,
  frameOut,
  moved,
  scale,
  turnedOver,
  type Vec2,
  type Vec3,
} from '../frame/index.js';
import type { Region } from '../profile/index.js';
import { clearSpan, type Span } from './clear-span.js';
import { regionIn } from './contact.js';
import { PRACTICE } from './practice.js';

/** One board of a joint, seen from the seat. */
export interface Side {
  readonly board: Board;
  readonly place: Frame;
  readonly face: Face;
  /** The seat, assembly frame, z out of this board's wood. */
  readonly out: Frame;
  /** Cosine of the axis's lean from the seat's normal; 1 when square to it. */
  readonly upright: number;
  /** Wood in the plane parallel to the seat that the axis meets at a depth, in the seat's x and y as seen along the axis. */
  readonly section: (depth: number) => Region;
}

/**
 * @param seat assembly frame, z from a into b
 * @param axis of the mortises, in the seat's frame, unit, z from a into b
 */
export function sideOf(
  which: 'a' | 'b',
  board: Board,
  place: Frame,
  face: Face,
  seat: Frame,
  axis: Vec3,
): Side {
  const out = which === 'a' ? seat : turnedOver(seat);
  const column = columnRegion(board);
  const known = new Map<number, Region>();
  const cut = (depth: number): Region => {
    const plane = frameIn(place, moved(out, scale(out.z, -depth * axis[2])));
    const region = planeRegion(board, plane, column);
    const [dx, dy] = [depth * axis[0], depth * axis[1]];
    return which === 'a'
      ? region.map((loop) => loop.map(([x, y]): Vec2 => [x + dx, y + dy]))
      : region.map((loop) => loop.map(([x, y]): Vec2 => [x - dx, -y - dy]).toReversed());
  };
  // the seat may stand a hair off this board's face, where a section would find air
  const mouth = (): Region => regionIn(frameOut(place, face.frame), seat, face.region);
  const section = (depth: number): Region => {
    const region = known.get(depth) ?? (depth === 0 ? mouth() : cut(depth));
    known.set(depth, region);
    return region;
  };
  return { board, place, face, out, upright: axis[2], section };
}

/** The footprint a mortise needs on the seat. */
export interface Footprint {
  /** Along the mortises. */
  readonly along: Span;
  /** Middle across the mortises. */
  readonly across: number;
  readonly width: number;
}

/** How far the wood runs across the mortises at each depth, and the narrowest of all: where the shift is balanced. */
export function spanAcross(
  sides: readonly Side[],
  depths: readonly number[],
  foot: Footprint,
): Span | undefined {
  return common(
    sides.flatMap((side, i) =>
      [0, depths[i]!].map((depth) => clearSpan(side.section(depth), 'y', foot.along, foot.across)),
    ),
  );
}

/** How far the wood runs along the mortises, at the mouth and at the bottom of both. */
export function spanAlong(
  sides: readonly Side[],
  depths: readonly number[],
  foot: Footprint,
): Span | undefined {
  const band = { from: foot.across - foot.width / 2, to: foot.across + foot.width / 2 };
  const middle = (foot.along.from + foot.along.to) / 2;
  return common(
    sides.flatMap((side, i) =>
      [0, depths[i]!].map((depth) => clearSpan(side.section(depth), 'x', band, middle)),
    ),
  );
}

/**
 * The usual mortise depth in one board.
 *
 * Into a wide face: half the thickness. Into an edge or end: as deep as the stock allows, at most four tenon thicknesses;
 * the stock allows a depth while a balanced mortise keeps its walls there and the wood behind its bottom, and into an end
 * while another one as deep may come from the other end. Common practice, no source.
 */
export function usualDepth(side: Side, foot: Footprint, tenonThickness: number): number {
  if (side.face.grain === 'face')
    return (side.board.blank.thickness * PRACTICE.faceDepthShare) / side.upright;
  const deepest = PRACTICE.edgeDepthThicknesses * tenonThickness;
  const half = (side.board.blank.length - PRACTICE.wall) / 2;
  const most = side.face.grain === 'end' ? Math.min(deepest, half) : deepest;
  if (allows(side, foot, most)) return most;
  const step = 0.5;
  let sound = 0;
  let unsound = Math.ceil(most / step);
  while (unsound - sound > 1) {
    const tried = Math.floor((sound + unsound) / 2);
    if (allows(side, foot, tried * step)) sound = tried;
    else unsound = tried;
  }
  return Math.max(sound, 1) * step;
}

function allows(side: Side, foot: Footprint, depth: number): boolean {
  const mouth = clearSpan(side.section(0), 'y', foot.along, foot.across);
  const bottom = clearSpan(side.section(depth), 'y', foot.along, foot.across);
  const behind = clearSpan(side.section(depth + PRACTICE.wall), 'y', foot.along, foot.across);
  if (!mouth || !bottom || !behind) return false;
  const wallAtMouth = (mouth.to - mouth.from - foot.width) / 2;
  const shared = common([mouth, bottom]);
  if (!shared) return false;
  // a leaning wall is thinner across its face than along the seat
  const lean = Math.atan2(Math.abs(bottom.from - mouth.from), depth);
  const wall = ((shared.to - shared.from - foot.width) / 2) * Math.cos(lean);
  // a board too thin for the usual wall may still give up a fifth of what it has
  return wall >= Math.min(PRACTICE.wall, 0.8 * wallAtMouth);
}

function common(spans: readonly (Span | undefined)[]): Span | undefined {
  const known = spans.filter((span) => span !== undefined);
  if (known.length === 0) return undefined;
  const from = Math.max(...known.map((span) => span.from));
  const to = Math.min(...known.map((span) => span.to));
  return to > from ? { from, to } : undefined;
}

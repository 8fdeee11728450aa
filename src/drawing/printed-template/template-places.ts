import { type Board, entersWideFace } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { distanceToSegment, type Segment, segments } from '../../profile/index.js';

/** A pin beside the board that the template is pushed against, or a screw that holds it. Board XY, mm. */
export interface TemplatePlace {
  readonly kind: 'pin' | 'screw';
  readonly at: Vec2;
  readonly diameter: number;
  /** `on the reference edge`, `in hole H2`. */
  readonly where: string;
}

/** Dowel pins and screws of templates: common practice, no source. mm */
const PIN = 6;
const SCREW = 4;

/** Kept between a pin or screw and any cutter. */
const CLEAR = 3;

/** Pins stand at least this far from the ends of the straight edge they touch. */
const FROM_END = 15;

/** What the cutter runs along with this template, and how far its path reaches out of the wood. */
interface Swept {
  readonly piece: Segment;
  readonly reach: number;
}

/**
 * Places that no cutter comes to: two pins that touch the reference edge and one that touches the reference end, as far apart as
 * can be; and screws in holes that are drilled afterwards.
 *
 * Edges on the blank's own sides are milled true before the template is laid on, and are not routed.
 *
 * @param cutter diameter of the cutter that follows the template
 */
export function templatePlaces(board: Board, cutter: number): readonly TemplatePlace[] {
  const swept = sweptBy(board, cutter);
  const clear = (at: Vec2, radius: number) =>
    swept.every(({ piece, reach }) => distanceToSegment(piece, at) > reach + radius + CLEAR);
  return [...pins(board, clear), ...screws(board, clear)];
}

type Clear = (at: Vec2, radius: number) => boolean;

/** What the template guides a cutter along: routed outline, openings, windows in a wide face. */
function sweptBy(board: Board, cutter: number): readonly Swept[] {
  const outline = segments(board.outline).filter((piece) => !onBlank(board, piece));
  const openings = board.openings.flatMap((opening) => segments(opening.outline));
  const pockets = [...board.mortises, ...board.slots].filter(({ face }) => entersWideFace(face));
  return [
    ...[...outline, ...openings].map((piece) => ({ piece, reach: cutter })),
    ...pockets.map(({ at, length, width }): Swept => {
      const half = (length - width) / 2;
      const end = (sign: 1 | -1): Vec2 => [
        at.origin[0] + sign * at.x[0] * half,
        at.origin[1] + sign * at.x[1] * half,
      ];
      return { piece: { kind: 'line', from: end(-1), to: end(1) }, reach: width / 2 };
    }),
  ];
}

/** Whether a straight piece lies on a side of the blank. */
export function onBlank({ blank: { length, width } }: Board, piece: Segment): boolean {
  if (piece.kind === 'arc') return false;
  const on = (axis: 0 | 1, at: number) => [piece.from, piece.to].every((p) => Math.abs(p[axis] - at) < 1e-6);
  return on(0, 0) || on(0, length) || on(1, 0) || on(1, width);
}

function pins(board: Board, clear: Clear): readonly TemplatePlace[] {
  const radius = PIN / 2;
  const along = (axis: 0 | 1): readonly Vec2[] =>
    segments(board.outline)
      .filter(
        (piece) =>
          piece.kind === 'line' && [piece.from, piece.to].every((p) => Math.abs(p[1 - axis]!) < 1e-6),
      )
      .flatMap(({ from, to }) => {
        const [low, high] = [
          Math.min(from[axis], to[axis]) + FROM_END,
          Math.max(from[axis], to[axis]) - FROM_END,
        ];
        return Array.from(
          { length: Math.max(0, Math.floor(high - low) + 1) },
          (_, i): Vec2 => (axis === 0 ? [low + i, -radius] : [-radius, low + i]),
        );
      })
      .filter((at) => clear(at, radius));
  const edge = along(0);
  const end = along(1);
  const pin = (at: Vec2, where: string): TemplatePlace => ({ kind: 'pin', at, diameter: PIN, where });
  return [
    ...(edge.length > 1 ? [edge[0]!, edge.at(-1)!] : edge).map((at) => pin(at, 'on the reference edge')),
    ...(end.length > 0 ? [pin(end[Math.floor(end.length / 2)]!, 'on the reference end')] : []),
  ];
}

/** In holes drilled through a wide face later, where the screw's own hole vanishes. */
function screws(board: Board, clear: Clear): readonly TemplatePlace[] {
  return board.holes.flatMap((hole, i): TemplatePlace[] => {
    const at: Vec2 = [hole.at.origin[0], hole.at.origin[1]];
    const fits = entersWideFace(hole.face) && hole.depth === 'through' && hole.diameter >= SCREW + 1;
    return fits && clear(at, SCREW / 2)
      ? [{ kind: 'screw', at, diameter: SCREW, where: `in hole H${i + 1}, before it is drilled` }]
      : [];
  });
}

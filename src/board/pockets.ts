import { type Frame, moved, scale } from '../frame/index.js';
import type { Board, Groove, Hole, Slot } from './board.js';

/** The straight-walled air of one cut: an obround run down its axis. mm. */
export interface Pocket {
  /** What cut it: `mortise left-side/top/1`. */
  readonly id: string;
  /** Origin in the middle of its mouth, x along its length, z out of the wood. */
  readonly at: Frame;
  readonly length: number;
  readonly width: number;
  readonly depth: number;
}

/**
 * All the air cut into a board, in the board's frame: what a new mortise must keep clear of.
 *
 * Round holes are obrounds as long as they are wide. A cut of a new kind that takes room joins this list, and every layout
 * sees it.
 */
export const pocketsOf = (board: Board): readonly Pocket[] => [
  ...board.mortises.map(({ id, at, length, width, depth }) => ({
    id: `mortise ${id}`,
    at,
    length,
    width,
    depth,
  })),
  ...board.holes.flatMap((hole) => holePockets(board, hole)),
  ...board.slots.map((slot) => slotPocket(board, slot)),
  ...board.grooves.map(groovePocket),
];

function holePockets(board: Board, hole: Hole): readonly Pocket[] {
  const round = (diameter: number, depth: number): Pocket => ({
    id: `hole ${hole.id}`,
    at: hole.at,
    length: diameter,
    width: diameter,
    depth,
  });
  const { counterbore, countersink } = hole;
  return [
    round(hole.diameter, depthOf(board, hole)),
    ...(counterbore ? [round(counterbore.diameter, counterbore.depth)] : []),
    ...(countersink ? [round(countersink.diameter, coneDepth(countersink, hole.diameter))] : []),
  ];
}

const coneDepth = ({ diameter, angleDeg }: NonNullable<Hole['countersink']>, shank: number): number =>
  (diameter - shank) / 2 / Math.tan((angleDeg * Math.PI) / 360);

/** An open slot goes on past its end by its width: the wood there is cut away as well. */
function slotPocket(board: Board, slot: Slot): Pocket {
  const { at, length, width, openAt } = slot;
  const more = openAt === undefined ? 0 : width;
  const towards = openAt === 'start' ? -1 : 1;
  return {
    id: `slot ${slot.id}`,
    at: moved(at, scale(at.x, (towards * more) / 2)),
    length: length + more,
    width,
    depth: depthOf(board, slot),
  };
}

/** An end that runs out is square: half a width more than the obround has. */
function groovePocket({ id, at, length, width, depth, stopped }: Groove): Pocket {
  const past = (end: 'start' | 'end') => (stopped.includes(end) ? 0 : width / 2);
  return {
    id: `groove ${id}`,
    at: moved(at, scale(at.x, (past('end') - past('start')) / 2)),
    length: length + past('start') + past('end'),
    width,
    depth,
  };
}

/** Through is as deep as the blank reaches in any direction: air beyond the board disturbs nothing. */
const depthOf = ({ blank }: Board, { depth }: { readonly depth: number | 'through' }): number =>
  depth === 'through' ? Math.hypot(blank.length, blank.width, blank.thickness) : depth;

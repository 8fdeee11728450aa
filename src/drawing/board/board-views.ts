import type { Board } from '../../board/index.js';
import { dot, type Frame, scale, type Vec3, WORLD } from '../../frame/index.js';
import type { Side } from '../dimension/index.js';
import type { Projection } from '../sheet/index.js';
import { bevelStops } from './board-stops.js';

/** A view of a board in its own frame, and which side of the main view it stands on. */
export interface BoardView {
  readonly role: 'face' | 'edge' | 'end';
  /** `reference face`, as seen. */
  readonly name: string;
  readonly frame: Frame;
  /** Undefined for the main view. */
  readonly side: Side | undefined;
}

const OPPOSITE: Readonly<Record<Side, Side>> = {
  above: 'below',
  below: 'above',
  left: 'right',
  right: 'left',
};

/** A feature faces the viewer when its axis is nearer to the line of sight than this: cos of about 25°. */
export const FACING = 0.9;

/**
 * The views a board needs: the wide face most is cut into, with the grain to the right; an edge and an end, both of them
 * where something is cut into both.
 */
export function boardViews(board: Board, projection: Projection): readonly BoardView[] {
  const into = (direction: Vec3) => cutsInto(board, direction);
  // seen from the reference face the board is turned over about its length
  const main: Frame = into([0, 0, -1]) > into([0, 0, 1]) ? { ...WORLD, y: [0, -1, 0], z: [0, 0, -1] } : WORLD;
  const beside = (role: 'edge' | 'end', sides: readonly [Side, Side]): BoardView[] => {
    const seen = sides.map((seenFrom) => {
      const frame = turned(main, seenFrom);
      const side = projection === 'third-angle' ? seenFrom : OPPOSITE[seenFrom];
      return { role, name: nameOf(frame.z), frame, side, cuts: into(frame.z) };
    });
    const cutInto = seen.filter((view) => view.cuts > 0);
    const usual = seen.filter((view) => view.side === sides[0]);
    return cutInto.length > 0 ? cutInto : usual;
  };
  return [
    { role: 'face', name: nameOf(main.z), frame: main, side: undefined },
    ...beside('edge', ['below', 'above']),
    ...beside('end', ['right', 'left']),
  ];
}

/** Whether a view shows what no other does: the face, cuts into an edge or end, the slope of a bevel. */
export const isTelling = (board: Board, { role, frame }: BoardView): boolean =>
  role === 'face' ||
  cutsInto(board, frame.z) > 0 ||
  bevelStops(board).some(({ axis }) => axis === (role === 'edge' ? 0 : 1));

function cutsInto({ mortises, holes, slots, grooves }: Board, direction: Vec3): number {
  return [...mortises, ...holes, ...slots, ...grooves].filter((cut) => dot(cut.at.z, direction) > FACING)
    .length;
}

/** The view next to a view, from one of its sides. */
function turned({ origin, x, y, z }: Frame, from: Side): Frame {
  const back = (v: Vec3) => scale(v, -1);
  switch (from) {
    case 'below':
      return { origin, x, y: z, z: back(y) };
    case 'above':
      return { origin, x, y: back(z), z: y };
    case 'right':
      return { origin, x: back(z), y, z: x };
    case 'left':
      return { origin, x: z, y, z: back(x) };
  }
}

function nameOf([x, y, z]: Vec3): string {
  if (Math.abs(z) > FACING) return z > 0 ? 'opposite face' : 'reference face';
  if (Math.abs(y) > FACING) return y > 0 ? 'opposite edge' : 'reference edge';
  return x > 0 ? 'opposite end' : 'reference end';
}

import { makeBoard } from '../board/index.js';
import {
  add,
  cross,
  dot,
  frame,
  levelAt,
  pointOut,
  scale,
  subtract,
  unit,
  type Vec3,
} from '../frame/index.js';
import type { PlacedBoard } from './placed-board.js';
import { trimmed } from './trimmed.js';

/** A straight part between two points of its centre line, mm, assembly frame. */
export interface Leg {
  readonly id: string;
  readonly name?: string;
  readonly material?: string;
  /** Middle of its upper end. */
  readonly above: Vec3;
  /** Middle of its lower end. */
  readonly below: Vec3;
  /** Across its reference face. */
  readonly width: number;
  readonly thickness: number;
  /** A direction its reference face runs along; the assembly's x when left out, so that the face looks to the front. */
  readonly faceAlong?: Vec3;
}

/**
 * A leg of square stock from a point above to a point below, both ends cut level: a compound splay when it leans two ways.
 *
 * Its reference end is the foot. The ends are the bevels `head` and `foot`; an upright leg has none.
 *
 * @throws BoardError when its reference face cannot run along the wished direction, or the ends meet
 * @example legBetween({ id: 'leg', above: [150, 100, 420], below: [200, 130, 0], width: 40, thickness: 40 })
 */
export function legBetween(leg: Leg): PlacedBoard {
  const up = unit(subtract(leg.above, leg.below));
  const z = unit(cross(up, leg.faceAlong ?? [1, 0, 0]));
  const place = frame(leg.below, z, up);
  const corner = pointOut(place, [0, -leg.width / 2, -leg.thickness / 2]);
  const { id, width, thickness } = leg;
  const length = dot(subtract(leg.above, leg.below), up);
  const whole = makeBoard({
    id,
    ...(leg.name !== undefined && { name: leg.name }),
    ...(leg.material !== undefined && { material: leg.material }),
    blank: { length: length + 2 * (width + thickness), width, thickness },
  });
  const start = add(corner, scale(up, -(width + thickness)));
  const standing = { board: whole, place: { ...place, origin: start } };
  const floor = levelAt(leg.below[2]);
  return trimmed(
    trimmed(standing, { ...floor, normal: scale(floor.normal, -1) }, 'foot'),
    levelAt(leg.above[2]),
    'head',
  );
}

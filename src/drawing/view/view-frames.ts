import { type Frame, frame, type Vec3 } from '../../frame/index.js';

const ORIGIN: Vec3 = [0, 0, 0];

/** Looking at a thing that stands in the assembly frame, from where the person stands. x right, y up, z toward the viewer. */
export const VIEW_FRAMES = {
  front: frame(ORIGIN, [0, -1, 0], [1, 0, 0]),
  back: frame(ORIGIN, [0, 1, 0], [-1, 0, 0]),
  right: frame(ORIGIN, [1, 0, 0], [0, 1, 0]),
  left: frame(ORIGIN, [-1, 0, 0], [0, -1, 0]),
  top: frame(ORIGIN, [0, 0, 1], [1, 0, 0]),
  bottom: frame(ORIGIN, [0, 0, -1], [1, 0, 0]),
  isometric: lookingFrom([1, -1, 1]),
} as const satisfies Record<string, Frame>;

export type ViewName = keyof typeof VIEW_FRAMES;

/**
 * The frame of a view from any direction, with up as upright as it can be.
 *
 * @param direction from the thing to the viewer, any length
 */
export function lookingFrom(direction: Vec3): Frame {
  const flat = Math.hypot(direction[0], direction[1]);
  return frame(ORIGIN, direction, flat > 0 ? [-direction[1], direction[0], 0] : [1, 0, 0]);
}

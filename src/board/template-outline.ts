import { ProfileError } from '../errors.js';
import { counterClockwise, offset, type Profile } from '../profile/index.js';
import type { Board, FaceId } from './board.js';
import { type Follower, standOff } from './follower.js';

/**
 * The line a board's outline template is cut to: the outline itself, or what is left of it inside the stand-off of a guide bush.
 *
 * @returns no loop where the board is too narrow for the bush, and no template can be made
 * @throws InputError as {@link standOff}
 */
export function templateOutline(board: Board, follower: Follower): readonly Profile[] {
  const off = standOff(follower);
  const outline = counterClockwise(board.outline);
  if (off === 0) return [outline];
  try {
    return offset(outline, -off);
  } catch (error) {
    // an outline too small to stand off from
    if (error instanceof ProfileError) return [];
    throw error;
  }
}

/** Whether a feature enters square to the two wide faces, the only ones a template lies on. */
export const entersWideFace = (face: FaceId): boolean =>
  face === 'reference-face' || face === 'opposite-face';

import { type Board, type Follower, standOff, templateOutline } from '../../board/index.js';
import { InputError } from '../../errors.js';
import { clockwise, counterClockwise, offset, type Profile } from '../../profile/index.js';
import { closed } from './strokes.js';
import type { Dashing, Entity } from './template.js';

/**
 * The part's outline and openings, as the template has them, and (under a guide bush) as the part has them on MARK.
 *
 * @throws InputError when the stand-off leaves nothing of the outline
 */
export function partLines(board: Board, follower: Follower): readonly Entity[] {
  const off = standOff(follower);
  const outline = counterClockwise(board.outline);
  const openings = board.openings.map((opening) => clockwise(opening.outline));
  if (off === 0) return [outline, ...openings].map((loop) => closed('CUT', loop));
  const edge = templateOutline(board, follower);
  if (edge.length === 0) {
    throw new InputError(
      'template-vanishes',
      (say) =>
        `template of ${board.id}: its line stands ${say.fine(off)} inside the part, which leaves nothing of the outline: take a smaller guide bush or a larger cutter`,
    );
  }
  // a clockwise loop grows by the stand-off just as its hole does
  const windows = openings.flatMap((opening) => offset(opening, off));
  return [
    ...[...edge, ...windows].map((loop) => closed('CUT', loop)),
    ...[outline, ...openings].map((loop) => closed('MARK', loop)),
  ];
}

/** A pocket window of the template, clockwise, and (under a guide bush) the pocket itself on MARK. */
export function windowLines(
  layer: 'CUT' | 'POCKET',
  pocket: (grownBy: number) => Profile,
  off: number,
  dashing?: Dashing,
): readonly Entity[] {
  const window = closed(layer, clockwise(pocket(off)), dashing);
  return off === 0 ? [window] : [window, closed('MARK', clockwise(pocket(0)), dashing)];
}

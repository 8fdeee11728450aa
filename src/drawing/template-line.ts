import type { Board } from '../board/index.js';
import { InputError } from '../errors.js';
import { clockwise, counterClockwise, offset, type Profile } from '../profile/index.js';
import { closed } from './strokes.js';
import type { Entity } from './template.js';

/** What follows the template: a cutter with a bearing of its own diameter, or one inside a guide bush. Diameters, mm. */
export interface Follower {
  readonly cutter: number;
  /** Outer diameter of the guide bush. */
  readonly bush?: number;
}

/**
 * How far the template's line stands off the part's line, mm: 0 for a bearing, (bush − cutter) / 2 for a guide bush.
 *
 * @param width of a pocket no wider than its cutter: the bush then runs around that cutter
 * @throws InputError when the cutter has no size, or the bush is not larger than the cutter
 */
export function standOff({ cutter, bush }: Follower, width = Number.POSITIVE_INFINITY): number {
  if (!(Number.isFinite(cutter) && cutter > 0)) {
    throw new InputError(
      'template-cutter',
      `template: cutter of ${cutter} mm received, a diameter above 0 mm is needed: give the cutter's diameter`,
    );
  }
  if (bush === undefined) return 0;
  if (!(Number.isFinite(bush) && bush > cutter)) {
    throw new InputError(
      'template-bush',
      `template: guide bush of ${bush} mm received for a cutter of ${cutter} mm, the bush must be larger than the cutter: take a larger bush or a smaller cutter`,
    );
  }
  return (bush - pocketCutter({ cutter, bush }, width)) / 2;
}

/** The cutter a pocket is routed with inside the bush: one as wide as the pocket where the bush takes it, else the outline's. */
export const pocketCutter = ({ cutter, bush }: Follower, width: number): number =>
  bush !== undefined && width < bush ? width : cutter;

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
  const edge = offset(outline, -off);
  if (edge.length === 0) {
    throw new InputError(
      'template-vanishes',
      `template of ${board.id}: its line stands ${off} mm inside the part, which leaves nothing of the outline: take a smaller guide bush or a larger cutter`,
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
): readonly Entity[] {
  const window = closed(layer, clockwise(pocket(off)));
  return off === 0 ? [window] : [window, closed('MARK', clockwise(pocket(0)))];
}

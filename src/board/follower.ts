import { InputError } from '../errors.js';

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
      (say) =>
        `template: the cutter is ${say.fine(cutter)}; it must be more than 0: give the cutter's diameter`,
    );
  }
  if (bush === undefined) return 0;
  if (!(Number.isFinite(bush) && bush > cutter)) {
    throw new InputError(
      'template-bush',
      (say) =>
        `template: the guide bush is ${say.fines(bush, cutter)[0]} and the cutter ${say.fines(bush, cutter)[1]}; the bush must be larger than the cutter: use a larger bush or a smaller cutter`,
    );
  }
  return (bush - pocketCutter({ cutter, bush }, width)) / 2;
}

/** The cutter a pocket is routed with inside the bush: one as wide as the pocket where the bush takes it, else the outline's. */
export const pocketCutter = ({ cutter, bush }: Follower, width: number): number =>
  bush !== undefined && width < bush ? width : cutter;

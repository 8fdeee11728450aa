import { ProfileError } from '../errors.js';
import { SAME_POINT } from '../tolerances.js';
import { area } from './area.js';
import { type Corners, offsetPieces } from './offset-pieces.js';
import { keptSlices, sliced } from './offset-slices.js';
import type { Profile } from './profile.js';
import { segments } from './segment.js';
import { stitched } from './stitch.js';
import { reversed } from './turn.js';

/**
 * The outline a constant distance away: outside for a positive distance, inside for a negative one. Arcs stay arcs.
 *
 * A corner that the new outline passes on its outer side is rounded about the old corner (`round`, what a bush or bearing leaves),
 * or, with `sharp`, two lines are extended until they meet, however far that is; a corner with an arc at it is always rounded. A
 * corner passed on its inner side stays sharp. Arcs and sides with no room left vanish.
 *
 * @param distance mm; up to 1e-6 either way it is the outline itself
 * @returns loops in the direction of the outline: several when it is pinched apart, none when it vanishes. An outline that grows
 * together around a gap also returns that gap, in the opposite direction.
 * @throws ProfileError when the distance is not a number
 * @example offset(rectangle({ length: 40, width: 10 }), -1) // one rectangle, 38 × 8
 */
export function offset(
  profile: Profile,
  distance: number,
  options: { readonly corners?: Corners } = {},
): readonly Profile[] {
  if (!Number.isFinite(distance))
    throw new ProfileError(
      'profile-offset',
      `offset: the distance is ${distance}; it must be a finite number of mm: check the dimension it comes from`,
    );
  if (Math.abs(distance) <= SAME_POINT) return [profile];
  if (area(profile) < 0) return offset(reversed(profile), distance, options).map(reversed);
  const original = segments(profile);
  const slices = sliced(offsetPieces(original, distance, options.corners ?? 'round'));
  const loops = stitched(keptSlices(slices, original, Math.abs(distance)));
  return distance > 0 ? loops : loops.filter((loop) => area(loop) > 0);
}

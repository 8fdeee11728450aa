import { ProfileError } from '../errors.js';
import { SAME_POINT } from '../tolerances.js';
import { area } from './area.js';
import { ownCrossing } from './crosses-itself.js';
import type { Profile } from './profile.js';
import { spot } from './spot.js';

/**
 * The outline itself, once it is known to be a closed simple loop of lines and arcs.
 *
 * @param where what the outline belongs to, for the text of the error
 * @throws ProfileError for fewer than two vertices, a number that is not finite, a repeated vertex, no area, or an outline that meets itself
 */
export function validProfile(profile: Profile, where = 'outline'): Profile {
  if (profile.length < 2)
    throw new ProfileError(
      'profile-too-few-vertices',
      `${where}: it has ${profile.length} vertices; it must have two or more: give the whole loop`,
    );
  profile.forEach((v, i) => {
    if (![v.x, v.y, v.bulge].every(Number.isFinite))
      throw new ProfileError(
        'profile-not-finite',
        `${where}: vertex ${i + 1} has x ${v.x}, y ${v.y}, bulge ${v.bulge}; all must be finite numbers: check the dimension it comes from`,
      );
  });
  profile.forEach((v, i) => {
    const next = profile[(i + 1) % profile.length]!;
    const apart = Math.hypot(next.x - v.x, next.y - v.y);
    if (apart <= SAME_POINT)
      throw new ProfileError(
        'profile-repeated-vertex',
        (say) =>
          `${where}: vertex ${i + 1} at ${spot(say, [v.x, v.y])} and the next are in one place: leave one of them out, or give the side a length`,
      );
  });
  const enclosed = Math.abs(area(profile));
  if (enclosed <= SAME_POINT)
    throw new ProfileError(
      'profile-no-area',
      `${where}: the outline encloses nothing: check that its length and width are not zero`,
    );
  const crossing = ownCrossing(profile);
  if (crossing)
    throw new ProfileError(
      'profile-crosses-itself',
      (say) =>
        `${where}: the outline crosses or touches itself at ${spot(say, crossing)}: change the order of the vertices or the dimension that brings them together`,
    );
  return profile;
}

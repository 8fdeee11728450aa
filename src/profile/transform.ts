import { ProfileError } from '../errors.js';
import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Profile } from './profile.js';
import { reversed } from './turn.js';

/** Where a plane's origin and its x and y directions go: two equally long vectors at a right angle, so that arcs stay arcs. */
export interface Placement2d {
  readonly origin: Vec2;
  readonly x: Vec2;
  readonly y: Vec2;
}

/**
 * The outline in another place. A placement that mirrors also reverses the travel, so that wood stays on its side.
 *
 * @throws ProfileError when x and y are not at a right angle and equally long
 * @example transform2d(outline, { origin: [0, 300], x: [0, -1], y: [1, 0] })
 */
export function transform2d(profile: Profile, { origin, x, y }: Placement2d): Profile {
  const size = Math.hypot(...x);
  const skew = Math.max(Math.abs(x[0] * y[0] + x[1] * y[1]), Math.abs(size - Math.hypot(...y)) * size);
  if (!(size > 0) || !(skew <= SAME_POINT * size * size))
    throw new ProfileError(
      'profile-placement',
      `transform2d: x is (${x.join(', ')}) and y (${y.join(', ')}); they must be equally long and at a right angle, or arcs would not stay arcs`,
    );
  const mirrored = x[0] * y[1] - x[1] * y[0] < 0;
  const placed = profile.map((v) => ({
    x: origin[0] + x[0] * v.x + y[0] * v.y,
    y: origin[1] + x[1] * v.x + y[1] * v.y,
    bulge: mirrored && v.bulge !== 0 ? -v.bulge : v.bulge,
  }));
  return mirrored ? reversed(placed) : placed;
}

/** The outline moved by a vector, mm. */
export const translate = (profile: Profile, by: Vec2): Profile =>
  profile.map((v) => ({ x: v.x + by[0], y: v.y + by[1], bulge: v.bulge }));

/** The outline turned counter-clockwise about a point (the origin when left out), degrees. */
export function rotate(profile: Profile, deg: number, about: Vec2 = [0, 0]): Profile {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const origin: Vec2 = [about[0] - c * about[0] + s * about[1], about[1] - s * about[0] - c * about[1]];
  return transform2d(profile, { origin, x: [c, s], y: [-s, c] });
}

/** The outline mirrored in the x axis (y changes sign) or the y axis (x does); its travel stays counter-clockwise or clockwise. */
export const mirror = (profile: Profile, axis: 'x' | 'y'): Profile =>
  transform2d(
    profile,
    axis === 'x' ? { origin: [0, 0], x: [1, 0], y: [0, -1] } : { origin: [0, 0], x: [-1, 0], y: [0, 1] },
  );

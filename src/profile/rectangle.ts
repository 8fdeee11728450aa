import type { Profile } from './profile.js';
import { validProfile } from './valid-profile.js';

/**
 * A rectangle with its sides along the axes, counter-clockwise from its lower left corner.
 *
 * @param size corner x, y (0 when left out), length along X and width along Y, mm
 * @throws ProfileError when a side is zero or not a number
 * @example area(rectangle({ length: 600, width: 90 })) // 54000
 */
export function rectangle(size: { x?: number; y?: number; length: number; width: number }): Profile {
  const { x = 0, y = 0, length, width } = size;
  return validProfile(
    [
      { x, y, bulge: 0 },
      { x: x + length, y, bulge: 0 },
      { x: x + length, y: y + width, bulge: 0 },
      { x, y: y + width, bulge: 0 },
    ],
    'rectangle',
  );
}

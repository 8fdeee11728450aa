import { InputError } from '../errors.js';
import type { Vec2 } from '../frame/index.js';
import { parseLength, type Units } from '../length/index.js';
import type { Assumed } from './hole-centre.js';
import { entries } from './hole-entries.js';

/** Where the holes in a router's base are, seen from above the plate. */
export interface HolePattern {
  /** Relative to the cutter's centre, mm. */
  readonly holes: readonly { readonly name: string; readonly at: Vec2 }[];
  /** Largest difference between a measured distance and the pattern, mm; absent where nothing was measured twice over. */
  readonly residual?: number;
  /** Where the cutter stands, when nothing measured tells it. */
  readonly assumed?: Assumed;
  /** Sentences for the person: how the holes were taken. */
  readonly notes: readonly string[];
}

/**
 * Holes evenly spaced on a circle about the cutter.
 *
 * @param of diameter of the circle through the centres, mm; number of holes; direction of the first from X, degrees
 * @throws InputError for a diameter that is not positive, or a count that is not a whole number from 1
 * @example boltCircle({ diameter: 100, count: 3, startDeg: 90 }).holes[0].at // [0, 50]
 */
export function boltCircle(of: { diameter: number; count: number; startDeg?: number }): HolePattern {
  const { diameter, count, startDeg = 0 } = of;
  if (!(diameter > 0 && Number.isFinite(diameter)))
    throw new InputError(
      'hole-circle',
      (say) =>
        `hole circle: diameter is ${say.fine(diameter)}; it must be more than 0: measure it between two opposite holes`,
    );
  if (!(Number.isInteger(count) && count >= 1))
    throw new InputError('hole-count', `hole circle: it has ${count} holes; give a whole number, 1 or more`);
  const holes = Array.from({ length: count }, (_, i) => {
    const turn = ((startDeg + (360 * i) / count) * Math.PI) / 180;
    return {
      name: String(i + 1),
      at: [(Math.cos(turn) * diameter) / 2, (Math.sin(turn) * diameter) / 2] as const,
    };
  });
  return { holes, notes: [] };
}

/**
 * Holes at given points: `x, y; x, y; …`, relative to the cutter's centre and seen from above.
 *
 * @param text a comma between x and y, a semicolon or a new line between points
 * @param units what bare numbers are in, unless the text begins with `mm:` or `in:`
 * @throws InputError naming the point that cannot be read, or two holes in one place
 * @example fromPoints('40, 30; -40, 30; 0, -2 in').holes.length // 3
 */
export function fromPoints(text: string, units: Units = 'mm'): HolePattern {
  const list = entries(text, units, 'holes', '40, 30; -40, 30; 0, -50');
  const holes = list.entries.map((entry, i) => {
    const parts = entry.split(',');
    if (parts.length !== 2)
      throw new InputError(
        'hole-point',
        `hole ${i + 1}: '${entry}' is not a point: write x, a comma and y, like 40, 30`,
      );
    return { name: String(i + 1), at: [lengthIn(parts[0]!), lengthIn(parts[1]!)] as const };
    function lengthIn(part: string): number {
      try {
        return parseLength(part, { units: list.units });
      } catch (error) {
        throw error instanceof InputError
          ? new InputError(error.code, `hole ${i + 1}, '${entry}': ${error.message}`)
          : error;
      }
    }
  });
  const places = new Map<string, string>();
  for (const { name, at } of holes) {
    const twin = places.get(at.join());
    if (twin !== undefined)
      throw new InputError('hole-twice', `holes ${twin} and ${name} are in one place: leave one out`);
    places.set(at.join(), name);
  }
  return { holes, notes: [] };
}

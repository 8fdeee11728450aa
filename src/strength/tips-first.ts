import type { Vec2, Vec3 } from '../frame/index.js';
import { footLines } from './foot-line.js';
import type { Margin } from './margin.js';
import type { Strength } from './strength.js';

/** Where the least push or load tips a piece, and which way it goes over. */
export interface TipsFirst {
  /** The place on the surface, assembly frame, mm. */
  readonly at: Vec3;
  /** Unit, in the plan of the floor, away from the feet. */
  readonly out: Vec2;
  readonly margin: Margin;
}

/** @returns undefined when nothing that was worked out tips it */
export function tipsFirst({ asked, margins }: Pick<Strength, 'asked' | 'margins'>): TipsFirst | undefined {
  const [margin] = margins
    .filter(({ unit, better, at }) => unit === 'N' && better === 'more' && at !== undefined)
    .toSorted((a, b) => a.figure - b.figure);
  const at = margin?.at;
  if (!at) return undefined;
  const [x, y] = at;
  const [over] = footLines(asked.resting).toSorted((a, b) => a.inside([x, y]) - b.inside([x, y]));
  return over && { at, out: over.out, margin };
}

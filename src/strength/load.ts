import type { Use, User } from '../assembly/index.js';
import { FOOT_PATCH, GRAVITY } from '../statics/index.js';

/** A load a surface is asked to bear, and where its figure is from. */
export interface Load {
  /**
   * `proof`: once, on a patch, at the worst place; `edge`: the same on a patch at an edge; `person`: in daily use; `sideways`:
   * at the height of the surface; `spread`: all over it, for years; `books`: a row of them along it, for years.
   */
  readonly kind: 'proof' | 'edge' | 'person' | 'sideways' | 'spread' | 'books';
  /** N; of a spread load N/mm², of books N/mm. */
  readonly size: number;
  /** Side of the square it stands on, mm; all over the surface when left out. */
  readonly patch?: number;
  readonly basis: string;
}

const STEP =
  'EN 14183, as quoted by trade pages and a test laboratory: most load 150 kg, 2600 N on 100 × 100 mm';
const SEAT =
  'EN 581-2 (as GOST EN 581-2-2012, table 1), domestic: seat 1600 N, front edge 1300 N; people up to 110 kg';
const GROWN = 'grown in proportion for a heavier person';

/** The person a published load was set for, kg. */
const STEP_KG = 150;
const SEAT_KG = 110;

/** Pounds-force on a square foot, N/mm² (NIST SP 811). */
const PSF = 47.88026e-6;

/** Pounds-force on a running foot, N/mm. */
const POUND_PER_FOOT = 4.4482216 / 304.8;

/**
 * The loads of a surface by its use. A published load grows with a person heavier than it was set for, and never shrinks.
 *
 * @example loadsOf('step', { kg: 150, child: false }) // proof 2600 N, person 1471.5 N, sideways 300 N
 */
export function loadsOf(use: Use, { kg }: User): readonly Load[] {
  const patch = FOOT_PATCH;
  const person: Load = { kind: 'person', size: kg * GRAVITY, patch, basis: `the weight of ${kg} kg` };
  if (use === 'step') {
    const times = Math.max(1, kg / STEP_KG);
    const basis = times > 1 ? `${STEP}; ${GROWN}` : STEP;
    return [
      { kind: 'proof', size: 2600 * times, patch, basis },
      { kind: 'edge', size: 2600 * times, patch, basis },
      person,
      {
        kind: 'sideways',
        size: 300 * times,
        basis: 'a fifth of the weight of 150 kg, which feet that must not slip are to hold: after EN 14183',
      },
    ];
  }
  if (use === 'seat') {
    const times = Math.max(1, kg / SEAT_KG);
    const basis = times > 1 ? `${SEAT}; ${GROWN}` : SEAT;
    return [
      { kind: 'proof', size: 1600 * times, patch, basis },
      { kind: 'edge', size: 1300 * times, patch, basis },
      person,
      { kind: 'sideways', size: 300 * times, basis: 'our own, as for a step; no published force was seen' },
    ];
  }
  if (use === 'table-top') {
    return [
      { kind: 'proof', size: 1000, patch, basis: 'from memory: vertical load of a table test' },
      { kind: 'edge', size: 1000, patch, basis: 'from memory: vertical load of a table test' },
      { kind: 'sideways', size: 400, basis: 'from memory: horizontal load of a table test' },
    ];
  }
  if (use === 'shelf')
    return [
      {
        kind: 'spread',
        size: 50 * PSF,
        basis:
          'Architectural Woodwork Standards (2009), 1.2.21: 50 lb on a square foot, for books; 200 lb at most',
      },
      {
        kind: 'books',
        size: 25 * POUND_PER_FOOT,
        basis: 'trade pages: 20 to 25 lb of books on a running foot',
      },
    ];
  return [];
}

import type { Vec2 } from '../frame/index.js';
import { arcs, counterClockwise, pointAlong, tightCorners } from '../profile/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Board } from './board.js';
import { type Follower, standOff } from './follower.js';

/** A corner of the part that cannot be routed to size along its template. */
export interface TightTemplateCorner {
  /** The corner, or the middle of its arc; board X and Y, mm. */
  readonly at: Vec2;
  /** Radius the part has there, mm; 0 is a sharp corner. */
  readonly radius: number;
  /** Least radius that can be routed, mm. */
  readonly needed: number;
  /** `outline`, or the id of an opening. */
  readonly line: string;
  /** The cutter does not fit into the corner, or the bush rounds an outer corner more than the part does. */
  readonly because: 'cutter' | 'bush';
}

/**
 * Corners of the outline and the openings too tight for the cutter, and rounded outer corners too tight for the bush.
 *
 * An inner corner needs half the cutter's diameter. A guide bush asks for no more there: the template's own corner stands
 * off by (bush − cutter) / 2, so it is as large as the bush exactly when the part's is as large as the cutter. Around an outer
 * corner the bush leaves at least that stand-off as a radius; sharp outer corners are left out, as the router is run past them.
 *
 * @param follower diameters, mm
 * @throws InputError as {@link standOff}
 */
export function tightTemplateCorners(board: Board, follower: Follower): readonly TightTemplateCorner[] {
  const off = standOff(follower);
  const loops = [
    { line: 'outline', profile: counterClockwise(board.outline), side: 'outside' as const },
    ...board.openings.map((opening) => ({
      line: opening.id,
      profile: counterClockwise(opening.outline),
      side: 'inside' as const,
    })),
  ];
  return loops.flatMap(({ line, profile, side }) => {
    const inner = tightCorners(profile, follower.cutter / 2, side).map(
      (corner): TightTemplateCorner => ({ ...corner, needed: follower.cutter / 2, line, because: 'cutter' }),
    );
    const outward = side === 'outside' ? 1 : -1;
    const outer = arcs(profile)
      .filter((arc) => arc.bulge * outward > 0 && arc.radius < off - SAME_POINT)
      .map(
        (arc): TightTemplateCorner => ({
          at: pointAlong(arc, 1 / 2),
          radius: arc.radius,
          needed: off,
          line,
          because: 'bush',
        }),
      );
    return [...inner, ...outer];
  });
}

import { ProfileError, type Voice } from '../errors.js';
import { SAME_POINT } from '../tolerances.js';
import type { Profile, Vertex } from './profile.js';
import { spot } from './spot.js';
import { counterClockwise } from './turn.js';
import { validProfile } from './valid-profile.js';

/** A corner of a polygon, mm; `radius` rounds it, whether it points out of the wood or into it. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly radius?: number;
}

/**
 * An outline from its corners in either order; the result is counter-clockwise.
 *
 * A rounded corner takes radius·tan(turn/2) from both of its sides; two neighbours may use a side up completely.
 *
 * @throws ProfileError when a radius does not fit, or the outline is not a simple loop
 * @example polygon([{ x: 0, y: 0 }, { x: 300, y: 0 }, { x: 300, y: 90, radius: 20 }, { x: 0, y: 90 }])
 */
export function polygon(corners: readonly Corner[]): Profile {
  validProfile(
    corners.map(({ x, y }) => ({ x, y, bulge: 0 })),
    'polygon',
  );
  const rounds = corners.map((corner, i) => roundOf(corners, corner, i));
  corners.forEach((corner, i) => {
    const next = (i + 1) % corners.length;
    const side = Math.hypot(corners[next]!.x - corner.x, corners[next]!.y - corner.y);
    const [here, there] = [rounds[i]!, rounds[next]!];
    if (here.taken + there.taken > side + SAME_POINT) {
      const [which, at, other] = here.radius >= there.radius ? [i, here, there] : [next, there, here];
      const room = Math.max(0, side - other.taken) / Math.tan(Math.abs(at.turn) / 2);
      throw refused(
        corners,
        which,
        at.radius,
        (say) => `from 0 to ${say.fine(room)} beside this side of ${say.fine(side)}`,
      );
    }
  });
  const vertices = corners.flatMap((corner, i) => rounded(corners, corner, i, rounds[i]!));
  const kept = vertices.filter((v, i) => {
    const next = vertices[(i + 1) % vertices.length]!;
    return v.bulge !== 0 || Math.hypot(next.x - v.x, next.y - v.y) > SAME_POINT;
  });
  return counterClockwise(validProfile(kept, 'polygon'));
}

interface Round {
  readonly radius: number;
  /** Change of direction at the corner, radians, positive to the left. */
  readonly turn: number;
  /** Length taken from each side, mm. */
  readonly taken: number;
}

function roundOf(corners: readonly Corner[], corner: Corner, i: number): Round {
  const [inX, inY] = toward(corners.at(i - 1)!, corner);
  const [outX, outY] = toward(corner, corners[(i + 1) % corners.length]!);
  const turn = Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY);
  const radius = corner.radius ?? 0;
  if (!(radius >= 0) || !Number.isFinite(radius)) throw refused(corners, i, radius, () => '0 or more');
  return { radius, turn, taken: radius * Math.tan(Math.abs(turn) / 2) };
}

function rounded(corners: readonly Corner[], corner: Corner, i: number, round: Round): readonly Vertex[] {
  if (round.taken < SAME_POINT) return [{ x: corner.x, y: corner.y, bulge: 0 }];
  const [inX, inY] = toward(corners.at(i - 1)!, corner);
  const [outX, outY] = toward(corner, corners[(i + 1) % corners.length]!);
  return [
    { x: corner.x - inX * round.taken, y: corner.y - inY * round.taken, bulge: Math.tan(round.turn / 4) },
    { x: corner.x + outX * round.taken, y: corner.y + outY * round.taken, bulge: 0 },
  ];
}

function toward(from: Corner, to: Corner): readonly [number, number] {
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  return [(to.x - from.x) / size, (to.y - from.y) / size];
}

const refused = (
  corners: readonly Corner[],
  i: number,
  radius: number,
  allowed: (say: Voice) => string,
): ProfileError =>
  new ProfileError(
    'profile-corner-radius',
    (say) =>
      `polygon: corner ${i + 1} of ${corners.length} at ${spot(say, [corners[i]!.x, corners[i]!.y])} has a radius of ${say.fine(radius)}; it must be ${allowed(say)}: use a smaller radius or move the corner`,
  );

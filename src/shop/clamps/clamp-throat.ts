import { cross, dot, frame, pointIn, settledPlace, type Vec2, type Vec3 } from '../../frame/index.js';
import { distanceToSegment, loopArea, type Region, segment, unite } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { type ClampBearing, holds, type StandingFaces } from './clamp-bearing.js';

/**
 * How far a clamp must reach in from its bar: from the line it squeezes along to the nearest place where the bar passes beside
 * all wood between the jaws.
 *
 * The boards are seen along the line; the bar lies outside the outline of what stands between the jaws, and cannot be threaded
 * through an opening.
 *
 * @param boards that stand together when the clamp is put on
 * @returns mm; 0 when the line itself runs outside
 */
export function throatOf(
  standing: StandingFaces,
  boards: readonly string[],
  through: Vec3,
  direction: Vec3,
  ends: readonly [ClampBearing, ClampBearing],
): number {
  const side: Vec3 = Math.abs(direction[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  // two joints settled each by itself leave it a hair askew, and what touches would part as seen along it
  const squeezed: Vec3 = [straight(direction[0]), straight(direction[1]), straight(direction[2])];
  const seen = frame(through, squeezed, cross(side, squeezed));
  const [far, near] = ends.map(({ at }) => pointIn(seen, at)[2]);
  const silhouettes = boards.flatMap((id) => {
    const faces = standing.get(id)!;
    const along = faces.flatMap(({ loops }) =>
      loops.flatMap((loop) => loop.map((corner) => dot(corner, seen.z))),
    );
    const beyond = dot(through, seen.z);
    // what lies beyond a jaw is not in the bar's way
    if (Math.min(...along) >= far! + beyond - SAME_POINT || Math.max(...along) <= near! + beyond + SAME_POINT)
      return [];
    return faces
      .filter((face) => dot(face.frame.z, direction) > SAME_POINT)
      .map(
        ({ loops }): Region =>
          // boards that touch are one in the bar's way: no gap of rounding is left for it to pass
          loops.map((loop) =>
            loop
              .map((corner) => pointIn(seen, corner))
              .map(([x, y]): Vec2 => [settledPlace(x), settledPlace(y)]),
          ),
      );
  });
  const round = unite(...silhouettes).filter((loop) => loopArea(loop) > 0 && holds([loop], 0, 0));
  const sides = round.flatMap((loop) =>
    loop.map((from, i) => segment(from, loop[(i + 1) % loop.length]!, 0)),
  );
  return sides.length === 0 ? 0 : Math.min(...sides.map((one) => distanceToSegment(one, [0, 0])));
}

/** A part of a direction to 1e-7: 1e-4 mm over a metre. */
const straight = (part: number): number => Math.round(part * 1e7) / 1e7;

import type { Groove } from '../board/index.js';
import { type Frame, frameOut, pointIn, pointOut, type Vec2 } from '../frame/index.js';
import {
  type Bounds,
  boundsOf,
  intersectRegion,
  minimumRectangle,
  type Region,
  rectangle,
  regionArea,
  regionOf,
} from '../profile/index.js';
import { PATCH_MM2 } from '../tolerances.js';
import { type Contact, type Joinable, planeAlong, regionIn } from './contact.js';
import { PRACTICE } from './practice.js';

/**
 * A contact less the wood that grooves of either board take from under it: the largest part of the patch beside, before or
 * behind each groove, square to the patch.
 *
 * @param boards both boards and where they stand
 * @param depths mortise depths that are asked for, by board id
 */
export function clearOfGrooves(
  touch: Contact,
  boards: readonly [a: Joinable, b: Joinable],
  depths: Readonly<Record<string, number>> = {},
): Contact {
  if (boards.every(({ board }) => board.grooves.length === 0)) return touch;
  const box = minimumRectangle(touch.patch);
  const seat = planeAlong(touch.plane, box.centre, box.along);
  let patch = regionIn(touch.plane, seat, touch.patch);
  boards.forEach(({ board, place }, which) => {
    const grain = (which === 0 ? touch.faceA : touch.faceB).grain;
    const { thickness } = board.blank;
    const usual =
      grain === 'face'
        ? thickness * PRACTICE.faceDepthShare
        : thickness * PRACTICE.tenonShare * PRACTICE.edgeDepthThicknesses;
    const reach = (depths[board.id] ?? usual) + PRACTICE.wall;
    for (const groove of board.grooves) {
      const shadow = shadowOf(groove, place, seat, which === 0 ? [-reach, 0] : [0, reach]);
      if (shadow) patch = largestBeside(patch, shadow);
    }
  });
  return { ...touch, patch: regionIn(seat, touch.plane, patch) };
}

/** Where a groove stands over a seat, when it comes as near as a mortise is deep. */
function shadowOf(
  { at, length, width, depth }: Groove,
  place: Frame,
  seat: Frame,
  [low, high]: readonly [number, number],
): Bounds | undefined {
  const stands = frameOut(place, at);
  const corners = [-length / 2, length / 2].flatMap((x) =>
    [-width / 2, width / 2].flatMap((y) =>
      [-depth, 0].map((z) => pointIn(seat, pointOut(stands, [x, y, z]))),
    ),
  );
  const heights = corners.map(([, , z]) => z);
  if (Math.min(...heights) > high || Math.max(...heights) < low) return undefined;
  return boundsOf(corners.map(([x, y]): Vec2 => [x, y]));
}

/** The largest part of a patch on one side of a rectangle. */
function largestBeside(patch: Region, { minX, maxX, minY, maxY }: Bounds): Region {
  const part = (x: number, y: number, length: number, width: number) =>
    intersectRegion(patch, regionOf(rectangle({ x, y, length, width })));
  const taken = part(minX, minY, maxX - minX, maxY - minY);
  if (regionArea(taken) < PATCH_MM2) return patch;
  return [
    part(minX - FAR, -FAR, FAR, 2 * FAR),
    part(maxX, -FAR, FAR, 2 * FAR),
    part(-FAR, minY - FAR, 2 * FAR, FAR),
    part(-FAR, maxY, 2 * FAR, FAR),
  ].reduce((best, next) => (regionArea(next) > regionArea(best) + PATCH_MM2 ? next : best));
}

/** Longer than any seat, mm. */
const FAR = 1e5;

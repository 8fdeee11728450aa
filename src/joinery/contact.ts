import { type Board, type Face, possibleFaces } from '../board/index.js';
import { type ErrorText, JoinError } from '../errors.js';
import {
  angleDeg,
  directionIn,
  dot,
  type Frame,
  frame,
  frameOut,
  length,
  pointIn,
  pointOut,
  scale,
  settledLength,
  subtract,
  type Vec2,
  type Vec3,
} from '../frame/index.js';
import {
  intersectRegion,
  pieces,
  type Region,
  regionArea,
  regionBounds,
  regionMoments,
} from '../profile/index.js';
import { COPLANAR, PARALLEL_DEG, PATCH_MM2 } from '../tolerances.js';

/** A board, and where it stands. */
export interface Joinable {
  readonly board: Board;
  /** Board frame written in the assembly frame. */
  readonly place: Frame;
}

/** Where two boards touch. */
export interface Contact {
  /** Assembly frame, z from a into b; the patch lies in its x and y. */
  readonly plane: Frame;
  readonly patch: Region;
  readonly faceA: Face;
  readonly faceB: Face;
  readonly areaMm2: number;
}

/** Faces farther out of parallel than this are not meant to meet. */
const MEANT_DEG = 10;

/**
 * Every patch on which two boards touch: two faces in one plane, looking at each other, intersected. The feet of an arched
 * side stand on two patches.
 *
 * @returns the largest first, patches of one size from left to right, front to back and up
 * @throws JoinError `no-contact` that names both boards and how far apart they are, or by what angle they miss
 */
export function contacts(a: Joinable, b: Joinable): readonly Contact[] {
  const found: Contact[] = [];
  let miss: { gap: number; angle: number; faceA: Face; faceB: Face } | undefined;
  for (const faceA of possibleFaces(a.board)) {
    const planeA = frameOut(a.place, faceA.frame);
    for (const faceB of possibleFaces(b.board)) {
      const planeB = frameOut(b.place, faceB.frame);
      const angle = angleDeg(planeA.z, scale(planeB.z, -1));
      if (angle > MEANT_DEG) continue;
      const seen = faceB.region.map((loop) =>
        loop.map(([x, y]): Vec2 => {
          const p = pointIn(planeA, pointOut(planeB, [x, y, 0]));
          return [p[0], p[1]];
        }),
      );
      if (!boxesMeet(faceA.region, seen)) continue;
      const shared = intersectRegion(
        faceA.region,
        seen.map((loop) => loop.toReversed()),
      );
      const area = regionArea(shared);
      if (area < PATCH_MM2) continue;
      const gap = widestGap(shared, planeA, planeB);
      if (angle > PARALLEL_DEG || Math.abs(gap) > COPLANAR) {
        const worse = (m: { gap: number; angle: number }) => Math.abs(m.gap) + 10 * m.angle;
        if (!miss || worse({ gap, angle }) < worse(miss)) miss = { gap, angle, faceA, faceB };
      } else {
        for (const patch of pieces(shared).map(settledRegion)) {
          const touch = { plane: planeA, patch, faceA, faceB, areaMm2: regionArea(patch) };
          // an end that a bevel leaves as it is has two names
          if (touch.areaMm2 >= PATCH_MM2 && !found.some((other) => isSame(other, touch))) found.push(touch);
        }
      }
    }
  }
  if (found.length === 0) throw new JoinError('no-contact', missText(a, b, miss));
  return found.length === 1 ? found : found.toSorted(largerThenLeft);
}

/** The last digits of a corner change with where the rest of both outlines lies. */
const settledRegion = (region: Region): Region =>
  region.map((loop) => loop.map(([x, y]): Vec2 => [settledLength(x), settledLength(y)]));

const isSame = (p: Contact, q: Contact): boolean =>
  Math.abs(p.areaMm2 - q.areaMm2) < PATCH_MM2 &&
  dot(p.plane.z, q.plane.z) > 0 &&
  length(subtract(middleOf(p), middleOf(q))) < COPLANAR;

const largerThenLeft = (p: Contact, q: Contact): number =>
  Math.abs(p.areaMm2 - q.areaMm2) > PATCH_MM2 ? q.areaMm2 - p.areaMm2 : leftOf(middleOf(p), middleOf(q));

const leftOf = (p: Vec3, q: Vec3): number => {
  const i = p.findIndex((part, k) => Math.abs(part - q[k]!) > COPLANAR);
  return i < 0 ? 0 : p[i]! - q[i]!;
};

const middleOf = ({ plane, patch }: Contact): Vec3 => {
  const [x, y] = regionMoments(patch).centre;
  return pointOut(plane, [x, y, 0]);
};

/** The plane turned so that x runs along a direction of it, with its origin at a point of it. */
export const planeAlong = (plane: Frame, at: Vec2, along: Vec2): Frame =>
  frame(pointOut(plane, [at[0], at[1], 0]), plane.z, directionOutOf(plane, along));

const directionOutOf = (plane: Frame, along: Vec2) =>
  subtract(pointOut(plane, [along[0], along[1], 0]), plane.origin);

/** A region of one frame written in another that shares its plane. */
export const regionIn = (from: Frame, to: Frame, region: Region): Region => {
  const loops = region.map((loop) =>
    loop.map(([x, y]): Vec2 => {
      const p = pointIn(to, pointOut(from, [x, y, 0]));
      return [p[0], p[1]];
    }),
  );
  return directionIn(to, from.z)[2] > 0 ? loops : loops.map((loop) => loop.toReversed());
};

/** How far b's plane stands off a's, over the patch's corners: more than 0 where air is between. */
function widestGap(patch: Region, planeA: Frame, planeB: Frame): number {
  const rise = dot(planeA.z, planeB.z);
  return patch.flat().reduce((widest, [x, y]) => {
    const gap = dot(subtract(planeB.origin, pointOut(planeA, [x, y, 0])), planeB.z) / rise;
    return Math.abs(gap) > Math.abs(widest) ? gap : widest;
  }, 0);
}

function boxesMeet(p: Region, q: Region): boolean {
  if (p.length === 0 || q.length === 0) return false;
  const one = regionBounds(p);
  const two = regionBounds(q);
  return one.minX < two.maxX && two.minX < one.maxX && one.minY < two.maxY && two.minY < one.maxY;
}

function missText(
  { board: a }: Joinable,
  { board: b }: Joinable,
  miss: { gap: number; angle: number; faceA: Face; faceB: Face } | undefined,
): ErrorText {
  const pair = `${a.id} and ${b.id} do not touch`;
  if (!miss) return `${pair}: no face of one faces the other: move a board until they meet`;
  const where = `${miss.faceA.id} of ${a.id} and ${miss.faceB.id} of ${b.id}`;
  if (miss.angle > PARALLEL_DEG) {
    const angle = miss.angle;
    return (say) =>
      `${pair}: ${where} are ${angle < 0.01 ? `${angle.toFixed(4)}°` : say.angle(angle)} out of parallel: bevel or turn one to suit the other`;
  }
  const gap = miss.gap;
  const side = gap > 0 ? 'apart' : 'into each other';
  return (say) => `${pair}: ${where} are ${say.fine(Math.abs(gap))} ${side}: move one board until they meet`;
}

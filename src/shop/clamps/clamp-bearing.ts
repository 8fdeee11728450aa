import type { PlacedBoard } from '../../assembly/index.js';
import { type FaceId, faces } from '../../board/index.js';
import {
  add,
  angleDeg,
  dot,
  frameOut,
  pointIn,
  pointOut,
  scale,
  subtract,
  type Vec3,
} from '../../frame/index.js';
import { areaInBox, type Region } from '../../profile/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';

/** Where a clamp's line leaves a board: the face a pad lies on. mm, degrees, assembly frame. */
export interface ClampBearing {
  readonly board: string;
  readonly face: FaceId;
  readonly at: Vec3;
  readonly normal: Vec3;
  /** Between the face's normal and the clamp. */
  readonly angleDeg: number;
  /** How much of a square as long as a pad has wood under it, 0 to 1. */
  readonly under: number;
}

/** A face steeper than this to the clamp gives no bearing, degrees. */
const MOST_DEG = 60;

/** Faces of a board in the assembly frame; found once for a design. */
export type StandingFaces = ReadonlyMap<string, readonly StandingFace[]>;

interface StandingFace {
  readonly id: FaceId;
  readonly frame: ReturnType<typeof frameOut>;
  readonly region: Region;
  /** Corners of the region, assembly frame. */
  readonly loops: readonly (readonly Vec3[])[];
}

export const standingFaces = (boards: readonly PlacedBoard[]): StandingFaces =>
  new Map(
    boards.map(({ board, place }) => [
      board.id,
      faces(board).map(({ id, frame, region }) => {
        const standing = frameOut(place, frame);
        const loops = region.map((loop) => loop.map(([x, y]) => pointOut(standing, [x, y, 0])));
        return { id, frame: standing, region, loops };
      }),
    ]),
  );

/**
 * The face where a line leaves a board for good.
 *
 * @param from a point of the line
 * @param outwards direction of the line, unit
 * @returns undefined when it leaves through no flat face
 */
export function bearingOn(
  standing: StandingFaces,
  board: string,
  from: Vec3,
  outwards: Vec3,
): ClampBearing | undefined {
  let last: { face: StandingFace; at: Vec3; along: number; lean: number } | undefined;
  for (const face of standing.get(board)!) {
    const lean = angleDeg(face.frame.z, outwards);
    if (lean > MOST_DEG) continue;
    const along = dot(subtract(face.frame.origin, from), face.frame.z) / dot(outwards, face.frame.z);
    if (last && along <= last.along) continue;
    const at = add(from, scale(outwards, along));
    const [x, y] = pointIn(face.frame, at);
    if (holds(face.region, x, y)) last = { face, at, along, lean };
  }
  if (!last) return undefined;
  const { face, at, lean } = last;
  const [x, y] = pointIn(face.frame, at);
  const half = PRACTICE.padLength / 2;
  const pad = { minX: x - half, maxX: x + half, minY: y - half, maxY: y + half };
  const under = areaInBox(face.region, pad) / PRACTICE.padLength ** 2;
  return { board, face: face.id, at, normal: face.frame.z, angleDeg: lean, under };
}

/** Whether a point lies in a region: an odd number of its borders lie to the right of it. */
export function holds(region: Region, x: number, y: number): boolean {
  let inside = false;
  for (const loop of region)
    loop.forEach(([ax, ay], i) => {
      const [bx, by] = loop[(i + 1) % loop.length]!;
      if (ay > y !== by > y && ax + ((bx - ax) * (y - ay)) / (by - ay) > x) inside = !inside;
    });
  return inside;
}

import {
  columnRegion,
  type Face,
  type FaceId,
  faces,
  type Mortise,
  mouthOf,
  planeRegion,
} from '../../board/index.js';
import {
  angleDeg,
  directionIn,
  dot,
  type Frame,
  frame,
  frameOut,
  moved,
  pointIn,
  pointOut,
  scale,
  subtract,
  type Vec2,
  type Vec3,
  WORLD,
} from '../../frame/index.js';
import { obround, type Region, regionArea, regionOf, subtractRegion } from '../../profile/index.js';
import { COPLANAR, PARALLEL_DEG, PATCH_MM2 } from '../../tolerances.js';
import type { Stage } from './stage.js';

/** A flat face seen from a mortise: `normal` out of the wood, and the wood ends at `normal · p = offset`. */
export interface SeenFace {
  readonly id: FaceId;
  readonly normal: Vec3;
  readonly offset: number;
  /** Its outline over the plane of x and z: as the rail beside it would see it. */
  readonly fromTheSide: Region;
}

/** A board at a stage as it lies under the router: x along the mortise, y across it, z up out of its mouth; mm. */
export interface Work {
  readonly stage: Stage;
  readonly mortise: Mortise;
  readonly faces: readonly SeenFace[];
  /** Wood in the plane of the mouth. */
  readonly mouth: Region;
  /** How deep the board reaches below the mouth. */
  readonly below: number;
  /** Corners of the outline on both faces, bevels not taken off: no wood lies outside them. */
  readonly corners: readonly Vec3[];
  /** Wood in the plane through a frame written in the mortise's own. */
  readonly section: (plane: Frame) => Region;
}

/** A stage with what is looked up again for every mortise: its faces, and its outline less openings. */
export interface SeenStage {
  readonly stage: Stage;
  readonly faces: readonly Face[];
  readonly column: Region;
}

/** The flat faces of a board at a stage, with the names they have on the finished board wherever they are still there. */
export function seenStage(stage: Stage, known: readonly Face[]): SeenStage {
  const found = faces(stage.board).map((face) => {
    const same = known.find(
      (one) =>
        angleDeg(one.frame.z, face.frame.z) < PARALLEL_DEG &&
        Math.abs(dot(one.frame.z, subtract(face.frame.origin, one.frame.origin))) < COPLANAR,
    );
    return same ? { ...face, id: same.id } : face;
  });
  return { stage, faces: found, column: columnRegion(stage.board) };
}

/**
 * A board at a stage, seen from a mortise.
 *
 * A mortise whose axis leans from its face is cut from a face square to that axis, above its own mouth and before that is cut:
 * the mortise seen here is the deeper one, from there.
 *
 * @returns undefined when the stage has no mouth for it: no face in its plane, or too little wood on it
 */
export function workAtStage(seen: SeenStage, finished: Mortise): Work | undefined {
  const { stage, faces: known, column } = seen;
  const mouths = known
    .filter((face) => angleDeg(face.frame.z, finished.at.z) < PARALLEL_DEG)
    .map((face) => ({ face, above: dot(face.frame.z, subtract(face.frame.origin, finished.at.origin)) }))
    .filter(({ above }) =>
      finished.faceNormal ? above > mouthOf(finished).drop - COPLANAR : Math.abs(above) < COPLANAR,
    )
    .toSorted((a, b) => a.above - b.above);
  const [lowest] = mouths;
  if (!lowest) return undefined;
  const mouthFace = lowest.face;
  const mortise = finished.faceNormal ? cutFrom(mouthFace.id, finished, lowest.above) : finished;
  const { at } = mortise;
  const section = (plane: Frame): Region => planeRegion(stage.board, frameOut(at, plane), column);
  const mouth = mouthFace.region.map((loop) =>
    loop.map(([x, y]): Vec2 => {
      const p = pointIn(at, pointOut(mouthFace.frame, [x, y, 0]));
      return [p[0], p[1]];
    }),
  );
  const footprint = regionOf(obround({ length: mortise.length, width: mortise.width }));
  if (Math.abs(regionArea(subtractRegion(footprint, mouth))) > PATCH_MM2 / 100) return undefined;
  const corners = column
    .flat()
    .flatMap(([x, y]) => [0, stage.board.blank.thickness].map((z) => pointIn(at, [x, y, z])));
  return {
    stage,
    mortise,
    mouth,
    section,
    below: -Math.min(...corners.map((corner) => corner[2])),
    corners,
    faces: known.map((face): SeenFace => {
      const normal = directionIn(at, face.frame.z);
      const spot = pointIn(at, face.frame.origin);
      return {
        id: face.id,
        normal,
        offset: dot(normal, spot),
        fromTheSide: face.region.map((loop) =>
          loop.map(([x, y]): Vec2 => {
            const p = pointIn(at, pointOut(face.frame, [x, y, 0]));
            return [p[0], p[2]];
          }),
        ),
      };
    }),
  };
}

/** A mortise as it is cut from a face square to its axis, the finished cavity unchanged. */
function cutFrom(face: FaceId, finished: Mortise, above: number): Mortise {
  const { faceNormal: _, ...square } = finished;
  const at = moved(finished.at, scale(finished.at.z, above));
  return { ...square, face, at, depth: finished.depth + above };
}

/** Wood a little outside a seen face, over the plane of x and z; empty when the face is outermost. */
export function woodOutside(work: Work, face: SeenFace, by: number): Region {
  if (allInside(work, face.normal, face.offset + by)) return [];
  const plane = frame(scale(face.normal, face.offset + by), face.normal, WORLD.x);
  return work.section(plane).map((loop) =>
    loop.map(([u, v]): Vec2 => {
      const p = pointOut(plane, [u, v, 0]);
      return [p[0], p[2]];
    }),
  );
}

/** Whether nothing of the board reaches a plane. */
export const allInside = (work: Work, normal: Vec3, offset: number): boolean =>
  work.corners.every((corner) => dot(normal, corner) < offset);

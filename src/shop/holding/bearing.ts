import type { FaceId } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import {
  intersectRegion,
  type Region,
  regionArea,
  regionBounds,
  subtractRegion,
} from '../../profile/index.js';
import { PARALLEL_DEG, PATCH_MM2 } from '../../tolerances.js';
import { BEARING_DOWN, STEEPEST_WEDGE_DEG, WEDGE_THIN, WOOD_AIR } from '../practice/index.js';
import { type Work, woodOutside } from './work-at-stage.js';

/** Which way a face leans from the cutter, and so where the wedge that makes it true is thick. */
export type ThickEnd = 'up' | 'down' | 'start' | 'end';

/** A face a rail can bear on, on the -y side (`near`) or the +y side (`far`) of a mortise; mm and degrees. */
export interface Bearing {
  readonly side: 'near' | 'far';
  readonly face: FaceId;
  /** From the cutter's centre to the face, at the mouth. */
  readonly toFace: number;
  /** To the rail: the same, and the wedge's thickness at the mouth. */
  readonly toRail: number;
  /** How far down the mouth the face goes beside the mortise. */
  readonly down: number;
  readonly wedge?: Lean;
}

/** How a face runs away from the cutter's axis or from the mortise's length. */
export interface Lean {
  readonly angleDeg: number;
  readonly thickEnd: ThickEnd;
  /** At the thin end. */
  readonly thin: number;
  /** Size of the wedge: along the mortise, and down from the mouth. */
  readonly length: number;
  readonly height: number;
  readonly thicknessAtMouth: number;
}

/** The rail a bearing is looked for: how far along and down it reaches. */
export interface RailReach {
  readonly halfLength: number;
  readonly height: number;
}

const RAD = Math.PI / 180;

/**
 * Faces on one side of a mortise that a rail can bear on, straight or over a wedge: flat over the whole mortise and far enough
 * down, with no wood outside them where the rail goes.
 *
 * A wedge is as thin as {@link WEDGE_THIN} at its thin end; it is taken when the face leans in one direction only, along the
 * cutter (`up`, `down`) or along the mortise (`start` at its -x end, `end`).
 *
 * @param wedgeLength how long a wedge is made, mm
 */
export function bearings(
  work: Work,
  side: 'near' | 'far',
  rail: RailReach,
  wedgeLength: number,
): readonly Bearing[] {
  const out = side === 'near' ? -1 : 1;
  const half = work.mortise.length / 2;
  return work.faces.flatMap((face): Bearing[] => {
    const [nx, ny, nz] = face.normal;
    const cosine = ny * out;
    if (cosine < Math.cos(STEEPEST_WEDGE_DEG * RAD)) return [];
    const level = Math.abs(nx) < Math.sin(PARALLEL_DEG * RAD);
    const upright = Math.abs(nz) < Math.sin(PARALLEL_DEG * RAD);
    if (!level && !upright) return [];
    const seat: Region = [rectangleOf(-half, -BEARING_DOWN, half, 0)];
    if (areaOf(subtractRegion(seat, face.fromTheSide)) > PATCH_MM2) return [];
    const path = rectangleOf(-rail.halfLength, -rail.height, rail.halfLength, 0);
    if ([0.5, 5, 20].some((by) => meets(woodOutside(work, face, by), path))) return [];
    const toFace = face.offset / cosine;
    const strip = rectangleOf(-half, -rail.height, half, 0);
    const down = -regionBounds(intersectRegion(face.fromTheSide, [strip])).minY;
    const bare = { side, face: face.id, toFace, down };
    if (level && upright) return [{ ...bare, toRail: toFace }];
    const slope = level ? nz / cosine : nx / cosine;
    const height = Math.min(down, rail.height);
    const rise = (level ? height : wedgeLength) * Math.abs(slope);
    // how far the wood comes out beside the rail, from where it is at the mouth
    const beside = intersectRegion(face.fromTheSide, [path]).flat();
    const proud = Math.max(...beside.map(([x, z]) => -slope * (level ? z : x)));
    const overThin = level ? Math.max(0, slope) * height : rise / 2;
    const thin = Math.max(WEDGE_THIN, proud + WOOD_AIR - overThin);
    const atMouth = thin + overThin;
    const thickEnd: ThickEnd = level ? (slope > 0 ? 'up' : 'down') : slope > 0 ? 'end' : 'start';
    const angleDeg = Math.atan(Math.abs(slope)) / RAD;
    return [
      {
        ...bare,
        toRail: toFace + atMouth,
        wedge: { angleDeg, thickEnd, thin, length: wedgeLength, height, thicknessAtMouth: atMouth },
      },
    ];
  });
}

const rectangleOf = (x0: number, y0: number, x1: number, y1: number): readonly Vec2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

const areaOf = (region: Region): number => Math.abs(regionArea(region));

const meets = (wood: Region, path: readonly Vec2[]): boolean =>
  wood.length > 0 && areaOf(intersectRegion(wood, [path])) > PATCH_MM2;

import { type Design, type PlacedBoard, type SurfaceUse, type User, usedFace } from '../assembly/index.js';
import type { Face } from '../board/index.js';
import { pointOut, type Vec2 } from '../frame/index.js';
import type { Region } from '../profile/index.js';
import { type Load, loadsOf } from './load.js';

/** A surface that is used, where it stands in the assembly; mm, N. */
export interface UsedSurface {
  readonly use: Exclude<SurfaceUse['use'], 'none'>;
  readonly placed: PlacedBoard;
  readonly face: Face;
  /** Its outline and openings from above, assembly x and y. */
  readonly region: Region;
  /** Of its highest point above the floor the assembly stands on. */
  readonly height: number;
  readonly loads: readonly Load[];
}

/** @throws InputError when a use names no board, no face, or a face nobody can stand on */
export const usedSurfaces = (design: Design, user: User): readonly UsedSurface[] =>
  (design.uses ?? []).flatMap((one): UsedSurface[] => {
    const { use } = one;
    if (use === 'none') return [];
    const { placed, face, standing } = usedFace(design.boards, one);
    const corners = face.region.map((loop) => loop.map(([x, y]) => pointOut(standing, [x, y, 0])));
    return [
      {
        use,
        placed,
        face,
        region: corners.map((loop) => loop.map(([x, y]): Vec2 => [x, y])),
        height: Math.max(...corners.flat().map(([, , z]) => z)),
        loads: loadsOf(use, user),
      },
    ];
  });

import type { Design, PlacedBoard, SurfaceUse, User } from '../assembly/index.js';
import { type Face, faces } from '../board/index.js';
import { InputError } from '../errors.js';
import { type Frame, frameOut, pointOut, type Vec2 } from '../frame/index.js';
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

/** Cosine of the lean up to which somebody stands on a surface: 20°, our own. */
const LEVEL = Math.cos((20 * Math.PI) / 180);

/** @throws InputError when a use names no board, no face, or a face nobody can stand on */
export const usedSurfaces = (design: Design, user: User): readonly UsedSurface[] =>
  (design.uses ?? []).flatMap((one): UsedSurface[] => {
    const { use } = one;
    if (use === 'none') return [];
    const placed = boardOf(design, one);
    const { face, standing } = faceOf(placed, one);
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

function boardOf(design: Design, { board: id, use }: SurfaceUse): PlacedBoard {
  const found = design.boards.find(({ board }) => board.id === id);
  if (found) return found;
  const known = design.boards.map(({ board }) => board.id).join(', ');
  throw new InputError(
    'use-no-board',
    `use ${use}: there is no board ${id}; boards are ${known}: name one of them`,
  );
}

/** The face that is named, or the one that looks up the most; and its frame in the assembly. */
function faceOf(
  { board, place }: PlacedBoard,
  { face: named, use }: SurfaceUse,
): { face: Face; standing: Frame } {
  const all = faces(board).map((face) => ({ face, standing: frameOut(place, face.frame) }));
  const [found] = all
    .filter(({ face }) => named === undefined || face.id === named)
    .toSorted((a, b) => b.standing.z[2] - a.standing.z[2]);
  if (!found)
    throw new InputError(
      'use-no-face',
      `use ${use} of ${board.id}: it has no face ${named}; faces are ${all.map(({ face }) => face.id).join(', ')}: name one of them`,
    );
  if (found.standing.z[2] < LEVEL)
    throw new InputError(
      'use-not-level',
      `use ${use} of ${board.id}: ${named ?? 'none of its faces'} ${named ? 'does not look' : 'looks'} up within 20° of level: name a face that does, or another board`,
    );
  return found;
}

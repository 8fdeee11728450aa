import { type Face, faces } from '../board/index.js';
import { InputError } from '../errors.js';
import { type Frame, frameOut } from '../frame/index.js';
import type { PlacedBoard } from './placed-board.js';
import type { SurfaceUse } from './use.js';

/** Cosine of the lean up to which somebody stands on a surface: 20°, our own. */
const LEVEL = Math.cos((20 * Math.PI) / 180);

/**
 * The face a use is of: the one that is named, or the one that looks up the most; and its frame in the assembly.
 *
 * @throws InputError when it names no board, no face, or a face nobody can stand on
 */
export function usedFace(
  boards: readonly PlacedBoard[],
  { board: id, face: named, use }: SurfaceUse,
): { readonly placed: PlacedBoard; readonly face: Face; readonly standing: Frame } {
  const placed = boards.find(({ board }) => board.id === id);
  if (!placed) {
    const known = boards.map(({ board }) => board.id).join(', ');
    throw new InputError(
      'use-no-board',
      `use ${use}: there is no board ${id}; boards are ${known}: name one of them`,
    );
  }
  const all = faces(placed.board).map((face) => ({ face, standing: frameOut(placed.place, face.frame) }));
  const [found] = all
    .filter(({ face }) => named === undefined || face.id === named)
    .toSorted((a, b) => b.standing.z[2] - a.standing.z[2]);
  if (!found)
    throw new InputError(
      'use-no-face',
      `use ${use} of ${id}: it has no face ${named}; faces are ${all.map(({ face }) => face.id).join(', ')}: name one of them`,
    );
  if (found.standing.z[2] < LEVEL)
    throw new InputError(
      'use-not-level',
      `use ${use} of ${id}: ${named ?? 'none of its faces'} ${named ? 'does not look' : 'looks'} up within 20° of level: name a face that does, or another board`,
    );
  return { placed, ...found };
}

import { blankMiddle, type Design, type PlacedBoard } from '../../assembly/index.js';
import { faceFrame } from '../../board/index.js';
import { add, directionOut, dot, scale, subtract, type Vec3 } from '../../frame/index.js';

/** Steeper than this a face looks up, down, or to neither: cosine of its lean. */
const LEVEL = 0.7;

/**
 * Where the marked faces of a board look in the piece as it stands: `reference face: underside, edge: front, end: left`.
 * Of boards that share one drawing only what is true of all is told.
 *
 * @returns '' when nothing is
 */
export function markedSides(design: Design, ids: readonly string[]): string {
  const middles = design.boards.map(blankMiddle);
  const middle = scale(
    middles.reduce((sum, one) => add(sum, one)),
    1 / middles.length,
  );
  const boards = design.boards.filter(({ board }) => ids.includes(board.id));
  const told = (['face', 'edge', 'end'] as const).flatMap((mark) => {
    const sides = new Set(boards.map((placed) => sideOf(placed, `reference-${mark}`, middle)));
    const [side] = sides;
    return sides.size === 1 && side !== undefined ? [`${mark}: ${side}`] : [];
  });
  return told.length === 0 ? '' : `reference ${told.join(', ')}`;
}

function sideOf(placed: PlacedBoard, face: string, middle: Vec3): string | undefined {
  const looks = faceFrame(placed.board, face)?.z ?? LOOKS[face];
  if (!looks) return undefined;
  const out = directionOut(placed.place, looks);
  if (Math.abs(out[2]) > LEVEL) return out[2] > 0 ? 'upper side' : 'underside';
  const { length, width, thickness } = placed.board.blank;
  const deep = Math.abs(dot(looks, [length, width, thickness])) / 2;
  const off = dot(subtract(blankMiddle(placed), middle), out);
  if (Math.abs(off) > deep) return off > 0 ? 'outside' : 'inside';
  if (Math.abs(out[0]) > LEVEL) return out[0] > 0 ? 'right' : 'left';
  if (Math.abs(out[1]) > LEVEL) return out[1] > 0 ? 'back' : 'front';
  return undefined;
}

/** An end or edge that is cut out of square is still marked where it was on the blank. */
const LOOKS: Readonly<Record<string, Vec3>> = { 'reference-edge': [0, -1, 0], 'reference-end': [-1, 0, 0] };

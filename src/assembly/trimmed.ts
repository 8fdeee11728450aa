import { type FaceId, faceFrame, trimmedBoard } from '../board/index.js';
import { BoardError } from '../errors.js';
import { directionIn, directionOut, moved, type Plane, pointIn, pointOut, scale } from '../frame/index.js';
import type { PlacedBoard } from './placed-board.js';

/**
 * A standing board with one end cut to a plane; it becomes as long as it must, and its other end stays where it is.
 *
 * @param cut assembly frame; its normal points off the wood that stays
 * @param id of the bevel; a cut square to the faces is sawn in the outline and has none
 * @throws BoardError as `trimmedBoard` does
 * @example trimmed(leg, levelAt(420), 'head')
 */
export function trimmed({ board, place }: PlacedBoard, { point, normal }: Plane, id: FaceId): PlacedBoard {
  const cut = { point: pointIn(place, point), normal: directionIn(place, normal) };
  const made = trimmedBoard(board, cut, id);
  return { board: made.board, place: moved(place, scale(place.x, made.moved)) };
}

/**
 * The plane of a standing board's face, its normal out of the wood.
 *
 * @throws BoardError when the board has no such face
 * @example planeOf(tread, 'reference-face')
 */
export function planeOf({ board, place }: PlacedBoard, face: FaceId): Plane {
  const at = faceFrame(board, face);
  if (!at) throw new BoardError('no-face', `board ${board.id}: it has no face ${face}`);
  return { point: pointOut(place, at.origin), normal: directionOut(place, at.z) };
}

/**
 * A standing board with one end cut to seat on another board's face, whatever angles that takes.
 *
 * @throws BoardError as `trimmed` and `planeOf` do
 * @example trimmedTo(rail, leg, 'reference-edge', 'end')
 */
export function trimmedTo(placed: PlacedBoard, other: PlacedBoard, face: FaceId, id: FaceId): PlacedBoard {
  const { point, normal } = planeOf(other, face);
  return trimmed(placed, { point, normal: scale(normal, -1) }, id);
}

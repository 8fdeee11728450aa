import { mirroredBoard } from '../board/index.js';
import { frame, mirroredDirection, mirroredPoint, type Plane, pointOut } from '../frame/index.js';
import type { PlacedBoard } from './placed-board.js';

/**
 * The mirror image of a standing board in a plane: the board mirrored edge to edge, standing so that it fills the image. Frames stay
 * right-handed.
 *
 * @param plane assembly frame
 * @param id of the image
 * @throws BoardError as `mirroredBoard` does
 * @example mirrored(leftSide, { point: [0, 0, 0], normal: [1, 0, 0] }, 'right-side')
 */
export const mirrored = ({ board, place }: PlacedBoard, plane: Plane, id: string): PlacedBoard => ({
  board: mirroredBoard(board, id),
  place: frame(
    mirroredPoint(plane, pointOut(place, [0, board.blank.width, 0])),
    mirroredDirection(plane, place.z),
    mirroredDirection(plane, place.x),
  ),
});

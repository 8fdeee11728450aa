import { BoardError } from '../errors.js';
import { directionIn, type Frame, frame, heightOver, type Plane, type Vec3 } from '../frame/index.js';
import { transform2d } from '../profile/index.js';
import { COPLANAR, SAME_DIRECTION } from '../tolerances.js';
import type { Board, FaceId } from './board.js';
import { faceFrame } from './faces.js';

/**
 * The mirror image of a board in the middle of its width: what lay at the reference edge lies at the opposite edge.
 *
 * @param id of the image, and its name with spaces for hyphens
 * @throws BoardError when the board has mortises: a mortise belongs to a joint of one board
 * @example mirroredBoard(leftSide, 'right-side').blank // the left side's
 */
export function mirroredBoard(board: Board, id: string): Board {
  if (board.mortises.length > 0)
    throw new BoardError(
      'mirrored-mortises',
      `board ${board.id}: it has mortises already, and its mirror image would have none of its own: mirror boards before they are joined`,
    );
  const { width } = board.blank;
  const flipped = ([x, y, z]: Vec3): Vec3 => [x, width - y, z];
  const turned = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
  const outline = (profile: Board['outline']) =>
    transform2d(profile, { origin: [0, width], x: [1, 0], y: [0, -1] });
  // the image of a pocket's frame is left-handed; turning its y back changes nothing, for a pocket is alike on both sides of x
  const at = (f: Frame): Frame => frame(flipped(f.origin), turned(f.z), turned(f.x));
  const bare: Board = {
    ...board,
    id,
    name: id.replaceAll('-', ' '),
    outline: outline(board.outline),
    bevels: board.bevels.map(({ within, ...bevel }) => ({
      ...bevel,
      point: flipped(bevel.point),
      normal: turned(bevel.normal),
      ...(within && { within: outline(within) }),
    })),
    openings: board.openings.map((opening) => ({ ...opening, outline: outline(opening.outline) })),
  };
  const names: readonly FaceId[] = [
    ...SQUARE_FACES,
    ...bare.outline.map((_, i) => `edge-${i + 1}`),
    ...bare.bevels.map((bevel) => bevel.id),
  ];
  const face = (of: FaceId): FaceId => {
    const was = faceFrame(board, of);
    if (!was) return of;
    const plane: Plane = { point: flipped(was.origin), normal: turned(was.z) };
    return names.find((name) => lies(faceFrame(bare, name), plane)) ?? of;
  };
  const moved = <T extends { readonly face: FaceId; readonly at: Frame }>(feature: T): T => ({
    ...feature,
    face: face(feature.face),
    at: at(feature.at),
  });
  return {
    ...bare,
    holes: board.holes.map(moved),
    slots: board.slots.map(moved),
    grooves: board.grooves.map((groove) => ({
      ...moved(groove),
      from: face(groove.from),
      ...(groove.rebate && { rebate: groove.rebate === 1 ? (-1 as const) : (1 as const) }),
    })),
  };
}

const SQUARE_FACES: readonly FaceId[] = ['face', 'edge', 'end'].flatMap((side) => [
  `reference-${side}`,
  `opposite-${side}`,
]);

const lies = (face: Frame | undefined, plane: Plane): boolean =>
  face !== undefined &&
  directionIn(face, plane.normal)[2] > 1 - SAME_DIRECTION &&
  Math.abs(heightOver(plane, face.origin)) < COPLANAR;

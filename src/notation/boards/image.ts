import { mirrored, type PlacedBoard } from '../../assembly/index.js';
import type { Board } from '../../board/index.js';
import {
  type Frame,
  frame,
  mirroredDirection,
  mirroredPoint,
  type Plane,
  pointOut,
  scale,
  turnedAbout,
  type Vec3,
} from '../../frame/index.js';
import { transform2d } from '../../profile/index.js';
import { type Axis, boxOf, type Stood, type Trim, vectorOf } from '../places/index.js';

/** Puts a board somewhere else, and planes back to where the told board stands. */
export interface Image {
  readonly point: (point: Vec3) => Vec3;
  readonly board: (placed: PlacedBoard, id: string, name: string) => PlacedBoard;
  readonly back: (plane: Plane) => Plane;
}

/** The mirror image about the middle of the piece: reference face and bottom side stay what they are. */
export function mirrorImage(axis: Axis, middle: Vec3): Image {
  const plane: Plane = { point: middle, normal: vectorOf({ axis, sign: 1 }) };
  return {
    point: (point) => mirroredPoint(plane, point),
    board: (placed, id, name) => {
      const image = mirrored(placed, plane, id);
      const { x, y } = image.place;
      const upsideDown = Math.abs(x[2]) > Math.SQRT1_2 ? x[2] < 0 : Math.abs(y[2]) > Math.SQRT1_2 && y[2] < 0;
      const turned = upsideDown ? turnedRound(image) : image;
      return { ...turned, board: { ...turned.board, name } };
    },
    back: ({ point, normal }) => ({
      point: mirroredPoint(plane, point),
      normal: mirroredDirection(plane, normal),
    }),
  };
}

/** Turned about an upright line, degrees counter-clockwise seen from above. */
export const turnedImage = (centre: Vec3, deg: number): Image => ({
  point: (point) => turnedAbout(frame(point, [0, 0, 1], [1, 0, 0]), centre, deg).origin,
  board: ({ board, place }, id, name) => ({
    board: { ...board, id, name },
    place: turnedAbout(place, centre, deg),
  }),
  back: ({ point, normal }) => {
    const at = turnedAbout(
      frame(point, normal, Math.abs(normal[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1]),
      centre,
      -deg,
    );
    return { point: at.origin, normal: at.z };
  },
});

/** The image of a board that stands. */
export function imageOf(of: Stood, name: string, id: string, image: Image): Stood {
  const placed = image.board(of.placed, id, name);
  const corners = of.corners.map(image.point);
  return {
    ...of,
    name,
    placed,
    corners,
    box: boxOf(corners),
    trimmedBy: (trims) =>
      image.board(
        of.trimmedBy(trims.map(({ plane, id: cut }): Trim => ({ plane: image.back(plane), id: cut }))),
        id,
        name,
      ),
  };
}

/** The same board measured from its other end and edge: turned half round on its face. */
function turnedRound({ board, place }: PlacedBoard): PlacedBoard {
  const { length, width } = board.blank;
  const point = ([x, y, z]: Vec3): Vec3 => [length - x, width - y, z];
  const way = ([x, y, z]: Vec3): Vec3 => [-x, -y, z];
  const outline = (of: Board['outline']) =>
    transform2d(of, { origin: [length, width], x: [-1, 0], y: [0, -1] });
  const face = (id: string) =>
    /^(reference|opposite)-(edge|end)$/.test(id)
      ? id.replace(/^(reference|opposite)/, (word) => (word === 'reference' ? 'opposite' : 'reference'))
      : id;
  const feature = <T extends { readonly face: string; readonly at: Frame }>(one: T): T => ({
    ...one,
    face: face(one.face),
    at: { origin: point(one.at.origin), x: way(one.at.x), y: way(one.at.y), z: way(one.at.z) },
  });
  return {
    board: {
      ...board,
      outline: outline(board.outline),
      bevels: board.bevels.map(({ within, ...bevel }) => ({
        ...bevel,
        point: point(bevel.point),
        normal: way(bevel.normal),
        ...(within && { within: outline(within) }),
      })),
      openings: board.openings.map((one) => ({ ...one, outline: outline(one.outline) })),
      holes: board.holes.map(feature),
      slots: board.slots.map(feature),
      grooves: board.grooves.map((one) => ({ ...feature(one), from: face(one.from) })),
    },
    place: {
      origin: pointOut(place, [length, width, 0]),
      x: scale(place.x, -1),
      y: scale(place.y, -1),
      z: place.z,
    },
  };
}

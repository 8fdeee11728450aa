import type { Board, Groove } from '../../board/index.js';
import { add, scale, type Vec2, type Vec3 } from '../../frame/index.js';
import { bounds, type Profile, segments } from '../../profile/index.js';
import { linesAt } from '../template/index.js';
import { markedFeatures } from './board-features.js';

/** A place of a board that is set out from its reference end (axis 0), reference edge (1) or reference face (2). */
export interface BoardStop {
  readonly axis: 0 | 1 | 2;
  readonly value: number;
  readonly what: string;
  /** Board frame. */
  readonly point: Vec3;
  /** Out of the wood of the face a feature enters. */
  readonly facing?: Vec3;
}

/** Parts of a length along an axis shorter than this are not set out along it, mm. */
const LEAST_RUN = 0.5;

/** What lies square to an axis has no stop on it: its direction's part along the axis is more than this. */
const SQUARE = 0.9;

/** Every place of a board's face and edges that is measured along the grain and across: features first, then the outline. */
export function faceStops(board: Board): readonly BoardStop[] {
  return [...featureStops(board, [0, 1]), ...openingStops(board), ...cornerStops(board)];
}

/** Heights over the reference face of what enters ends and edges. */
export const heightStops = (board: Board): readonly BoardStop[] => featureStops(board, [2]);

function featureStops(board: Board, axes: readonly (0 | 1 | 2)[]): BoardStop[] {
  return markedFeatures(board).flatMap(({ mark, kind, of }) => {
    if (kind === 'bevel') return [];
    if (kind === 'groove') return grooveStops(mark, of, axes);
    const half = kind === 'hole' ? 0 : of.length / 2;
    const ends = [-half, half].map((run) => add(of.at.origin, scale(of.at.x, run)));
    return axes.flatMap((axis): BoardStop[] => {
      if (Math.abs(of.at.z[axis]) > SQUARE) return [];
      const centre: BoardStop = {
        axis,
        value: of.at.origin[axis],
        what: `${mark} centre`,
        point: of.at.origin,
        facing: of.at.z,
      };
      if (Math.abs(half * of.at.x[axis]) < LEAST_RUN) return [centre];
      return [
        centre,
        ...ends.map((point) => ({ ...centre, value: point[axis], what: `${mark} end`, point })),
      ];
    });
  });
}

/** Both walls of a groove, and the ends that stop in the wood. */
function grooveStops(mark: string, groove: Groove, axes: readonly (0 | 1 | 2)[]): BoardStop[] {
  const { at, length, width, stopped, rebate } = groove;
  const walls = [-1, 1].filter((side) => side !== rebate).map((side) => scale(at.y, (side * width) / 2));
  const ends = stopped.map((end) => scale(at.x, ((end === 'start' ? -1 : 1) * length) / 2));
  const stops = (what: string, by: readonly Vec3[], axis: 0 | 1 | 2): BoardStop[] =>
    by.flatMap((way) => {
      const point = add(at.origin, way);
      if (Math.abs(way[axis]) < LEAST_RUN) return [];
      return [{ axis, value: point[axis], what: `${mark} ${what}`, point, facing: at.z }];
    });
  return axes.flatMap((axis) => [...stops('wall', walls, axis), ...stops('end', ends, axis)]);
}

function openingStops(board: Board): BoardStop[] {
  const z = board.blank.thickness;
  return board.openings.flatMap(({ id, outline }) => {
    const box = bounds(outline);
    const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    const at = (axis: 0 | 1, value: number, place: string, point: Vec2): BoardStop => ({
      axis,
      value,
      what: `${id} ${place}`,
      point: [...point, z],
    });
    const round = isCircle(outline);
    const sides: readonly BoardStop[] = [
      at(0, box.minX, 'side', [box.minX, y]),
      at(0, box.maxX, 'side', [box.maxX, y]),
      at(1, box.minY, 'side', [x, box.minY]),
      at(1, box.maxY, 'side', [x, box.maxY]),
    ];
    return [at(0, x, 'centre', [x, y]), at(1, y, 'centre', [x, y]), ...(round ? [] : sides)];
  });
}

/** True when all of an outline is one circle. */
export function isCircle(outline: Profile): boolean {
  const pieces = segments(outline);
  const [first] = pieces;
  return (
    first?.kind === 'arc' &&
    pieces.every(
      (piece) =>
        piece.kind === 'arc' &&
        Math.hypot(piece.centre[0] - first.centre[0], piece.centre[1] - first.centre[1]) < LEAST_RUN / 100,
    )
  );
}

/** The corners of the outline as they are set out before they are rounded: where the sides beside an arc would meet. */
function cornerStops(board: Board): BoardStop[] {
  const z = board.blank.thickness;
  return corners(board.outline).flatMap(([x, y]): BoardStop[] => [
    { axis: 0, value: x, what: 'corner', point: [x, y, z] },
    { axis: 1, value: y, what: 'corner', point: [x, y, z] },
  ]);
}

export function corners(outline: Profile): readonly Vec2[] {
  const pieces = segments(outline);
  return pieces.flatMap((piece, i): Vec2[] => {
    if (piece.kind === 'line') {
      // a corner between two lines belongs to the second
      return pieces.at(i - 1)!.kind === 'line' ? [piece.from] : [];
    }
    if (piece.includedDeg > 170) return [piece.centre];
    // tangents meet on the bisector, r / cos of half the angle from the centre
    const middle: Vec2 = [(piece.from[0] + piece.to[0]) / 2, (piece.from[1] + piece.to[1]) / 2];
    const [dx, dy] = [middle[0] - piece.centre[0], middle[1] - piece.centre[1]];
    const cos = Math.cos((piece.includedDeg * Math.PI) / 360);
    return [[piece.centre[0] + dx / cos ** 2, piece.centre[1] + dy / cos ** 2]];
  });
}

/** Where the bevels cut the two wide faces, for those that run square to the grain (axis 0) or along it (axis 1). */
export function bevelStops(board: Board): readonly BoardStop[] {
  return markedFeatures(board).flatMap(({ mark, kind, of }) => {
    if (kind !== 'bevel') return [];
    const axis = ([0, 1] as const).find(
      (a) => Math.abs(of.normal[1 - a]!) < 1e-6 && Math.abs(of.normal[a]) > 1e-6,
    );
    if (axis === undefined) return [];
    const heights = Math.abs(of.normal[2]) < 1e-6 ? [0] : [0, board.blank.thickness];
    return heights.flatMap((z): BoardStop[] => {
      const [piece] = linesAt(of, board, z);
      if (!piece) return [];
      const value = piece[0][axis]!;
      const side = z === 0 ? 'reference face' : 'opposite face';
      return [{ axis, value, what: `${mark} on the ${side}`, point: [...piece[0], z] }];
    });
  });
}

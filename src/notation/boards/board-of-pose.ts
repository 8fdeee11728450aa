import { type PlacedBoard, trimmed } from '../../assembly/index.js';
import { type Bevel, makeBoard } from '../../board/index.js';
import { add, cross, directionIn, frame, pointIn, scale, type Vec3 } from '../../frame/index.js';
import { type Axes, sideOn, type Trim, type Way } from '../places/index.js';
import type { Pose } from './pose.js';
import type { CutSide } from './told-board.js';

/** What a board is called and made of. */
export interface Named {
  readonly id: string;
  readonly name: string;
  readonly material: string;
}

/**
 * A board as it stands: reference face and edge where they look, ends and edges cut.
 *
 * @param trims ends that are cut besides, assembly frame
 * @throws BoardError as `makeBoard` and `trimmed` do
 */
export function boardOfPose(
  called: Named,
  pose: Pose,
  { axes, face, edge }: { readonly axes: Axes; readonly face: Way; readonly edge: Way },
  trims: readonly Trim[],
): PlacedBoard {
  const out = (way: Way): Vec3 => scale(pose.ways[way.axis], way.sign);
  const [z, y] = [scale(out(face), -1), scale(out(edge), -1)];
  const x = cross(y, z);
  const { sizes } = pose;
  const blank = { length: sizes[axes.grain], width: sizes[axes.edge], thickness: sizes[axes.face] };
  const half = add(add(scale(x, blank.length / 2), scale(y, blank.width / 2)), scale(z, blank.thickness / 2));
  const origin = add(pose.middle, scale(half, -1));
  const bare: PlacedBoard = { board: makeBoard({ ...called, blank }), place: frame(origin, z, x) };
  const edges = pose.cuts.filter(({ axis }) => axis !== axes.grain);
  const withEdges: PlacedBoard = {
    ...bare,
    board: { ...bare.board, bevels: edges.map((cut) => bevelled(bare, cut)) },
  };
  const ends = pose.cuts
    .filter(({ axis }) => axis === axes.grain)
    .map(({ axis, sign, plane }): Trim => ({ plane, id: sideOn(axis, sign) }));
  return [...ends, ...trims].reduce((placed, { plane, id }) => trimmed(placed, plane, id), withEdges);
}

/** An edge or face planed to a plane: a bevel from end to end. */
const bevelled = ({ place }: PlacedBoard, { axis, sign, plane }: CutSide): Bevel => ({
  id: sideOn(axis, sign),
  point: pointIn(place, plane.point),
  normal: directionIn(place, plane.normal),
});

import { add, directionIn, eachAxis, frameIn, scale, type Vec3 } from '../../frame/index.js';
import {
  type BoardSolid,
  type Body,
  type Box,
  box,
  convexSweep,
  matrix,
  mostShared,
  pathClear,
  type Solids,
  sharedVolume,
  type TenonSolid,
  wayLeftAtTouch,
} from '../../solid/index.js';
import { COPLANAR, OVERLAP_MM3, PATH_END } from '../../tolerances.js';
import type { GlueStep, GlueUp } from './glue-up.js';

/** Two pieces that meet before a step is closed. */
export interface PathBlock {
  readonly step: string;
  /** The pieces that meet, board or tenon ids. */
  readonly pieces: readonly [moving: string, still: string];
  /** The boards they belong to. */
  readonly boards: readonly [moving: string, still: string];
  readonly direction: Vec3;
  /** Of the way, when they meet, mm; for a tenon the whole travel. */
  readonly left: number;
  /** What they share on the way, mm³. */
  readonly shared: number;
}

/** A glued group on its way: boards, and the tenons that stand in them. */
interface Group {
  readonly boards: readonly BoardSolid[];
  readonly tenons: readonly { readonly solid: TenonSolid; readonly owner: string }[];
}

/**
 * Moves the solids of a step from where it starts to the seat, and tells which pieces meet on the way.
 *
 * A tenon is convex, so the hull of its start and end is all it passes: it must stay clear of every board and tenon of the
 * other group. Boards are moved by less than the gap between them until they are seated. A tenon that is sprung is followed
 * on the way it takes when its board is pushed aside as said. Hardware is bolted on afterwards and is not looked at.
 */
export function pathBlocks(solids: Solids, glue: GlueUp, step: GlueStep): readonly PathBlock[] {
  const tenonsOf = new Map<string, string[]>();
  for (const { tenons, board } of glue.seatings)
    tenonsOf.set(board, [...(tenonsOf.get(board) ?? []), ...tenons]);
  const moving = groupOf(solids, tenonsOf, step.moving);
  const still = groupOf(solids, tenonsOf, step.still);
  const from = scale(step.direction, -step.travel);
  return [
    ...moving.tenons.flatMap((tenon) => tenonBlocks(solids, step, tenon, still, from)),
    // seen from the moving group the still one travels the other way
    ...still.tenons.flatMap((tenon) => tenonBlocks(solids, step, tenon, moving, scale(from, -1)).map(turned)),
    ...moving.boards.flatMap((board) =>
      still.boards.flatMap((other) => boardBlock(solids, step, board, other, from)),
    ),
  ];
}

function groupOf(
  solids: Solids,
  tenonsOf: ReadonlyMap<string, readonly string[]>,
  ids: readonly string[],
): Group {
  return {
    boards: ids.map((id) => solids.boards.get(id)!),
    tenons: ids.flatMap((owner) =>
      (tenonsOf.get(owner) ?? []).map((id) => ({ solid: solids.tenons.get(id)!, owner })),
    ),
  };
}

const turned = (block: PathBlock): PathBlock => ({
  ...block,
  pieces: [block.pieces[1], block.pieces[0]],
  boards: [block.boards[1], block.boards[0]],
});

function tenonBlocks(
  solids: Solids,
  step: GlueStep,
  { solid, owner }: Group['tenons'][number],
  other: Group,
  from: Vec3,
): PathBlock[] {
  const entered = step.joints.find(({ joint }) => joint === solid.joint.id);
  const { body } = solid;
  const start = entered ? add(from, springAtStart(step, entered)) : from;
  const space = swept(box(body), start);
  const near = [
    ...other.boards.map((board) => ({ ...board, board: board.id })),
    ...other.tenons.map((tenon) => ({
      id: tenon.solid.id,
      board: tenon.owner,
      body: tenon.solid.body,
      own: tenon.solid.own,
      place: tenon.solid.tenon.place,
    })),
  ].filter(
    (piece) =>
      meet(space, box(piece.body)) && !pathClear({ own: solid.own, place: solid.tenon.place }, piece, start),
  );
  if (near.length === 0) return [];
  const path = convexSweep(solids.kernel, body, start, [0, 0, 0]);
  const blocks = near.flatMap((piece): PathBlock[] => {
    const shared = sharedVolume(path, piece.body);
    if (shared <= OVERLAP_MM3 || overlapSeated(body, piece.body)) return [];
    return [
      {
        step: step.id,
        pieces: [solid.id, piece.id],
        boards: [owner, piece.board],
        direction: step.direction,
        left: step.travel,
        shared,
      },
    ];
  });
  path.delete();
  return blocks;
}

/** Pieces that share wood where they stand are no fault of the way; the overlap check tells of them. */
const overlapSeated = (a: Body, b: Body): boolean => sharedVolume(a, b) > OVERLAP_MM3;

/** The push that lets a sprung tenon in grows from nothing at the seat to its full size at the first touch. */
function springAtStart(step: GlueStep, entered: GlueStep['joints'][number]): Vec3 {
  if (entered.freedom !== 'sprung') return [0, 0, 0];
  const engaged = entered.shift / Math.sin((entered.leanDeg * Math.PI) / 180);
  return scale(entered.push, step.travel / engaged);
}

function boardBlock(
  solids: Solids,
  step: GlueStep,
  moving: BoardSolid,
  still: BoardSolid,
  from: Vec3,
): PathBlock[] {
  if (!meet(swept(box(moving.body), from), box(still.body))) return [];
  const held = solids.design.captives?.some(({ panel, grooves }) =>
    grooves.some(
      ({ board }) => [moving.id, still.id].includes(board) && [moving.id, still.id].includes(panel),
    ),
  );
  if (held) return slidingBlock(solids, step, moving, still, from);
  // the stock holds the finished board and has far fewer facets: when it passes, so does the board
  const seen = moving.stock.transform(matrix(frameIn(still.place, moving.place)));
  const passes = wayLeftAtTouch(seen, still.stock, directionIn(still.place, from), PATH_END) === 0;
  seen.delete();
  if (passes) return [];
  const left = wayLeftAtTouch(moving.body, still.body, from, PATH_END);
  if (left === 0) return [];
  // touching is not yet being in the way: boards may slide along each other to their seat
  const touch = scale(step.direction, -left);
  const { shared } = mostShared(moving.body, still.body, touch, [0, 0, 0], slideStep(solids));
  if (shared <= OVERLAP_MM3 || overlapSeated(moving.body, still.body)) return [];
  return [
    {
      step: step.id,
      pieces: [moving.id, still.id],
      boards: [moving.id, still.id],
      direction: step.direction,
      left,
      shared,
    },
  ];
}

/** A panel on its way in its groove touches all along: what its convex layers pass is cut with the board. */
function slidingBlock(
  solids: Solids,
  step: GlueStep,
  moving: BoardSolid,
  still: BoardSolid,
  from: Vec3,
): PathBlock[] {
  const isPanel = solids.design.captives!.some(({ panel }) => panel === moving.id);
  // seen from the panel the board travels the other way
  const [panel, board, start] = isPanel ? [moving, still, from] : [still, moving, scale(from, -1)];
  const shared = layersOf(solids, panel).reduce((most, layer) => {
    const path = convexSweep(solids.kernel, layer, start, [0, 0, 0]);
    const met = sharedVolume(path, board.body);
    path.delete();
    return Math.max(most, met);
  }, 0);
  if (shared <= OVERLAP_MM3 || overlapSeated(moving.body, still.body)) return [];
  return [
    {
      step: step.id,
      pieces: [moving.id, still.id],
      boards: [moving.id, still.id],
      direction: step.direction,
      left: step.travel,
      shared,
    },
  ];
}

/** A board cut through its thickness at the floor of every groove: each layer as good as convex. Assembly frame. */
function layersOf({ kernel }: Solids, { board, place, own }: BoardSolid): readonly Body[] {
  const { thickness } = board.blank;
  const floors = board.grooves.flatMap(({ at, depth }) =>
    Math.abs(at.z[2]) > 0.9 ? [at.origin[2] - at.z[2] * depth] : [],
  );
  const levels = [0, ...new Set(floors.toSorted((a, b) => a - b)), thickness];
  return levels.slice(1).map((top, i) => {
    // a cut in the floor's own plane leaves a sliver of it
    const above = own.trimByPlane([0, 0, 1], levels[i]! + COPLANAR);
    const layer = above.trimByPlane([0, 0, -1], COPLANAR - top);
    above.delete();
    return kernel.keep(layer.transform(matrix(place)));
  });
}

/** No longer than half the least cheek clearance of the design, and no finer than a hundredth. */
function slideStep(solids: Solids): number {
  const cheeks = solids.design.joints.map(({ fit }) => fit.cheek / 2);
  return Math.max(0.01, Math.min(...cheeks));
}

/** The box round a box on its way from a shift to where it is. */
const swept = ({ min, max }: Box, from: Vec3): Box => ({
  min: eachAxis((i) => min[i] + Math.min(from[i], 0)),
  max: eachAxis((i) => max[i] + Math.max(from[i], 0)),
});

const meet = (a: Box, b: Box): boolean =>
  [0, 1, 2].every((i) => a.max[i]! > b.min[i]! && b.max[i]! > a.min[i]!);

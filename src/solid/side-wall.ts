import type { Hole, Slot } from '../board/index.js';
import type { Frame } from '../frame/index.js';
import { SKIN } from '../tolerances.js';
import { holeCutters, slotCutter } from './board-body.js';
import { WALL_REACH } from './cavity.js';
import { type Body, type Kernel, matrix } from './kernel.js';
import { type Box, boxIn, gap } from './measure.js';
import type { BoardSolid } from './solids.js';
import type { Wall } from './told.js';

/** The thinnest bridge beside a slot, between both faces; an open end is left out. */
export function slotWall(kernel: Kernel, board: BoardSolid, slot: Slot): Wall {
  const open = slot.openAt;
  const end = boxIn(board.stock, slot.at);
  const from = open === 'start' ? end.min[0] + SKIN : Number.NEGATIVE_INFINITY;
  const to = open === 'end' ? end.max[0] - SKIN : Number.POSITIVE_INFINITY;
  const cutters = (margin: number) => [slotCutter(kernel, board.board, slot, margin)];
  return sideWall(kernel, board, slot, cutters, { from, to });
}

/** The thinnest wood beside a hole and its counterbore, between both faces. */
export function holeWall(kernel: Kernel, board: BoardSolid, hole: Hole): Wall {
  const anywhere = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
  return sideWall(kernel, board, hole, (margin) => holeCutters(kernel, board.board, hole, margin), anywhere);
}

function sideWall(
  kernel: Kernel,
  board: BoardSolid,
  feature: Hole | Slot,
  cutters: (margin: number) => Body[],
  along: { from: number; to: number },
): Wall {
  const swept = cutters(0);
  const grown = cutters(SKIN);
  const { Manifold } = kernel.wasm;
  const [cutter, fill] = [Manifold.union(swept), Manifold.union(grown)];
  const cavity = board.stock.intersect(cutter);
  const whole = boxIn(board.stock, feature.at);
  const room = boxIn(cavity, feature.at);
  const through = feature.depth === 'through';
  const wall = wallOf(kernel, board, feature.at, cavity, fill, {
    min: [
      Math.max(room.min[0] - WALL_REACH, along.from),
      room.min[1] - WALL_REACH,
      through ? whole.min[2] + SKIN : room.min[2] - WALL_REACH,
    ],
    max: [Math.min(room.max[0] + WALL_REACH, along.to), room.max[1] + WALL_REACH, whole.max[2] - SKIN],
  });
  for (const body of [...swept, ...grown, cutter, fill, cavity]) body.delete();
  return wall;
}

/** Air in a box round the cavity, less the cavity itself: how near does it come? */
function wallOf(kernel: Kernel, board: BoardSolid, at: Frame, cavity: Body, fill: Body, room: Box): Wall {
  const size = room.max.map((most, i) => most - room.min[i]!) as [number, number, number];
  if (cavity.isEmpty() || size.some((one) => !(one > 0))) return { least: WALL_REACH };
  const cube = kernel.wasm.Manifold.cube(size);
  const placed = cube.translate([...room.min]);
  const searched = placed.transform(matrix(at));
  const air = searched.subtract(board.own);
  const outside = air.subtract(fill);
  const least = outside.isEmpty() ? WALL_REACH : gap(cavity, outside, WALL_REACH);
  for (const body of [cube, placed, searched, air, outside]) body.delete();
  return { least: least <= 2 * SKIN ? 0 : least };
}

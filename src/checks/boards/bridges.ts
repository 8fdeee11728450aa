import { pointOut, type Vec3 } from '../../frame/index.js';
import { holeWall, slotWall } from '../../solid/index.js';
import { SIZED_TO_LIMIT } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding } from '../finding/index.js';

/** Wood between a slot and an edge: less than this breaks, less than the second bends, mm. Common practice, no source. */
const BRIDGE_BREAKS = 5;
const BRIDGE_BENDS = 10;

/** Wood beside a hole, mm. Common practice, no source. */
const HOLE_BREAKS = 1.5;
const HOLE_WEAK = 3;

/** The wood left beside slots and holes holds. */
export const bridges = (bench: Bench): readonly Finding[] =>
  [...bench.solids.boards.values()].flatMap((board) => {
    const { kernel } = bench.solids;
    return [
      ...board.board.slots.flatMap((slot) =>
        thin(
          bench,
          board.id,
          `slot ${slot.id}`,
          slot.at.origin,
          slotWall(kernel, board, slot).least,
          BRIDGE_BREAKS,
          BRIDGE_BENDS,
        ),
      ),
      ...board.board.holes.flatMap((hole) =>
        thin(
          bench,
          board.id,
          `hole ${hole.id}`,
          hole.at.origin,
          holeWall(kernel, board, hole).least,
          HOLE_BREAKS,
          HOLE_WEAK,
        ),
      ),
    ];
  });

function thin(
  bench: Bench,
  board: string,
  feature: string,
  inBoard: Vec3,
  least: number,
  breaks: number,
  weak: number,
): Finding[] {
  if (least >= weak - SIZED_TO_LIMIT) return [];
  const { say } = bench;
  const breaking = least < breaks - SIZED_TO_LIMIT;
  const limit = breaking ? breaks : weak;
  const [bridge, wanted] = say.lengths(least, limit);
  return [
    {
      code: 'bridge-thin',
      level: breaking ? 'error' : 'warning',
      subjects: [board],
      measured: least,
      limit,
      unit: 'mm',
      at: pointOut(bench.solids.boards.get(board)!.place, inBoard),
      message:
        least === 0
          ? `${feature} in ${board} breaks out of the wood or meets another cavity`
          : `${feature} in ${board} leaves a bridge of ${bridge}; it should be at least ${wanted}`,
      remedy: 'move it inwards, or make the board larger',
      basis: COMMON_PRACTICE,
    },
  ];
}

import type { Design } from '../../assembly/index.js';
import { type Board, faces } from '../../board/index.js';
import { boardKinds } from './same-boards.js';

/**
 * Boards whose length must match a gap that other boards leave: jointed at both ends between two boards that hold together
 * without it and without any other board cut to fit, and with no second board of its shape to be sawn to one stop with.
 *
 * @returns their ids
 */
export function boardsToFit(design: Design): ReadonlySet<string> {
  const toFit = new Set<string>();
  for (const { boards } of boardKinds(design.boards.map(({ board }) => board))) {
    const board = boards[0]!;
    if (boards.length > 1) continue;
    const [from, to] = endNeighbours(board, design);
    if (from !== undefined && to !== undefined && linked(from, to, new Set([...toFit, board.id]), design))
      toFit.add(board.id);
  }
  return toFit;
}

/** The boards jointed to the two ends of a board. */
function endNeighbours(board: Board, { joints }: Design): readonly (string | undefined)[] {
  const ends = faces(board).filter(({ grain }) => grain === 'end');
  return [-1, 1].map((side) => {
    const face = ends.find(
      ({ id, frame }) => frame.z[0] * side > 0 && board.mortises.some((mortise) => mortise.face === id),
    );
    const mortise = board.mortises.find((one) => one.face === face?.id);
    const joint = joints.find(({ id }) => id === mortise?.joint);
    return joint && (joint.a === board.id ? joint.b : joint.a);
  });
}

/** Whether joints lead from one board to another without some others. */
function linked(from: string, to: string, without: ReadonlySet<string>, { joints }: Design): boolean {
  if (from === to || without.has(from)) return false;
  const reached = new Set([from]);
  const queue = [from];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    for (const { a, b } of joints) {
      const next = a === at ? b : b === at ? a : undefined;
      if (next === undefined || without.has(next) || reached.has(next)) continue;
      reached.add(next);
      queue.push(next);
    }
  }
  return reached.has(to);
}

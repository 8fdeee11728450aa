import { type Face, faces } from '../board/index.js';
import { JoinError } from '../errors.js';
import { type JoinRequest, joinAll } from '../joinery/index.js';
import type { Design, PlacedBoard } from './design.js';

export type { JoinRequest };

/** A design before its joints are cut; lists left out are empty. */
export type DesignSpec = Pick<Design, 'name' | 'title' | 'cutter' | 'boards'> &
  Partial<Omit<Design, 'name' | 'title' | 'cutter' | 'boards' | 'joints' | 'patchesLeft'>> & {
    readonly joints?: readonly JoinRequest[];
  };

/**
 * Cuts every joint into the boards it names.
 *
 * @throws JoinError when a joint names a board that is not there, an id is used twice, or boards do not touch
 */
export function assemble(spec: DesignSpec): Design {
  const standing = new Map<string, PlacedBoard & { faces: readonly Face[] }>();
  for (const placed of spec.boards) {
    if (standing.has(placed.board.id)) {
      throw new JoinError('board-twice', `two boards are called ${placed.board.id}: give each its own id`);
    }
    // a mortise changes no face, so the faces are found once
    standing.set(placed.board.id, { ...placed, faces: faces(placed.board) });
  }
  const requests = spec.joints ?? [];
  for (const { a, b } of requests) {
    const [one, two] = [standing.get(a), standing.get(b)];
    if (one && two && a !== b) continue;
    const text = a === b ? `${a} cannot be joined to itself` : `there is no board ${one ? b : a}`;
    throw new JoinError(
      'no-board',
      `joint ${a}/${b}: ${text}; boards are ${[...standing.keys()].join(', ')}: name two of them`,
    );
  }
  onceEach(requests.map(({ a, b, options }) => options?.id ?? `${a}/${b}`));
  const { boards, joints, patchesLeft } = joinAll(standing, requests);
  onceEach(joints.map(({ id }) => id));
  return {
    hardware: [],
    derived: [],
    notes: [],
    ...spec,
    boards: [...standing].map(([id, { place }]) => ({ board: boards.get(id)!, place })),
    joints,
    ...(patchesLeft.length === 0 ? {} : { patchesLeft }),
  };
}

function onceEach(ids: readonly string[]): void {
  const twice = ids.find((id, i) => ids.indexOf(id) < i);
  if (twice === undefined) return;
  throw new JoinError('joint-twice', `two joints are called ${twice}: give one of them an id of its own`);
}

import { type Face, faces } from '../board/index.js';
import { JoinError } from '../errors.js';
import { type JoinOptions, type Joint, join } from '../joinery/index.js';
import type { Design, PlacedBoard } from './design.js';

/** Two boards to be joined, by id. */
export interface JoinRequest {
  readonly a: string;
  readonly b: string;
  readonly options?: JoinOptions;
}

/** A design before its joints are cut; lists left out are empty. */
export type DesignSpec = Pick<Design, 'name' | 'title' | 'cutter' | 'boards'> &
  Partial<Omit<Design, 'name' | 'title' | 'cutter' | 'boards' | 'joints'>> & {
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
  const joints: Joint[] = [];
  for (const { a, b, options } of spec.joints ?? []) {
    const one = standing.get(a);
    const two = standing.get(b);
    if (!one || !two || a === b) {
      const text = a === b ? `${a} cannot be joined to itself` : `there is no board ${one ? b : a}`;
      throw new JoinError(
        'no-board',
        `joint ${a}/${b}: ${text}; boards are ${[...standing.keys()].join(', ')}: name two of them`,
      );
    }
    const joined = join(one, two, options);
    standing.set(a, { ...one, board: joined.a });
    standing.set(b, { ...two, board: joined.b });
    joints.push(joined.joint);
  }
  const twice = joints.find((joint, i) => joints.findIndex(({ id }) => id === joint.id) < i);
  if (twice) {
    throw new JoinError(
      'joint-twice',
      `two joints are called ${twice.id}: give one of them an id of its own`,
    );
  }
  return {
    hardware: [],
    derived: [],
    notes: [],
    ...spec,
    boards: [...standing.values()].map(({ board, place }) => ({ board, place })),
    joints,
  };
}

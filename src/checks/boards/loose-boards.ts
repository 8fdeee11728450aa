import type { Design } from '../../assembly/index.js';
import { gap, type Solids } from '../../solid/index.js';
import { BEARS_ON } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** Every board is joined to another, held in a groove, fastened, or held by a piece of hardware that touches it. */
export function looseBoards({ solids }: Bench): readonly Finding[] {
  const { design } = solids;
  if (design.boards.length < 2) return [];
  const held = heldBoards(design);
  return design.boards
    .map(({ board }) => board)
    .filter(({ id }) => !held.has(id) && !touchesHardware(solids, id))
    .map(({ id, name }): Finding => {
      const others = design.boards.map(({ board }) => board.id).filter((other) => other !== id);
      return {
        code: 'board-joined-to-nothing',
        level: 'warning',
        subjects: [id],
        measured: 0,
        limit: 1,
        unit: '',
        message: `${name} is joined to nothing: no joint, groove, fastening or hardware holds it`,
        remedy: `join it to a board it touches (${others.join(', ')}), hold it in a groove, fasten it, or leave it out`,
        basis: MEASURED,
      };
    });
}

/** Boards that a joint, a groove or a fastening holds. */
const heldBoards = ({ joints, captives = [], fastenings = [] }: Design): ReadonlySet<string> =>
  new Set([
    ...joints.flatMap(({ a, b }) => [a, b]),
    ...captives.flatMap(({ panel, grooves }) => [panel, ...grooves.map(({ board }) => board)]),
    ...fastenings.flatMap(({ held, to }) => [held, to]),
  ]);

function touchesHardware(solids: Solids, id: string): boolean {
  const { body } = solids.boards.get(id)!;
  return [...solids.hardware.values()].some((piece) => gap(piece.body, body, BEARS_ON) < BEARS_ON);
}

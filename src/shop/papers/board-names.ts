import type { Design } from '../../assembly/index.js';
import { inARow } from '../words/index.js';

/** What a board is called in a paper. */
export const nameOf = (design: Design, id: string): string =>
  design.boards.find(({ board }) => board.id === id)?.board.name ?? id;

/** Several boards in one sentence. */
export const namesOf = (design: Design, ids: readonly string[]): string =>
  inARow(ids.map((id) => nameOf(design, id)));

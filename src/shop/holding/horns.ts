import type { Holding } from './holding.js';
import type { Horn } from './horn.js';

/** The horns of one board: at each end the longest that a mortise asks for. */
export function hornsOf(board: string, holdings: readonly Holding[]): readonly Horn[] {
  const asked = holdings.flatMap(({ board: id, horn }) => (id === board && horn ? [horn] : []));
  return [...new Set(asked.map(({ end }) => end))].map((end) => ({
    end,
    length: Math.max(...asked.filter((horn) => horn.end === end).map(({ length }) => length)),
  }));
}

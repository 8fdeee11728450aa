import { closedChain, fixed, type Rule, speaker } from '../../length/index.js';
import type { StoryStick } from '../marks/index.js';
import { type Block, heading, paragraph, table } from '../words/index.js';

/** Distances between the marks of each stick, rounded so that they add up to the board in both units. */
export function chains(sticks: readonly StoryStick[], units: Rule): readonly Block[] {
  if (sticks.length === 0) return [];
  const say = speaker(units);
  const rows = sticks.map((stick) => {
    const places = [...new Set(stick.marks.map(({ at }) => Number(at.toFixed(4))))].toSorted((a, b) => a - b);
    const parts = places.slice(1).map((at, i) => at - places[i]!);
    const { parts: told, total, error } = closedChain(parts, units);
    return [
      stick.boards.map(({ mark }) => mark).join(', '),
      `${stick.direction}, from the ${stick.from}`,
      `${told.map((part) => say.length(part)).join(' + ')} = ${say.length(total)}`,
      say.units === 'in' ? say.fit(error) : `${fixed(error, 2)} mm`,
    ];
  });
  return [
    heading('Chains'),
    paragraph(
      'From mark to mark of each story stick, rounded so that every chain adds up. Mark from one end, never from mark to mark; where a board has a horn, the end is the knife line of its finished end; the last column is the most a part was rounded by.',
    ),
    table(['boards', 'direction', 'from mark to mark', 'rounded by'], rows),
  ];
}

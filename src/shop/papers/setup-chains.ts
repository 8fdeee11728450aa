import { closedChain, fixed, printLength } from '../../length/index.js';
import type { StoryStick } from '../marks/index.js';
import { type Block, heading, paragraph, table } from '../words/index.js';

/** Distances between the marks of each stick, rounded so that they add up to the board in both units. */
export function chains(sticks: readonly StoryStick[]): readonly Block[] {
  if (sticks.length === 0) return [];
  const rows = sticks.map((stick) => {
    const places = [...new Set(stick.marks.map(({ at }) => Number(at.toFixed(4))))].toSorted((a, b) => a - b);
    const parts = places.slice(1).map((at, i) => at - places[i]!);
    const [mm, inches] = [closedChain(parts, 'mm'), closedChain(parts, 'in')];
    const told = (list: readonly number[], units: 'mm' | 'in') =>
      list.map((part) => (units === 'mm' ? fixed(part, 1) : printLength(part, { units }))).join(' + ');
    return [
      stick.boards.map(({ mark }) => mark).join(', '),
      `${stick.direction}, from the ${stick.from}`,
      `${told(mm.parts, 'mm')} = ${fixed(mm.total, 1)} mm`,
      `${told(inches.parts, 'in')} = ${printLength(inches.total, { units: 'in' })}`,
      `${fixed(mm.error, 2)} mm / ${fixed(inches.error, 2)} mm`,
    ];
  });
  return [
    heading('Chains'),
    paragraph(
      'From mark to mark of each story stick, rounded so that every chain adds up. Mark from one end, never from mark to mark; where a board has a horn, the end is the knife line of its finished end; the last column is the most a part was rounded by, in mm and in inches.',
    ),
    table(['boards', 'direction', 'mm', 'inches', 'rounded by'], rows),
  ];
}

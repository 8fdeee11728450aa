import type { Board, Follower } from '../../board/index.js';
import { printLength, type Rule } from '../../length/index.js';
import { bounds } from '../../profile/index.js';
import { checkBar } from '../sheet/index.js';
import { toolSize } from './feature.js';
import { CAPITAL_WIDTH, LETTER, legend, line } from './strokes.js';
import type { Entity } from './template.js';

/** How far outside the part the reference lines stand, mm. */
const BESIDE = 3;

/** Height of the title's capitals and of a row, mm. */
const TITLE = 7;
const ROW = 7;

/** Letters in a row: about 240 mm. */
const LONGEST = 84;

const END_NAME = 'REFERENCE END';

/** The reference edge and the reference end: a line just outside each, and its name at the corner where marks are rare. */
export function referenceMarks(board: Board): readonly Entity[] {
  const { length, width } = board.blank;
  return [
    line('LEGEND', [0, -BESIDE], [length, -BESIDE]),
    legend([BESIDE, -BESIDE - LETTER * 1.5], 'REFERENCE EDGE'),
    line('LEGEND', [-BESIDE, -BESIDE - LETTER * 1.5], [-BESIDE, width]),
    legend([-BESIDE - (END_NAME.length + 4) * LETTER * CAPITAL_WIDTH, -BESIDE - LETTER * 1.5], END_NAME),
  ];
}

/** Scale bar, title and the list of what the marks mean, below the part. */
export function captions(
  board: Board,
  rows: readonly string[],
  { units, revision, ...follower }: Follower & { readonly units: Rule; readonly revision?: string },
): readonly Entity[] {
  const at = Math.min(0, bounds(board.outline).minY) - 35;
  const bar = checkBar(units);
  const { length, width, thickness } = board.blank;
  const said = [
    `seen from above: reference face down on the bench, opposite face up, not mirrored`,
    `blank ${printLength(length, { units })} x ${printLength(width, { units })} x ${printLength(thickness, { units })}, ${board.material}`,
    followed(follower, units),
    ...rows.flatMap(wrapped),
  ];
  const title = at - 10 - TITLE;
  return [
    line('SCALE', [0, at], [bar.length, at]),
    ...Array.from({ length: 11 }, (_, i) => {
      const tick = i % 5 === 0 ? 6 : 3;
      return line('SCALE', [(i * bar.length) / 10, at], [(i * bar.length) / 10, at + tick]);
    }),
    {
      layer: 'SCALE',
      kind: 'text',
      at: [bar.length + 4, at],
      height: LETTER,
      text: `${bar.words}: measure this bar before cutting`,
      rotationDeg: 0,
    },
    legend(
      [0, title],
      `${board.name}: template, full size, thickness ${printLength(thickness, { units })}${revision === undefined ? '' : `, rev. ${revision}`}`,
      TITLE,
    ),
    ...said.map((text, i) => legend([0, title - 3 - (i + 1) * ROW], text)),
  ];
}

/** A row broken at commas, its further lines set in. */
function wrapped(row: string): readonly string[] {
  const lines: string[] = [];
  for (const part of row.split(/(?<=,) /)) {
    const last = lines.at(-1);
    if (last === undefined) lines.push(part);
    else if (last.length + part.length < LONGEST) lines[lines.length - 1] = `${last} ${part}`;
    else lines.push(`      ${part}`);
  }
  return lines;
}

const followed = ({ cutter, bush }: Follower, units: Rule): string =>
  bush === undefined
    ? `line flush with the part: follow it with a bearing as wide as the cutter (${toolSize(cutter, units)})`
    : `line ${toolSize((bush - cutter) / 2, units)} off the part for a ${toolSize(bush, units)} guide bush and a cutter of ${toolSize(cutter, units)}; the part itself is on MARK`;

import type { Vec2 } from '../../frame/index.js';
import type { StickMark, StoryStick } from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { letters, type SheetEntity, SMALL, spread, stroke, textWidth } from '../sheet/index.js';

/** Height of a strip, air round the words over it, from word to word, mm on the sheet. */
const [STRIP, AIR, APART] = [9, 6.5, 4.4];

/** Longest piece of a strip, mm: its marks reach a little past the ends. */
const PIECE = 170;

/** A story stick at full size, in pieces that are joined at the dashed lines; each mark with its name. */
export function stickFigures(stick: StoryStick): readonly DrawnFigure[] {
  const { boards, direction, from, length, marks } = stick;
  const count = Math.max(1, Math.ceil((length - 1e-6) / PIECE));
  const words = Math.max(...marks.map((mark) => textWidth(wordsFor(mark), SMALL))) + AIR;
  const names = boards.map(({ mark }) => mark).join(', ');
  return Array.from({ length: count }, (_, i): DrawnFigure => {
    const [start, end] = [i * PIECE, Math.min(length, (i + 1) * PIECE)];
    const which = count > 1 ? `, piece ${i + 1} of ${count}` : '';
    const title = `${names} ${direction}, from the ${from}${which}`;
    return {
      kind: 'drawn',
      said: `Story stick at full size: ${title}.`,
      width: PIECE + 4,
      height: STRIP + words + 3.5,
      draw: ([x, y]) => [
        letters([x, y + STRIP + words], title, { bold: true }),
        ...strip([x + 2, y], start, end, length),
        ...named(
          [x + 2, y],
          start,
          marks.filter(({ at }) => at > start - 1e-6 && (at < end - 1e-6 || end === length)),
        ),
      ],
    };
  });
}

function strip([x, y]: Vec2, start: number, end: number, length: number): readonly SheetEntity[] {
  const wide = end - start;
  const across = (at: number, line: 'visible' | 'hidden') => stroke(line, [x + at, y], [x + at, y + STRIP]);
  return [
    stroke('visible', [x, y], [x + wide, y]),
    stroke('visible', [x, y + STRIP], [x + wide, y + STRIP]),
    across(0, start === 0 ? 'visible' : 'hidden'),
    across(wide, end === length ? 'visible' : 'hidden'),
  ];
}

function named([x, y]: Vec2, start: number, marks: readonly StickMark[]): readonly SheetEntity[] {
  const spots = spread(
    marks.map(({ at }) => x + at - start),
    APART,
  );
  return marks.flatMap((mark, i): readonly SheetEntity[] => {
    const { at, kind } = mark;
    const [place, spot] = [x + at - start, spots[i]!];
    return [
      stroke(kind === 'centre' ? 'centre' : 'template', [place, y], [place, y + STRIP + 1]),
      stroke('dimension', [place, y + STRIP + 1], [spot, y + STRIP + 4]),
      letters([spot + SMALL / 2, y + STRIP + 4.6], wordsFor(mark), { rotationDeg: 90 }),
    ];
  });
}

/** A point of an end is told by what it is, anything else by whose it is too. */
const wordsFor = ({ kind, label }: StickMark): string =>
  kind === 'long point' || kind === 'short point' ? kind : `${label} ${WORD[kind]}`.trim();

const WORD: Readonly<Record<StickMark['kind'], string>> = {
  'board end': 'end',
  centre: 'centre',
  'mortise end': 'end',
  'guide edge': 'guide',
  'long point': 'long point',
  'short point': 'short point',
};

import { fixed, INCH, type Say } from '../../length/index.js';
import type { StickMark, StoryStick } from '../../shop/index.js';
import { SAME_WORDS } from '../../tolerances.js';
import { svgDocument, svgNumber, svgText } from '../svg/index.js';

/** Paper, mm. */
const MARGIN = 10;
const HEADING = 3.6;
const LETTERS = 2.6;
/** Height of a strip: its two long edges are laid on the wood. */
const STRIP = 30;
/** A row of labels above a strip. */
const ROW = 3.4;
/** Between one strip's words and the next. */
const BETWEEN = 12;
/** Least width of the paper, so that the words find room. */
const LEAST_WIDTH = 190;
/** Space taken by one letter on average, as a share of its height: for deciding where words go, never for drawing. */
const LETTER_SHARE = 0.6;

/** How each kind of mark is drawn: a line's dashes, its weight, and how far it goes up the strip. */
const DRAWN: Readonly<Record<StickMark['kind'], { dash: string; weight: number; reach: number }>> = {
  'board end': { dash: '', weight: 0.35, reach: 1 },
  centre: { dash: '6 1 1 1', weight: 0.18, reach: 1 },
  'mortise end': { dash: '', weight: 0.18, reach: 0.55 },
  'guide edge': { dash: '2 1', weight: 0.18, reach: 1 },
  'long point': { dash: '', weight: 0.18, reach: 0.35 },
  'short point': { dash: '', weight: 0.18, reach: 0.35 },
};

/** What the paper of the story sticks needs beside them. */
export interface MarksPaper {
  readonly say: Say;
  readonly revision: string;
  readonly title: string;
}

/**
 * Every story stick at full size in one SVG file in mm: lines where the knife goes, a bar of 100 mm (and 4 in) to check the
 * print with, no colour.
 */
export function marksSvg(sticks: readonly StoryStick[], { say, revision, title }: MarksPaper): string {
  const longest = Math.max(0, ...sticks.map(({ length }) => length));
  const width = Math.max(LEAST_WIDTH, longest + 2 * MARGIN);
  let top = MARGIN + HEADING;
  const body: string[] = [
    words(MARGIN, top, HEADING, `${title}: story sticks, full size`),
    words(
      MARGIN,
      top + 5,
      LETTERS,
      `revision ${revision}; print at 100 %, then measure the bars: they must be right before you cut`,
    ),
    ...bar(MARGIN, top + 11, 100, '100 mm'),
    ...bar(MARGIN, top + 19, 4 * INCH, '4 in'),
    words(
      MARGIN,
      top + 27,
      LETTERS,
      'M centre line (dash and dot) and ends (short lines) of a mortise; G edge of the guide board (dashed); points of angled ends (lowest lines)',
    ),
  ];
  top += 34;
  for (const stick of sticks) {
    const drawn = strip(stick, top, say);
    body.push(...drawn.body);
    top = drawn.bottom + BETWEEN;
  }
  if (sticks.length === 0) body.push(words(MARGIN, top, LETTERS, 'Nothing to mark.'));
  return svgDocument(
    { width, height: top + MARGIN, title: `${title}: story sticks, revision ${revision}` },
    body,
  );
}

function strip(
  stick: StoryStick,
  top: number,
  say: Say,
): { readonly body: readonly string[]; readonly bottom: number } {
  const labels = labelsOf(stick, say);
  const rows = 1 + Math.max(0, ...labels.map(({ row }) => row));
  const head = top + HEADING;
  const edge = head + 3 + rows * ROW;
  const foot = edge + STRIP;
  const x = (at: number) => MARGIN + at;
  const who = stick.boards.map(({ mark, hand }) => (hand ? `${mark} (${hand})` : mark)).join(', ');
  const cards = stick.setups.length > 0 ? `; cards ${stick.setups.join(', ')}` : '';
  const shared = stick.boards.length > 1 ? `; numbers as on ${stick.boards[0]!.mark}` : '';
  return {
    bottom: foot + ROW,
    body: [
      words(
        MARGIN,
        head,
        HEADING,
        `${who}: ${stick.direction}, zero at the ${stick.from}, ${say.length(stick.length)}${cards}${shared}`,
      ),
      line(x(0), edge, x(stick.length), edge, 0.35, ''),
      line(x(0), foot, x(stick.length), foot, 0.35, ''),
      `<path d="M${svgNumber(x(0))} ${svgNumber(foot - 9)}l4 4l-4 4z" fill="#000" stroke="none"/>`,
      ...linesOf(stick).map(({ at, kind }) => {
        const { dash, weight, reach } = DRAWN[kind];
        const isPoint = kind === 'long point' || kind === 'short point';
        const [from, to] = isPoint ? [foot - reach * STRIP, foot] : [edge, edge + reach * STRIP];
        return line(x(at), from, x(at), to, weight, dash);
      }),
      ...labels.map(({ text, at, row, left }) => {
        const y = edge - 1.2 - row * ROW;
        const lead = row > 0 ? [line(x(at), y + 0.6, x(at), edge, 0.1, '0.5 0.5')] : [];
        return [...lead, words(x(left), y, LETTERS, text)].join('');
      }),
    ],
  };
}

/** Marks of one kind in one place are one line. */
const linesOf = ({ marks }: StoryStick): readonly StickMark[] =>
  marks.filter(
    (mark, i) =>
      i === marks.findIndex(({ kind, at }) => kind === mark.kind && Math.abs(at - mark.at) < SAME_WORDS),
  );

interface Label {
  readonly text: string;
  readonly at: number;
  readonly left: number;
  readonly row: number;
}

/** What stands above each line that needs a name: marks in one place share their words, words that would meet go up a row. */
function labelsOf({ marks, length }: StoryStick, say: Say): readonly Label[] {
  const named = marks.filter(({ kind }) => kind !== 'board end');
  const places = [...new Set(named.map(({ at }) => Number(at.toFixed(2))))];
  const ends: number[] = [];
  return places.map((at): Label => {
    const here = named.filter((mark) => Math.abs(mark.at - at) < SAME_WORDS);
    const text = `${namesOf(here)} ${said(at, say)}`;
    const size = text.length * LETTERS * LETTER_SHARE;
    const left = Math.max(0, Math.min(at + 0.6, length - size));
    const free = ends.findIndex((end) => end < left);
    const row = free < 0 ? ends.length : free;
    ends[row] = left + size + 1;
    return { text, at, left, row };
  });
}

/** `M1 M3 end`: marks of one kind together, in their order. */
function namesOf(marks: readonly StickMark[]): string {
  const kinds = [...new Set(marks.map(({ kind }) => kind))];
  return kinds
    .map((kind) => {
      if (kind === 'long point' || kind === 'short point') return kind;
      const labels = marks.filter((mark) => mark.kind === kind).map(({ label }) => label);
      return `${[...new Set(labels)].toSorted().join(' ')}${kind === 'mortise end' ? ' end' : ''}`;
    })
    .join(' ');
}

const said = (at: number, say: Say): string => (say.units === 'mm' ? fixed(at, 1) : say.length(at));

const words = (x: number, y: number, size: number, text: string): string =>
  `<text x="${svgNumber(x)}" y="${svgNumber(y)}" font-family="sans-serif" font-size="${svgNumber(size)}">${svgText(text)}</text>`;

const line = (x1: number, y1: number, x2: number, y2: number, weight: number, dash: string): string =>
  `<line x1="${svgNumber(x1)}" y1="${svgNumber(y1)}" x2="${svgNumber(x2)}" y2="${svgNumber(y2)}" stroke="#000" stroke-width="${svgNumber(weight)}"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`;

const bar = (x: number, y: number, length: number, text: string): readonly string[] => [
  `<path d="M${svgNumber(x)} ${svgNumber(y - 1.5)}v3m0 -1.5h${svgNumber(length)}m0 -1.5v3" fill="none" stroke="#000" stroke-width="0.2"/>`,
  words(x + length + 3, y + 0.9, LETTERS, text),
];

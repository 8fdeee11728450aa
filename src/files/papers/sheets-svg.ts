import { INCH } from '../../length/index.js';
import type { LaidStock, Rect, StockLayout } from '../../shop/index.js';
import { svgDocument, svgNumber, svgText } from '../svg/index.js';
import { cutLine, kerfRect, type LayoutPaper, sizeWords } from './layout-words.js';

/** Paper, mm. */
const MARGIN = 10;
const HEADING = 4;
const LINE = 4;
const LETTERS = 2.8;

/** Least width of the paper, so that the words below a small drawing find room. */
const LEAST_WIDTH = 190;

/** Space taken by one letter on average, as a share of its height: for deciding what fits, never for drawing. */
const LETTER_SHARE = 0.55;

/**
 * The layouts as one SVG file in mm: a drawing for each sheet or board, all to one scale, which is stated and shown by a bar.
 *
 * Parts are white with their mark, offcuts hatched, saw cuts black in their true width and numbered in the order they are
 * made. Everything is told by line and word, nothing by colour.
 */
export function sheetsSvg(layouts: readonly StockLayout[], { say, revision }: LayoutPaper): string {
  const longest = Math.max(0, ...layouts.flatMap(({ plan }) => plan.pieces.map(({ stock }) => stock.length)));
  const scale = longest > 1250 ? 10 : longest > 500 ? 5 : 2;
  const width = Math.max(LEAST_WIDTH, longest / scale + 2 * MARGIN);
  const barLength = say.units === 'mm' ? 100 : 4 * INCH;
  const body: string[] = [HATCH];
  let top = MARGIN + HEADING;
  body.push(
    text(MARGIN, top, HEADING, `Layouts, drawn 1 : ${scale}: 1 mm here is ${scale} mm on the stock`),
    text(
      MARGIN,
      top + LINE + 1,
      LETTERS,
      `revision ${revision}; the bar is ${say.length(barLength)} of paper, ${say.length(barLength * scale)} of stock`,
    ),
    bar(MARGIN, top + LINE + 5, barLength),
  );
  top += LINE + 14;
  for (const layout of layouts) {
    for (const [i, piece] of layout.plan.pieces.entries()) {
      const { stock } = piece;
      const of = layout.plan.pieces.length > 1 ? `, piece ${i + 1} of ${layout.plan.pieces.length}` : '';
      body.push(
        text(MARGIN, top, HEADING, `${layout.title}${of}: ${sizeWords(stock, say)}`),
        text(
          MARGIN,
          top + LINE,
          LETTERS,
          `kerf ${say.fine(layout.kerf)}, ${layout.verdict === 'passed' ? 'as the shop file says' : 'not verified'}${layout.grainLocked ? '; grain along the length' : ''}; reference corner at the lower left`,
        ),
      );
      top += LINE + 4;
      body.push(...drawing(piece, layout, scale, top));
      top += stock.width / scale + 7;
      const rows = words(piece, layout, { say, revision });
      for (const row of rows) {
        body.push(text(MARGIN, top, LETTERS, row));
        top += LINE;
      }
      top += 6;
    }
    for (const row of layout.notes.flatMap((note) => wrapped(note, width - 2 * MARGIN))) {
      body.push(text(MARGIN, top, LETTERS, row));
      top += LINE;
    }
    top += 6;
  }
  if (layouts.length === 0) body.push(text(MARGIN, top, LETTERS, 'Nothing to lay out.'));
  return svgDocument({ width, height: top + MARGIN, title: `Layouts, revision ${revision}` }, body);
}

const HATCH =
  '<defs><pattern id="offcut" width="3" height="3" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="3" stroke="#000" stroke-width="0.15"/></pattern></defs>';

const text = (x: number, y: number, size: number, words: string, anchor = 'start'): string =>
  `<text x="${svgNumber(x)}" y="${svgNumber(y)}" font-family="sans-serif" font-size="${svgNumber(size)}" text-anchor="${anchor}">${svgText(words)}</text>`;

const bar = (x: number, y: number, length: number): string =>
  `<path d="M${svgNumber(x)} ${svgNumber(y - 1.5)}v3m0 -1.5h${svgNumber(length)}m0 -1.5v3" fill="none" stroke="#000" stroke-width="0.3"/>`;

/** The stock, seen from above with its reference corner at the lower left. */
function drawing(
  { stock, usable, parts, cuts, offcuts }: LaidStock,
  { kerf }: StockLayout,
  scale: number,
  top: number,
): readonly string[] {
  const rect = ({ x, y, length, width }: Rect, style: string): string =>
    `<rect x="${svgNumber(MARGIN + x / scale)}" y="${svgNumber(top + (stock.width - y - width) / scale)}" width="${svgNumber(length / scale)}" height="${svgNumber(width / scale)}" ${style}/>`;
  const place = (x: number, y: number): readonly [number, number] => [
    MARGIN + x / scale,
    top + (stock.width - y) / scale,
  ];
  return [
    rect(
      { x: 0, y: 0, length: stock.length, width: stock.width },
      'fill="#fff" stroke="#000" stroke-width="0.25"',
    ),
    rect(usable, 'fill="none" stroke="#000" stroke-width="0.15" stroke-dasharray="2 1"'),
    ...offcuts.map((one) => rect(one, 'fill="url(#offcut)" stroke="none"')),
    ...cuts.map((cut) => rect(kerfRect(cut, kerf), 'fill="#000" stroke="none"')),
    ...parts.map((part) => rect(part, 'fill="#fff" stroke="#000" stroke-width="0.4"')),
    ...[...parts, ...offcuts].flatMap((one) => label(one, one.id, scale, place)),
    ...cuts.flatMap((cut) => number(kerfRect(cut, kerf), cut.number, place)),
  ];
}

type Place = (x: number, y: number) => readonly [number, number];

/** A mark in the middle of its piece, as large as fits; none where no legible letter does. */
function label(piece: Rect, words: string, scale: number, place: Place): readonly string[] {
  const [x, y] = place(piece.x + piece.length / 2, piece.y + piece.width / 2);
  const size = Math.min(
    3.5,
    piece.width / scale - 0.6,
    piece.length / scale / (words.length * LETTER_SHARE + 0.4),
  );
  if (size < 1.2) return [];
  const half = (words.length * LETTER_SHARE * size) / 2 + 0.4;
  return [
    `<rect x="${svgNumber(x - half)}" y="${svgNumber(y - size / 2 - 0.2)}" width="${svgNumber(2 * half)}" height="${svgNumber(size + 0.4)}" fill="#fff"/>`,
    text(x, y + size * 0.36, size, words, 'middle'),
  ];
}

/** A cut's number in a ring: a third along a rip, a third up a crosscut, clear of the corners where cuts meet. */
function number({ x, y, length, width }: Rect, count: number, place: Place): readonly string[] {
  const [cx, cy] =
    length > width ? place(x + length / 3, y + width / 2) : place(x + length / 2, y + width / 3);
  return [
    `<circle cx="${svgNumber(cx)}" cy="${svgNumber(cy)}" r="1.7" fill="#fff" stroke="#000" stroke-width="0.2"/>`,
    text(cx, cy + 0.8, 2.2, String(count), 'middle'),
  ];
}

/** What stands below a drawing: the parts, then the cuts in their order. */
function words({ parts, cuts }: LaidStock, layout: StockLayout, { say }: LayoutPaper): readonly string[] {
  const named = parts.map((part) => {
    const name = layout.parts.find(({ mark }) => mark === part.id)?.name ?? part.id;
    return `${part.id}  ${name}: ${sizeWords(part, say)}${part.turned ? ', turned' : ''}`;
  });
  return [...named, ...cuts.map((cut) => cutLine(cut, say))];
}

/** Words broken into rows that fit the paper. */
function wrapped(words: string, width: number): readonly string[] {
  const most = Math.floor(width / (LETTERS * LETTER_SHARE));
  const rows: string[] = [];
  for (const word of words.split(' ')) {
    const last = rows.at(-1);
    if (last !== undefined && last.length + word.length < most) rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(word);
  }
  return rows;
}

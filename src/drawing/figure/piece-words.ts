import {
  BODY,
  type Box,
  entitiesBox,
  letters,
  SMALL,
  type TextStroke,
  textWidth,
  wrappedText,
} from '../sheet/index.js';

/** From row to row of letters, and round them, mm. */
const LEADING = 3.3;
const AIR = 0.9;

/** What is written on a piece of wood, the most important first. */
export interface PieceWords {
  readonly mark: string;
  readonly name: string;
  readonly size: string;
}

/** What is written on a piece, the mark always first; none where not even that finds room. @param box of the piece on the sheet, mm */
export function pieceWords({ mark, name, size }: PieceWords, box: Box): readonly TextStroke[] {
  const [width, height] = [box.maxX - box.minX - 2 * AIR, box.maxY - box.minY - 2 * AIR];
  const named = wrappedText(name, width);
  const ways: readonly (readonly string[])[] = [
    [mark, ...named, size],
    [`${mark} ${name}`, size],
    [mark, ...named],
    [`${mark} ${name}`],
    [mark, size],
    [mark],
  ];
  const rows = ways.find(
    (one) =>
      SMALL + (one.length - 1) * LEADING <= height &&
      one.every((row, i) => textWidth(row, i === 0 ? SMALL : BODY, i === 0) <= width),
  );
  if (!rows) return [];
  const middle = (box.minX + box.maxX) / 2;
  const top = (box.minY + box.maxY + SMALL + (rows.length - 1) * LEADING) / 2;
  return rows.map((row, i) =>
    letters([middle, top - SMALL - i * LEADING], row, {
      anchor: 'middle',
      height: i === 0 ? SMALL : BODY,
      bold: i === 0,
    }),
  );
}

/** A ground round words that nothing is drawn on; undefined without words. */
export function groundOf(words: readonly TextStroke[]): Box | undefined {
  if (words.length === 0) return undefined;
  const { minX, minY, maxX, maxY } = entitiesBox(words);
  return { minX: minX - 0.6, minY: minY - 0.3, maxX: maxX + 0.6, maxY: maxY + 0.3 };
}

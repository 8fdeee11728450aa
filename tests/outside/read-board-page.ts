import type { WrittenText } from './read-marks.js';

/** A board as its page alone tells it; mm and degrees. */
export interface ReadBoard {
  readonly heading: string;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  /** What is cut into it, as its table tells it. */
  readonly cuts: readonly ReadCut[];
  /** Every figure that stands by itself. */
  readonly figures: readonly number[];
  /** Of slanted sides and bevels, as often as they are told to be there. */
  readonly anglesDeg: readonly number[];
  readonly radii: readonly number[];
}

/** A row of a board's table: the cells by the words over them. */
export interface ReadCut {
  /** Its mark, by the mark of the board where several share the table; by '' where one has it alone. */
  readonly marks: ReadonlyMap<string, string>;
  readonly cells: ReadonlyMap<string, string>;
}

/** Height of the capitals of a board's heading, mm. */
const HEADING = 3.5;

/** Cells of a row stand on one line, and begin where the words over them begin, mm. */
const SAME = 0.3;

/** The boards of a page from its texts and where they stand, nothing else. */
export function readBoardPage(texts: readonly WrittenText[]): readonly ReadBoard[] {
  const heads = texts.filter(
    ({ text, capitals }) => Math.abs(capitals - HEADING) < 0.05 && /^[A-Z]{2,}(-\d+)? /.test(text),
  );
  return heads.map((head, i) => {
    const end = heads[i + 1]?.from[1] ?? Number.POSITIVE_INFINITY;
    return readBoard(
      head.text,
      texts.filter(({ from: [, y] }) => y > head.from[1] && y < end),
    );
  });
}

function readBoard(heading: string, texts: readonly WrittenText[]): ReadBoard {
  const blank = texts.map(({ text }) => /, ([\d.]+) × ([\d.]+) × ([\d.]+) mm\./.exec(text)).find(Boolean);
  const [thickness = Number.NaN, width = Number.NaN, length = Number.NaN] = blank?.slice(1).map(Number) ?? [];
  const told = (pattern: RegExp) =>
    texts.flatMap(({ text }) => {
      const found = pattern.exec(text);
      return found ? Array.from({ length: Number(found[1] ?? 1) }, () => Number(found[2])) : [];
    });
  return {
    heading,
    thickness,
    width,
    length,
    cuts: readTable(texts),
    figures: texts.flatMap(({ text }) => (/^[\d.]+$/.test(text) ? [Number(text)] : [])),
    anglesDeg: [...told(/^(?:(\d+)× )?([\d.]+)°$/), ...told(/^B\d+ ()?([\d.]+)°$/)],
    radii: told(/^(?:(\d+)× )?R([\d.]+)$/),
  };
}

function readTable(texts: readonly WrittenText[]): ReadBoard['cuts'] {
  const cut = texts.find(({ text }) => text === 'cut');
  if (!cut) return [];
  const level = (one: WrittenText) => (other: WrittenText) => Math.abs(other.from[1] - one.from[1]) < SAME;
  const head = texts.filter(level(cut)).toSorted((a, b) => a.from[0] - b.from[0]);
  const below = texts.filter(({ from: [x, y] }) => y > cut.from[1] + 1 && Math.abs(x - cut.from[0]) < SAME);
  return below.map((first) => {
    const row = texts.filter(level(first)).toSorted((a, b) => a.from[0] - b.from[0]);
    return {
      marks: new Map(
        row
          .filter(({ from: [x] }) => x < cut.from[0] - SAME)
          .map((mark) => {
            const over = head.find(({ from: [x] }) => Math.abs(x - mark.from[0]) < SAME);
            return [over?.text ?? '', mark.text] as const;
          }),
      ),
      cells: new Map(
        head.flatMap((over) => {
          const cell = row.find(({ from: [x] }) => Math.abs(x - over.from[0]) < SAME);
          return cell ? [[over.text, cell.text] as const] : [];
        }),
      ),
    };
  });
}

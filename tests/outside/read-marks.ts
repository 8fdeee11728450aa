import type { Program } from './programs.js';
import { attribute, numbers, plain, runsOf, trace } from './read-pdf.js';

type Point = readonly [x: number, y: number];

/** What a page shows, in the order it is drawn; mm, origin in the upper left corner, y down. */
export type PageMark = WrittenText | DrawnLine | FilledArea;

/** A row of letters: its box has a corner at the start of its baseline. */
export interface WrittenText {
  readonly kind: 'text';
  readonly text: string;
  readonly from: Point;
  /** Unit: along the baseline. */
  readonly along: Point;
  /** Of the box: from the baseline downwards and upwards to where ink ends. */
  readonly width: number;
  readonly below: number;
  readonly above: number;
  /** Height of its capitals. */
  readonly capitals: number;
}

export interface DrawnLine {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
  readonly lineWidth: number;
}

/** What hides all that was drawn before it. */
export interface FilledArea {
  readonly kind: 'area';
  readonly loops: readonly (readonly Point[])[];
}

const MM = 25.4 / 72;

/** Of DejaVu Sans, for each unit of its size: how high small letters and tall ones reach, how deep tails hang. */
const CAPITAL = 0.729;
const [SMALL_LETTERS, TALL_LETTERS, TAIL] = [0.56, 0.76, 0.24];

/** Everything some pages of a file show, as `mutool trace` draws them. */
export const pageMarks = (program: Program, file: string, pages: string): readonly (readonly PageMark[])[] =>
  trace(program, file, pages).map(marksOn);

/** Everything a page shows. */
export const marksOn = (page: string): readonly PageMark[] =>
  [...page.matchAll(/<(stroke_path|fill_path|fill_text) ([^>]*)>([\s\S]*?)<\/\1>/g)].flatMap(
    ([, what, head, body]): readonly PageMark[] => {
      const [a, b, c, d, e, f] = numbers(attribute(head!, 'transform'));
      const place = (x: number, y: number): Point => [
        (a! * x + c! * y + e!) * MM,
        (b! * x + d! * y + f!) * MM,
      ];
      if (what === 'fill_text') return written(body!, place);
      const loops = runsOf(body!, place);
      if (what === 'fill_path') return [{ kind: 'area', loops }];
      const lineWidth = Number(attribute(head!, 'linewidth')) * Math.hypot(a!, b!) * MM;
      return loops.flatMap((run) =>
        run.slice(1).map((to, i): DrawnLine => ({ kind: 'line', from: run[i]!, to, lineWidth })),
      );
    },
  );

function written(body: string, place: (x: number, y: number) => Point): readonly WrittenText[] {
  return [...body.matchAll(/<span ([^>]*)>([\s\S]*?)<\/span>/g)].flatMap(
    ([, head, letters]): readonly WrittenText[] => {
      // the letters may be turned by the page or by themselves
      const [right, up] = numbers(attribute(head!, 'trm'));
      const size = Math.hypot(right!, up!);
      const glyphs = [...letters!.matchAll(/<g ([^>]*)\/>/g)].map(([, one]) => one!);
      const text = plain(glyphs.map((one) => attribute(one, 'unicode')).join(''));
      if (text.trim() === '') return [];
      const value = (glyph: string, name: string) => Number(attribute(glyph, name));
      // a blank that the reader adds behind a row has no ink
      const last = glyphs.findLast((one) => attribute(one, 'unicode').trim() !== '')!;
      const first = glyphs[0]!;
      const start = [value(first, 'x'), value(first, 'y')] as const;
      const end = [
        value(last, 'x') + value(last, 'adv') * right!,
        value(last, 'y') + value(last, 'adv') * up!,
      ] as const;
      const [from, to] = [place(...start), place(...end)];
      const width = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const unit = width / Math.hypot(end[0] - start[0], end[1] - start[1]);
      return [
        {
          kind: 'text',
          text,
          from,
          along: [(to[0] - from[0]) / width, (to[1] - from[1]) / width],
          width,
          capitals: CAPITAL * size * unit,
          below: /[gjpqyQ,;()[\]]/.test(text) ? TAIL * size * unit : 0,
          above: (/[^acegmnopqrsuvwxyz.,:;\s–-]/.test(text) ? TALL_LETTERS : SMALL_LETTERS) * size * unit,
        },
      ];
    },
  );
}

import { type Program, printed } from './programs.js';

type Point = readonly [x: number, y: number];

/** A path of a page as another reader sees it: mm, origin in the lower left corner; curves as points along them. */
export interface ReadPath {
  readonly lineWidth: number;
  readonly runs: readonly (readonly Point[])[];
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly ReadPath[];
}

/** Millimetres in a point. */
const MM = 25.4 / 72;

/** Points along a cubic curve. */
const ALONG = 12;

/** Some pages of a file as `mutool trace` tells them, as text. */
export const trace = (program: Program, file: string, pages: string): readonly string[] =>
  printed(program, 'trace', file, pages).split('<page ').slice(1);

/** Some pages of a file as `mutool trace` draws them. */
export const tracedPages = (program: Program, file: string, pages: string): readonly ReadPage[] =>
  trace(program, file, pages).map(pathsOn);

/** Every path of a page with its transform applied. */
export function pathsOn(page: string): ReadPage {
  const [, , width, height] = numbers(attribute(page, 'mediabox'));
  const paths = [...page.matchAll(/<stroke_path ([^>]*)>([\s\S]*?)<\/stroke_path>/g)].map(
    ([, head, body]): ReadPath => {
      const [a, b, c, d, e, f] = numbers(attribute(head!, 'transform'));
      // the reader's y runs down from the upper edge
      const place = (x: number, y: number): Point => [
        (a! * x + c! * y + e!) * MM,
        (height! - (b! * x + d! * y + f!)) * MM,
      ];
      return {
        lineWidth: Number(attribute(head!, 'linewidth')) * Math.abs(a!) * MM,
        runs: runsOf(body!, place),
      };
    },
  );
  return { width: width! * MM, height: height! * MM, paths };
}

export function runsOf(body: string, place: (x: number, y: number) => Point): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  let at: Point = [0, 0];
  for (const [, what, rest] of body.matchAll(/<(moveto|lineto|curveto|closepath)([^>]*)\/>/g)) {
    const value = (name: string) => Number(attribute(rest!, name));
    if (what === 'moveto') {
      at = [value('x'), value('y')];
      runs.push([place(...at)]);
    } else if (what === 'lineto') {
      at = [value('x'), value('y')];
      runs.at(-1)!.push(place(...at));
    } else if (what === 'curveto') {
      const [p1, p2, p3]: readonly Point[] = [
        [value('x1'), value('y1')],
        [value('x2'), value('y2')],
        [value('x3'), value('y3')],
      ];
      for (let i = 1; i <= ALONG; i += 1) {
        const t = i / ALONG;
        const at4 = (axis: 0 | 1) =>
          (1 - t) ** 3 * at[axis] +
          3 * (1 - t) ** 2 * t * p1![axis] +
          3 * (1 - t) * t * t * p2![axis] +
          t ** 3 * p3![axis];
        runs.at(-1)!.push(place(at4(0), at4(1)));
      }
      at = p3!;
    } else runs.at(-1)!.push(runs.at(-1)![0]!);
  }
  return runs;
}

/** A word of a page with its own box: mm, origin in the upper left corner. */
export interface ReadWord {
  readonly text: string;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The words of every page as `pdftotext -bbox` finds them. */
export function wordsOf(program: Program, file: string): readonly (readonly ReadWord[])[] {
  return printed(program, '-bbox', file, '-')
    .split('<page ')
    .slice(1)
    .map((page) =>
      [...page.matchAll(/<word ([^>]*)>([^<]*)<\/word>/g)].map(([, head, text]): ReadWord => {
        const value = (name: string) => Number(attribute(head!, name)) * MM;
        return {
          text: plain(text!),
          minX: value('xMin'),
          minY: value('yMin'),
          maxX: value('xMax'),
          maxY: value('yMax'),
        };
      }),
    );
}

/** Text as it stands in XML, read. */
export const plain = (text: string): string =>
  text.replace(
    /&(amp|lt|gt|quot|#39);/g,
    (_, name: string) => ({ amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" })[name]!,
  );

/** What stands in an attribute; looked for by its name, as pages have a hundred thousand of them. */
export function attribute(head: string, name: string): string {
  const named = `${name}="`;
  let at = head.indexOf(named);
  while (at > 0 && head[at - 1]! > ' ') at = head.indexOf(named, at + 1);
  return at < 0 ? '' : head.slice(at + named.length, head.indexOf('"', at + named.length));
}

export const numbers = (text: string): readonly number[] => text.split(' ').map(Number);

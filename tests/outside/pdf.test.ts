// Checked with three readers of PDF files: mutool (paths, with every transform applied), pdftotext (the words and their
// boxes) and qpdf (the file's own structure). Sizes: ISO 216 A4 210 × 297 mm; ANSI/ASME Y14.1 A 8.5 × 11 in.

import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Board } from '../../src/board/index.js';
import type { Paper } from '../../src/drawing/index.js';
import type { Vec3 } from '../../src/frame/index.js';
import { arcs, bounds, pointAlong, segments } from '../../src/profile/index.js';
import { boardMarks } from '../../src/shop/index.js';
import { MANY } from '../properties/seed.js';
import { collisionsOn } from './collisions.js';
import { CASES, type Case } from './designs.js';
import { finerThanARule, strayInches, strayMetric, toldSizes, toldTwoWays, untold } from './inch-readings.js';
import { type MadePlan, madeAnew, planWorkshop } from './plans.js';
import { FIX_QDF, MUTOOL, PDFINFO, PDFTOTEXT, printed, printedBytes, QPDF, testWith } from './programs.js';
import { readBoardPage } from './read-board-page.js';
import { marksOn, type PageMark, pageMarks, type WrittenText } from './read-marks.js';
import {
  pathsOn,
  type ReadPage,
  type ReadPath,
  type ReadWord,
  trace,
  tracedPages,
  wordsOf,
} from './read-pdf.js';
import { missingFrom } from './rebuilt-board.js';

/** What is read of a plan does not change: read once for all tests. */
function onceAFile<T>(read: (file: string) => T): (file: string) => T {
  const known = new Map<string, T>();
  return (file) => {
    const found = known.get(file) ?? read(file);
    known.set(file, found);
    return found;
  };
}

const wordsIn = onceAFile((file) => wordsOf(PDFTOTEXT, file));

/** The paths of every page, and what its words meet; all else a page shows is let go at once. */
const readIn = onceAFile((file) => {
  const pages = trace(MUTOOL, file, '1-N');
  return {
    traced: pages.map(pathsOn),
    collisions: pages.map((page) => collisionsOn(marksOn(page))),
  };
});

const tracedIn = (file: string) => readIn(file).traced;

/** A file without its packing: beside it, as another file. */
const opened = onceAFile((file) => {
  const open = `${file}.open.pdf`;
  printed(QPDF, '--qdf', '--object-streams=disable', file, open);
  return open;
});

const unpacked = (file: string) => readFileSync(opened(file), 'latin1');

type Point = readonly [number, number];

const [jig, frame] = [CASES[0]!, CASES[1]!];
const stool = CASES.find(({ values }) => values.treads === '1' && values.rake === '10')!;
const tall = CASES.at(-1)!;

const PAPERS: Readonly<Record<Paper, Point>> = { A4: [210, 297], Letter: [215.9, 279.4] };
const papers = ['A4', 'Letter'] as const;

/** The designs that are planned in inches: each model for somebody who has just cloned, all of them with `TENONWRIGHT_MANY=1`. */
const IN_INCHES = MANY ? [stool, jig, frame, tall] : [stool, jig, frame];

/**
 * The papers of a plan: both with `TENONWRIGHT_MANY=1`. For somebody who has just cloned inches go with Letter, mm with A4, and
 * with Letter as well where boards have templates of several sheets.
 */
function papersOf(design: Case, units: 'mm' | 'in'): readonly Paper[] {
  if (MANY || (units === 'mm' && (design === stool || design === jig))) return papers;
  return units === 'mm' ? ['A4'] : ['Letter'];
}

const plan = planWorkshop(papersOf);

const nameOf = (paper: Paper) => `plan.${paper.toLowerCase()}.pdf`;

/** Width of the lines of templates and rules, mm. */
const FINE = 0.2;

/** A corrected print has lines a little wider too. */
const isFine = ({ lineWidth }: ReadPath) => Math.abs(lineWidth - FINE) < 0.003;

/** Numbers of the tile pages of a plan, from 1, by template. */
function tilePages({ sets, templates }: MadePlan, paper: Paper): readonly (readonly number[])[] {
  const { sheets } = sets[paper];
  return templates.map(({ artwork: { board } }) =>
    sheets.flatMap(({ id }, i) =>
      new RegExp(`^template-${board.id}-\\d+$`).test(id) && sheets[i]!.scale === '1:1' ? [i + 1] : [],
    ),
  );
}

const pagesOf = (made: MadePlan, paper: Paper, pages: readonly number[]): readonly ReadPage[] =>
  pages.map((page) => tracedIn(made.file(nameOf(paper)))[page - 1]!);

/** Straight lines of two points, as [from, to]. */
const straight = (page: ReadPage): readonly (readonly [Point, Point])[] =>
  page.paths
    .filter(isFine)
    .flatMap(({ runs }) => runs.flatMap((run) => (run.length === 2 ? [[run[0]!, run[1]!] as const] : [])));

/** Lengths of level or upright lines that carry a tick at each tenth of their length: rules. */
function rules(page: ReadPage, axis: 0 | 1): readonly number[] {
  const lines = straight(page);
  const other = (1 - axis) as 0 | 1;
  return lines
    .filter(([a, b]) => Math.abs(a[other] - b[other]) < 1e-3)
    .map(([a, b]) => ({ from: a, length: b[axis] - a[axis] }))
    .filter(({ from, length }) =>
      Array.from({ length: 11 }, (_, i) => from[axis] + (i * length) / 10).every((at) =>
        lines.some(
          ([a, b]) =>
            Math.abs(a[axis] - at) < 0.01 &&
            Math.abs(b[axis] - at) < 0.01 &&
            Math.abs(a[other] - from[other]) < 0.01 &&
            b[other] - a[other] > 1,
        ),
      ),
    )
    .map(({ length }) => length);
}

for (const design of [stool, jig]) {
  for (const paper of papers) {
    testWith(
      MUTOOL,
      `on ${paper} every template sheet of the ${design.called} carries a rule of 100 mm both ways`,
      async () => {
        const made = await plan(design);
        const pages = tilePages(made, paper).flat();
        expect(pages.length).toBeGreaterThan(1);
        for (const page of pagesOf(made, paper, pages)) {
          for (const axis of [0, 1] as const) {
            const found = rules(page, axis);
            expect(found).toHaveLength(1);
            expect(Math.abs(found[0]! - 100)).toBeLessThan(0.02);
          }
        }
      },
    );

    testWith(
      MUTOOL,
      `on ${paper} the template sheets of the ${design.called}, joined at their marks, give the outline back`,
      async () => {
        const made = await plan(design);
        for (const [i, tiled] of made.templates.entries()) {
          const pages = pagesOf(made, paper, tilePages(made, paper)[i]!);
          const joined = rejoined(pages, wordsIn(made.file(nameOf(paper))), tilePages(made, paper)[i]!);
          const { outline, openings } = tiled.artwork.board;
          const meant = [outline, ...openings.map((one) => one.outline)].flatMap((loop) =>
            segments(loop).flatMap((piece) =>
              Array.from({ length: 60 }, (_, k) => pointAlong(piece, k / 60)),
            ),
          );
          const off = bestShift(meant, joined);
          expect(off, tiled.artwork.board.id).toBeLessThan(0.05);
        }
      },
    );
  }
}

/** A ring of a match mark: its middle. */
function ringsOf(page: ReadPage): readonly Point[] {
  const fine = page.paths.filter(({ lineWidth }) => Math.abs(lineWidth - 0.18) < 0.005);
  return fine
    .flatMap(({ runs }) => runs)
    .flatMap((run) => {
      if (run.length < 40) return [];
      const [xs, ys] = [run.map(([x]) => x), run.map(([, y]) => y)];
      const [w, h] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
      if (Math.abs(w - 6.4) > 0.01 || Math.abs(h - 6.4) > 0.01) return [];
      return [[(Math.max(...xs) + Math.min(...xs)) / 2, (Math.max(...ys) + Math.min(...ys)) / 2] as const];
    });
}

/** Rings with the letters that stand beside them. */
function marksOf(page: ReadPage, words: readonly ReadWord[]): ReadonlyMap<string, Point> {
  const named = words.filter(({ text }) => /^J\d+[ab]$/.test(text));
  const found = new Map<string, Point>();
  for (const [x, y] of ringsOf(page)) {
    const away = (word: (typeof named)[number]) =>
      Math.hypot((word.minX + word.maxX) / 2 - x, page.height - (word.minY + word.maxY) / 2 - y);
    const nearest = named.toSorted((a, b) => away(a) - away(b))[0]!;
    found.set(nearest.text, [x, y]);
  }
  return found;
}

/** Fine lines of all sheets in the first one's place, each sheet laid on marks it shares with one that lies already. */
function rejoined(
  pages: readonly ReadPage[],
  words: readonly (readonly ReadWord[])[],
  numbers: readonly number[],
): readonly (readonly Point[])[] {
  const marks = pages.map((page, i) => marksOf(page, words[numbers[i]! - 1]!));
  const laid = new Map<number, Point>([[0, [0, 0]]]);
  for (let round = 0; round < pages.length; round += 1) {
    pages.forEach((_, i) => {
      if (laid.has(i)) return;
      for (const [k, [dx, dy]] of laid) {
        const shared = [...marks[i]!].filter(([name]) => marks[k]!.has(name));
        if (shared.length < 2) continue;
        const shifts = shared.map(([name, [x, y]]): Point => {
          const [a, b] = marks[k]!.get(name)!;
          return [a + dx - x, b + dy - y];
        });
        // both marks of a seam ask for the same place
        for (const shift of shifts) {
          expect(shift[0]).toBeCloseTo(shifts[0]![0], 2);
          expect(shift[1]).toBeCloseTo(shifts[0]![1], 2);
        }
        laid.set(i, shifts[0]!);
        return;
      }
    });
  }
  expect(laid.size).toBe(pages.length);
  return pages.flatMap((page, i) => {
    const [dx, dy] = laid.get(i)!;
    return page.paths
      .filter(isFine)
      .flatMap(({ runs }) => runs.map((run) => run.map(([x, y]): Point => [x + dx, y + dy])));
  });
}

/**
 * How far points are from lines at most, when the points are shifted so that they fit: the lines' longest straight pieces are
 * tried against the points' own box.
 */
function bestShift(points: readonly Point[], lines: readonly (readonly Point[])[]): number {
  const [minX, minY] = [Math.min(...points.map(([x]) => x)), Math.min(...points.map(([, y]) => y))];
  const pieces = lines.flatMap((run) => run.slice(1).map((to, i) => [run[i]!, to] as const));
  const lefts = [...new Set(pieces.flatMap(([a, b]) => (Math.abs(a[0] - b[0]) < 1e-3 ? [a[0]] : [])))];
  const lows = [...new Set(pieces.flatMap((piece) => piece.map(([, y]) => y)))];
  const few = points.filter((_, i) => i % 37 === 0);
  const isNear = nearTo(pieces);
  let best = Number.POSITIVE_INFINITY;
  for (const x of lefts) {
    for (const y of lows) {
      const [dx, dy] = [x - minX, y - minY];
      if (!few.every(([px, py]) => isNear(px + dx, py + dy))) continue;
      if (farthest(few, dx, dy, pieces, Math.min(best, 0.06)) > 0.05) continue;
      best = Math.min(best, farthest(points, dx, dy, pieces, best));
    }
  }
  return best;
}

/** Whether a point may lie within 0.5 mm of pieces: they are strewn over squares of 1 mm, and so are the squares round those. */
function nearTo(pieces: readonly (readonly [Point, Point])[]): (x: number, y: number) => boolean {
  const ROW = 10_000;
  const squares = new Set<number>();
  for (const [[ax, ay], [bx, by]] of pieces) {
    const steps = Math.ceil(Math.hypot(bx - ax, by - ay) * 2) + 1;
    for (let i = 0; i <= steps; i += 1) {
      const [column, row] = [ax + ((bx - ax) * i) / steps, ay + ((by - ay) * i) / steps].map(Math.floor);
      for (const u of [-1, 0, 1]) for (const v of [-1, 0, 1]) squares.add((row! + v) * ROW + column! + u);
    }
  }
  return (x, y) => squares.has(Math.floor(y) * ROW + Math.floor(x));
}

function farthest(
  points: readonly Point[],
  dx: number,
  dy: number,
  pieces: readonly (readonly [Point, Point])[],
  enough: number,
): number {
  let most = 0;
  // points follow each other along an outline: the piece nearest to one is often nearest to the next
  let nearest = 0;
  for (const [x, y] of points) {
    let least = Number.POSITIVE_INFINITY;
    const first = nearest;
    for (let i = 0; i < pieces.length && least > most; i += 1) {
      const at = (first + i) % pieces.length;
      const away = distance([x + dx, y + dy], ...pieces[at]!);
      if (away >= least) continue;
      least = away;
      nearest = at;
    }
    most = Math.max(most, least);
    if (most > enough) return most;
  }
  return most;
}

function distance([x, y]: Point, a: Point, b: Point): number {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const square = ux * ux + uy * uy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * ux + (y - a[1]) * uy) / square));
  return Math.hypot(x - a[0] - ux * t, y - a[1] - uy * t);
}

const printTestPage = ({ sets }: MadePlan, paper: Paper): number =>
  sets[paper].entries.flatMap(({ parts = [] }) => parts).find(({ title }) => title === 'Print test')!.sheet +
  1;

testWith(MUTOOL, 'a print that is corrected is longer by what the printer takes away, each way', async () => {
  const made = await plan(stool, { short: 0.994, long: 1.002 });
  const at = printTestPage(made, 'A4');
  const [page] = tracedPages(MUTOOL, made.file('plan.a4.pdf'), String(at));
  expect(rules(page!, 0).map((length) => length.toFixed(2))).toEqual(
    [100 / 0.994, 101.6 / 0.994].map((length) => length.toFixed(2)),
  );
  expect(rules(page!, 1).map((length) => length.toFixed(2))).toEqual(
    [100 / 1.002, 101.6 / 1.002].map((length) => length.toFixed(2)),
  );
  // a sheet in landscape runs through the same printer the other way round
  const [tile] = tilePages(made, 'A4').flat();
  const [turned] = tracedPages(MUTOOL, made.file('plan.a4.pdf'), String(tile));
  expect(turned!.width).toBeGreaterThan(turned!.height);
  expect(rules(turned!, 0)[0]).toBeCloseTo(100 / 1.002, 2);
  expect(rules(turned!, 1)[0]).toBeCloseTo(100 / 0.994, 2);
});

for (const paper of papers) {
  testWith(MUTOOL, `the print test on ${paper} has squares of 100 mm and 4 in`, async () => {
    const made = await plan(stool);
    const [page] = pagesOf(made, paper, [printTestPage(made, paper)]);
    for (const axis of [0, 1] as const) {
      const found = rules(page!, axis);
      expect(found).toHaveLength(2);
      expect(found[0]).toBeCloseTo(100, 3);
      expect(found[1]).toBeCloseTo(4 * 25.4, 3);
    }
  });

  testWith(MUTOOL, `every page of a plan for ${paper} is exactly as large as the paper`, async () => {
    for (const design of [stool, jig, frame].filter((one) => papersOf(one, 'mm').includes(paper))) {
      const made = await plan(design);
      const text = printed(MUTOOL, 'info', '-M', made.file(nameOf(paper)));
      const boxes = printed(MUTOOL, 'pages', made.file(nameOf(paper)));
      expect(text).not.toBe('');
      const sizes = [...boxes.matchAll(/<MediaBox l="0" b="0" r="([\d.]+)" t="([\d.]+)"/g)].map(([, r, t]) =>
        [Number(r), Number(t)].map((points) => (points * 25.4) / 72).toSorted((a, b) => a - b),
      );
      expect(sizes).toHaveLength(made.sets[paper].sheets.length);
      for (const [short, long] of sizes) {
        expect(short).toBeCloseTo(PAPERS[paper][0], 3);
        expect(long).toBeCloseTo(PAPERS[paper][1], 3);
      }
    }
  });

  for (const design of [stool, jig, frame, tall].filter((one) => papersOf(one, 'mm').includes(paper))) {
    testWith(
      PDFTOTEXT,
      `on ${paper} no words of the plan of the ${design.called} leave their page or cover others`,
      async () => {
        const made = await plan(design);
        const pages = wordsIn(made.file(nameOf(paper)));
        const { sheets } = made.sets[paper];
        expect(pages).toHaveLength(sheets.length);
        expect(pages.flat().length).toBeGreaterThan(1000);
        pages.forEach((words, i) => {
          const { width, height, id } = sheets[i]!;
          const stays = ({ minX, minY, maxX, maxY }: ReadWord) =>
            minX > 4 && minY > 4 && maxX < width - 4 && maxY < height - 4;
          expect(
            words.filter((word) => !stays(word)),
            id,
          ).toEqual([]);
          expect(covered(words), id).toEqual([]);
        });
      },
    );
  }
}

/** Pairs of words whose letters share more than a hair. A word's box is higher than its letters: ascent and descent of the font. */
function covered(words: readonly ReadWord[]): readonly string[] {
  const HAIR = 0.3;
  const letters = words.map((word) => inked(word)).toSorted((a, b) => a.minY - b.minY);
  return letters.flatMap((a, i) => {
    const met: string[] = [];
    // what begins below its foot begins the words that are all below it
    for (let k = i + 1; k < letters.length && letters[k]!.minY < a.maxY - HAIR; k += 1) {
      const b = letters[k]!;
      const across = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
      const down = Math.min(a.maxY, b.maxY) - b.minY;
      if (across > HAIR && down > HAIR) met.push(`${a.text} / ${b.text}`);
    }
    return met;
  });
}

/** DejaVu Sans: ascent 0.928, descent 0.236, capitals 0.729 of its size; what is between is empty for most letters. */
function inked(word: ReadWord) {
  const { minX, minY, maxX, maxY } = word;
  const upright = maxY - minY > (maxX - minX) * 1.5 && word.text.length > 1;
  const cut = (low: number, high: number, side: 'start' | 'end') =>
    ((high - low) * (side === 'start' ? 0.928 - 0.729 : 0.236)) / (0.928 + 0.236);
  return upright
    ? { ...word, minX: minX + cut(minX, maxX, 'start'), maxX: maxX - cut(minX, maxX, 'end') }
    : { ...word, minY: minY + cut(minY, maxY, 'start'), maxY: maxY - cut(minY, maxY, 'end') };
}

for (const design of [stool, jig]) {
  testWith(
    QPDF,
    `the plan of the ${design.called} has no fault, asks for no scaling and leads to its parts`,
    async () => {
      const made = await plan(design);
      for (const name of [...made.bytes.keys()].filter((one) => one.endsWith('.pdf'))) {
        expect(printed(QPDF, '--check', made.file(name))).toContain('No syntax or stream encoding errors');
        const open = unpacked(made.file(name));
        expect(open).toMatch(/\/ViewerPreferences/);
        expect(open).toMatch(/\/PrintScaling \/None/);
      }
      const { outlines } = JSON.parse(
        printed(QPDF, '--json', '--json-key=outlines', made.file('plan.a4.pdf')),
      ) as {
        outlines: readonly { title: string; destpageposfrom1: number; kids: readonly unknown[] }[];
      };
      expect(outlines.map(({ title, destpageposfrom1: page }) => [title, page])).toEqual(
        made.sets.A4.entries.map(({ title, sheet }) => [title, sheet + 1]),
      );
      expect(outlines.find(({ title }) => title === 'Boards')!.kids.length).toBeGreaterThan(1);
    },
  );
}

/**
 * The same file without its paths, as its reader goes through the whole page for the words of each cell: a tenth of its time.
 * Words, structure and marks stay as they are; without an unpacker it is the file itself.
 */
function withoutPaths(file: string): string {
  if (!QPDF.command || !FIX_QDF.command) return file;
  const bare = `${file}.bare.pdf`;
  const drawn = /^(?:-?[\d.]+ -?[\d.]+ m [-\d. mlchre]*\n(?:f\n|S\n)?|[-\d. wdJj[\]]* (?:rg|RG|[wdJj])\n)/gm;
  writeFileSync(bare, unpacked(file).replace(drawn, ''), 'latin1');
  const whole = `${file}.whole.pdf`;
  writeFileSync(whole, printedBytes(FIX_QDF, bare));
  return whole;
}

/** The structure of a file as another reader tells it: types with what is in them, in the order they are read. */
const toldIn = onceAFile(
  (file): readonly { readonly type: string; readonly depth: number; readonly text: string }[] =>
    printed(PDFINFO, '-struct-text', withoutPaths(file))
      .split('\n')
      .reduce<{ type: string; depth: number; text: string }[]>((found, line) => {
        const [, blank, words] = /^( *)(.*)$/.exec(line)!;
        if (words!.startsWith('"')) found.at(-1)!.text += words!.slice(1, -1);
        else if (/^[A-Z]/.test(words!))
          found.push({ type: words!.replace(/[ :].*$/, ''), depth: blank!.length / 2, text: '' });
        return found;
      }, []),
);

interface ReadTable {
  /** It has a head, or heads its rows. */
  readonly headed: boolean;
  readonly rows: readonly (readonly string[])[];
  /** Nothing is read between it and the table before it. */
  readonly follows: boolean;
}

/** The tables of a file in the order they are read. */
function tablesIn(told: ReturnType<typeof toldIn>): readonly ReadTable[] {
  const starts = told.flatMap(({ type }, i) => (type === 'Table' ? [i] : []));
  const ends = starts.map((start) => {
    const end = told.findIndex(({ depth }, i) => i > start && depth <= told[start]!.depth);
    return end < 0 ? told.length : end;
  });
  return starts.map((start, n) => {
    const inside = told.slice(start + 1, ends[n]);
    const rows = inside.flatMap(({ type }, i) => (type === 'TR' ? [i] : []));
    return {
      headed: inside.some(({ type }) => type === 'TH'),
      rows: rows.map((i, k) => inside.slice(i + 1, rows[k + 1]).map(({ text }) => text)),
      follows: ends[n - 1] === start,
    };
  });
}

/** Tables that run on to another page, told by their repeated head, each with the part before it. */
const runningOn = (tables: readonly ReadTable[]): readonly (readonly [ReadTable, ReadTable])[] =>
  tables.flatMap((table, i) => {
    const before = tables[i - 1];
    return table.follows && before && before.rows[0]!.join() === table.rows[0]!.join()
      ? [[before, table] as const]
      : [];
  });

/** Those of them that leave one row alone on a page. */
const leftAlone = (tables: readonly ReadTable[]): readonly string[] =>
  runningOn(tables).flatMap((parts) =>
    parts.filter(({ rows }) => rows.length < 3).map(({ rows }) => rows.join('|')),
  );

testWith(PDFINFO, 'no table of a plan runs on to a page with one row, nor leaves one behind', async () => {
  let seen = 0;
  for (const design of [stool, jig, frame, tall]) {
    const tables = tablesIn(toldIn((await plan(design)).file('plan.a4.pdf')));
    seen += runningOn(tables).length;
    expect(leftAlone(tables), design.called).toEqual([]);
  }
  expect(seen).toBeGreaterThan(0);
  const part = (rows: number, follows: boolean): ReadTable => ({
    headed: true,
    follows,
    rows: [['no.', 'what'], ...Array.from({ length: rows }, (_, i) => [`r${i}`, 'cut'])],
  });
  expect(leftAlone([part(5, false), part(2, true)])).toEqual([]);
  expect(leftAlone([part(5, false), part(1, true)])).toHaveLength(1);
  expect(leftAlone([part(5, false), part(1, false)])).toEqual([]);
});

/** The sentences of the figures of a file, as they stand in it. */
const saidOfFigures = (file: string): readonly string[] =>
  [...printed(QPDF, '--json=1', '--json-key=objects', file).matchAll(/"\/Alt": "((?:\\.|[^"\\])*)"/g)].map(
    ([, said]) => said!,
  );

for (const design of [stool, jig]) {
  testWith(
    PDFINFO,
    `the plan of the ${design.called} can be listened to, in the order of the work`,
    async () => {
      const made = await plan(design);
      const file = made.file('plan.a4.pdf');
      const about = printed(PDFINFO, file);
      expect(about).toMatch(/Tagged: +yes/);
      expect(about).toMatch(new RegExp(`Title: +${made.design.title}, plan for A4`));
      const open = unpacked(file);
      expect(open).toMatch(/\/Lang \(en\)/);
      expect(open).toMatch(/\/DisplayDocTitle true/);
      const told = toldIn(file);
      const of = (type: string) => told.filter((one) => one.type === type);
      expect(of('H1')[0]!.text.trim()).toBe(made.design.title);
      // every part that has a bookmark of its own is a heading, in the same order
      const parts = made.sets.A4.entries.flatMap(({ parts: own = [] }) => own.map(({ title }) => title));
      const headings = of('H2').map(({ text }) => text.trim());
      let at = -1;
      for (const title of parts.filter((one) => !one.startsWith('sheet '))) {
        at = headings.indexOf(title, at + 1);
        expect(at, title).toBeGreaterThanOrEqual(0);
      }
      // tables are whole: each has a head or heads its rows, and every row as many cells
      const tables = tablesIn(told);
      expect(tables.length).toBeGreaterThan(10);
      for (const { headed, rows } of tables) {
        expect(headed, rows[0]?.join()).toBe(true);
        expect(new Set(rows.map((cells) => cells.length)).size, rows.join('|')).toBe(1);
      }
      // rows of a text are read as words, not glued end to end
      const paragraphs = of('P')
        .map(({ text }) => text)
        .join(' ');
      expect(paragraphs).toContain(
        made.papers.cards.length > 0 ? 'stretcher between. 441.2 mm wide' : 'wide',
      );
      // words of the title blocks are not read on every page
      expect(told.filter(({ type, text }) => type !== 'Figure' && text.includes('rev. ')).length).toBe(0);
    },
  );

  testWith(QPDF, `every figure of the plan of the ${design.called} has a sentence in its place`, async () => {
    const made = await plan(design);
    for (const name of ['plan.a4.pdf', 'plan/templates.pdf']) {
      const figures = toldIn(made.file(name)).filter(({ type }) => type === 'Figure').length;
      const said = saidOfFigures(made.file(name));
      expect(figures).toBeGreaterThan(0);
      expect(said).toHaveLength(figures);
      for (const one of said) expect(one).toMatch(/^.{15,}\.$/);
    }
  });
}

/** A length said twice: in mm, and what the inches beside it come to in mm. */
interface SaidTwice {
  readonly mm: number;
  readonly inches: number;
  readonly said: string;
}

/** `116.5 mm = 4-19/32"`, `28 [1-3/32"]` and `12.7 [0.500"]` in a text. */
function pairs(text: string): readonly SaidTwice[] {
  const found = text
    .replace(TRIPLE, '')
    .matchAll(
      /(-?\d+(?:\.\d+)?)(?: mm)?\s*(?:=\s*|\[)([\d/-]+|\d+\.\d+)"(?:\s*\(([+-]\d+\.\d+)\s*mm\))?\]?/g,
    );
  return [...found].map(([said, mm, inches, rest]) => ({
    said,
    mm: Number(mm),
    inches: inMm(inches!) + Number(rest ?? 0),
  }));
}

/** `28 × 240 × 420 mm [1-3/32" × 9-7/16" × 16-17/32"]`. */
const TRIPLE =
  /(\d+(?:\.\d)?) × (\d+(?:\.\d)?) × (\d+(?:\.\d)?)\s+mm\s+\[([\d/-]+)" × ([\d/-]+)" ×\s+([\d/-]+)"\]/g;

const triples = (text: string): readonly SaidTwice[] =>
  [...text.replace(/\s+/g, ' ').matchAll(TRIPLE)].flatMap(([said, ...six]) =>
    [0, 1, 2].map((i) => ({ said, mm: Number(six[i]), inches: inMm(six[i + 3]!) })),
  );

/** `4-19/32` or `0.500` in mm. */
function inMm(inches: string): number {
  if (inches.includes('.')) return Number(inches) * 25.4;
  const found = /^(-?)(?:(\d+)-)?(\d+)(?:\/(\d+))?$/.exec(inches);
  if (!found) throw new Error(`'${inches}' is no length in inches`);
  const [, sign, whole, top, bottom] = found;
  return (sign === '-' ? -1 : 1) * (Number(whole ?? 0) + Number(top) / Number(bottom ?? 1)) * 25.4;
}

/** Half a 32nd, and half of what a tenth of a millimetre is rounded by. */
const INCH_STEP = 25.4 / 32 / 2 + 0.05;

testWith(PDFTOTEXT, 'wherever the plan says a length in mm and in inches, both say the same', async () => {
  const differ = (said: readonly SaidTwice[]) =>
    // in a chain of dimensions both systems add up, so a part may be one whole step off
    said.filter(({ mm, inches }) => !(Math.abs(mm - inches) <= 2 * INCH_STEP));
  for (const design of [stool, frame]) {
    const made = await plan(design, undefined, 'dual');
    const text = printed(PDFTOTEXT, '-raw', made.file('plan.a4.pdf'), '-').replace(/\s+/g, ' ');
    expect(pairs(text).length).toBeGreaterThan(60);
    expect(triples(text).length).toBeGreaterThan(10);
    expect(differ(pairs(text))).toEqual([]);
    expect(differ(triples(text))).toEqual([]);
  }
  expect(differ(pairs('420 [16-15/32"]'))).toHaveLength(1);
  expect(differ(triples('28 × 240 × 420 mm [1-7/64" × 9-25/64" × 16-17/32"]'))).toHaveLength(1);
});

/** What the cut list of a plan says of the boards: mark, count and finished size. */
function listedBoards(text: string): readonly { readonly size: Sizes; readonly rough: Sizes | undefined }[] {
  const flat = text.replace(/\s+/g, ' ');
  return [...flat.matchAll(SIZE)].map(([, t, w, l]) => ({
    size: [Number(t), Number(w), Number(l)],
    rough: undefined,
  }));
}

type Sizes = readonly [thickness: number, width: number, length: number];

const SIZE = /(\d+(?:\.\d)?) × (\d+(?:\.\d)?) × (\d+(?:\.\d)?)/g;

testWith(
  PDFTOTEXT,
  'the cut list of the plan lists every board in its own size, and a board that differs is missed',
  async () => {
    for (const design of [stool, jig, frame]) {
      const made = await plan(design);
      const section = made.sets.A4.entries.find(({ title }) => title === 'Wood and print test')!.sheet + 1;
      // raw order keeps the words of a cell together
      const text = printed(
        PDFTOTEXT,
        '-raw',
        '-f',
        String(section),
        '-l',
        String(section + 1),
        made.file('plan.a4.pdf'),
        '-',
      );
      const listed = listedBoards(text);
      const lists = ({ thickness, width, length }: { thickness: number; width: number; length: number }) =>
        listed.some(({ size: [t, w, l] }) =>
          [t - thickness, w - width, l - length].every((off) => Math.abs(off) <= 0.0501),
        );
      for (const { board } of made.design.boards) {
        expect(lists(board.blank), board.id).toBe(true);
        expect(lists({ ...board.blank, length: board.blank.length + 0.2 }), board.id).toBe(false);
      }
    }
  },
);

testWith(
  PDFTOTEXT,
  'the set-up pages say the figures of their cards, and a card with another figure is found out',
  async () => {
    for (const design of [stool, frame]) {
      const made = await plan(design);
      const { entries } = made.sets.A4;
      const section = entries.find(({ title }) => title === 'Set-up cards')!;
      for (const card of made.papers.cards) {
        // a card begins anywhere on a page, and the next one on the page it ends on or after it
        const at = section.parts!.findIndex(({ title }) => title.startsWith(`${card.id}:`));
        const from = section.parts![at]!.sheet;
        const to = section.parts![at + 1]?.sheet ?? entries[entries.indexOf(section) + 1]!.sheet - 1;
        const said = new Set(
          [
            ...printed(
              PDFTOTEXT,
              '-raw',
              '-f',
              String(from + 1),
              '-l',
              String(to + 1),
              made.file('plan.a4.pdf'),
              '-',
            )
              .replace(/\s+/g, ' ')
              .matchAll(/(\d+\.\d) mm/g),
          ].map(([, mm]) => mm),
        );
        const figures = [
          card.depth,
          // a rule lies against the flank of the cutter
          card.nearRail && card.nearRail.distance - card.cutter / 2,
          card.farRail && card.farRail.distance - card.cutter / 2,
          card.guideOffset,
          card.window ? undefined : card.stopDistance,
          ...card.cuts.flatMap(({ centre, ends }) => [centre, ...ends]),
        ].filter((figure) => figure !== undefined);
        const missing = figures.filter((figure) => !said.has(figure.toFixed(1)));
        expect(missing, card.id).toEqual([]);
        // a contradiction seeded into the card is seen
        expect(said.has((card.depth + 0.3).toFixed(1)), card.id).toBe(false);
      }
    }
  },
);

/**
 * Every length a drawing of a board may print, from its data alone: sizes, coordinates of all that is cut, and distances between
 * any two of them along one axis.
 */
function lengthsOf({ blank, outline, openings, mortises, holes, slots, bevels }: Board): readonly number[] {
  const along: readonly (readonly number[])[] = ([0, 1, 2] as const).map((axis) => {
    const size = [blank.length, blank.width, blank.thickness][axis]!;
    const loops = axis === 2 ? [] : [outline, ...openings.map((one) => one.outline)];
    const reach = ({
      at,
      length,
      width,
    }: {
      at: { origin: Vec3; x: Vec3; y: Vec3 };
      length: number;
      width: number;
    }) =>
      [-1, 0, 1].flatMap((s) => [
        at.origin[axis] + s * at.x[axis] * (length / 2),
        at.origin[axis] + s * at.y[axis] * (width / 2),
      ]);
    return [
      0,
      size,
      // ends and middle of every loop
      ...loops.map(bounds).flatMap(({ minX, maxX, minY, maxY }) => {
        const [low, high] = axis === 0 ? [minX, maxX] : [minY, maxY];
        return [low, high, (low + high) / 2];
      }),
      ...loops.flatMap((loop) => loop.map(({ x, y }) => (axis === 0 ? x : y))),
      ...loops.flatMap((loop) => arcs(loop).map(({ centre }) => centre[axis as 0 | 1])),
      ...[...mortises, ...slots].flatMap(reach),
      ...holes.map(({ at }) => at.origin[axis]),
      // where a bevel's plane meets both faces and both edges
      ...bevels.flatMap(({ point, normal }) =>
        [0, blank.width].flatMap((y) =>
          [0, blank.thickness].map((z) => {
            const at = [0, y, z] as const;
            const others = ([0, 1, 2] as const).filter((one) => one !== axis);
            const rise = others.reduce<number>((sum, one) => sum + normal[one] * (point[one] - at[one]), 0);
            return Math.abs(normal[axis]) < 1e-9 ? 0 : point[axis] + rise / normal[axis];
          }),
        ),
      ),
    ];
  });
  return [
    ...along.flatMap((places) => places.flatMap((a) => places.map((b) => Math.abs(a - b)))),
    ...[...mortises, ...slots].flatMap(({ width, length, depth }) => [width, length, depth]),
    ...holes.flatMap(({ diameter, depth, counterbore, countersink }) => [
      diameter,
      depth,
      counterbore?.diameter,
      counterbore?.depth,
      countersink?.diameter,
    ]),
    ...[outline, ...openings.map((one) => one.outline)].flatMap((loop) =>
      arcs(loop).flatMap(({ radius }) => [radius, 2 * radius]),
    ),
  ].filter((one): one is number => typeof one === 'number');
}

testWith(
  PDFTOTEXT,
  'every length printed on the drawings of the boards is one of theirs, and a wrong one is found',
  async () => {
    for (const design of [stool, jig, frame]) {
      const made = await plan(design, undefined, 'dual');
      const section = made.sets.A4.entries.find(({ title }) => title === 'Boards')!;
      const aids = made.papers.aids.map(({ board }) => board);
      for (const sheet of new Set(section.parts!.map((one) => one.sheet))) {
        const page = String(sheet + 1);
        const text = printed(
          PDFTOTEXT,
          '-raw',
          '-f',
          page,
          '-l',
          page,
          made.file('plan.a4.pdf'),
          '-',
        ).replace(/\s+/g, ' ');
        const titles = section.parts!.filter((one) => one.sheet === sheet).map(({ title }) => ` ${title},`);
        const there = made.design.boards.filter(({ board }) =>
          titles.some((title) => title.includes(` ${board.name},`)),
        );
        expect(there.length).toBeGreaterThan(0);
        const last = sheet === section.parts!.at(-1)!.sheet;
        const meant = [...there.map(({ board }) => board), ...(last ? aids : [])].flatMap(lengthsOf);
        // a part of a chain is the difference of two rounded figures: up to one step of 0.1 mm off
        const strange = (said: readonly SaidTwice[]) =>
          said.filter(({ mm }) => !meant.some((one) => Math.abs(one - mm) <= 0.101));
        const said = pairs(text);
        expect(said.length, page).toBeGreaterThan(8);
        expect(
          strange(said).map((one) => one.said),
          page,
        ).toEqual([]);
        expect(strange([{ mm: 5431.3, inches: 0, said: 'seeded' }]), page).toHaveLength(1);
      }
    }
  },
);

for (const units of ['mm', 'in'] as const) {
  testWith(
    MUTOOL,
    `in ${units} no page of a plan but the last of a part is under half full, and the stool's is short`,
    async () => {
      for (const design of units === 'in' ? IN_INCHES : [stool, jig, frame, tall]) {
        const made = await plan(design, undefined, units);
        for (const paper of papersOf(design, units)) {
          const { entries, sheets } = made.sets[paper];
          const ends = new Set(entries.map(({ sheet }) => sheet - 1));
          const traced = tracedIn(made.file(nameOf(paper)));
          const texts = wordsIn(made.file(nameOf(paper)));
          traced.forEach((page, i) => {
            const tile = sheets[i]!.scale === '1:1';
            if (ends.has(i) || i === traced.length - 1 || tile) return;
            expect(filled(page, texts[i]!), `${design.called}, ${paper}, page ${i + 1}`).toBeGreaterThan(0.5);
          });
          if (design !== stool) continue;
          expect(entries.find(({ title }) => title.startsWith('Appendix'))!.sheet).toBeLessThanOrEqual(16);
        }
      }
    },
  );
}

/** The text of every page of a file. */
const pageTexts = (file: string): readonly string[] => printed(PDFTOTEXT, '-layout', file, '-').split('\f');

for (const design of [stool, jig, frame, tall])
  testWith(PDFTOTEXT, `the plan of the ${design.called} in mm tells no inches`, async () => {
    expect(strayInches(pageTexts((await plan(design)).file('plan.a4.pdf')))).toEqual([]);
  });

for (const design of IN_INCHES)
  testWith(
    PDFTOTEXT,
    `the plan of the ${design.called} in inches tells every size one way on a page, and in no other unit`,
    async () => {
      const inches = await plan(design, undefined, 'in');
      const pages = pageTexts(inches.file('plan.letter.pdf'));
      const sizes = toldSizes(inches.design, inches.papers.cards);
      expect(sizes.wood.length).toBeGreaterThan(5);
      expect(
        pages.flatMap((page, i) => toldTwoWays(page, sizes).map((one) => `page ${i + 1}: ${one}`)),
      ).toEqual([]);
      expect(finerThanARule(pages, sizes)).toEqual([]);
      expect(untold(pages, sizes)).toEqual([]);
      expect(strayMetric(pages)).toEqual([]);
    },
  );

test('a size told in 64ths beside 32nds, wood in thousandths and a figure in other units are caught', () => {
  const sizes = { wood: [137.7], settings: [30.94], tools: [5.5] };
  expect(toldTwoWays('5-13/32" and 5-27/64"', sizes)).toHaveLength(1);
  expect(finerThanARule(['Boards, 1 of 2\n5.421", drill 0.217"', '5.421"'], sizes)).toEqual(['5.421"']);
  expect(toldTwoWays('5-13/32", again 5-13/32", 1.218" deep', sizes)).toEqual([]);
  expect(untold(['1-7/32" deep'], sizes)).toEqual([30.94]);
  expect(
    strayMetric(['a groove 1.2 × 0.8 mm', 'back off 3 mm', 'at 10 °C', 'a bit of 0.217" (5.5 mm)']),
  ).toHaveLength(3);
  expect(strayInches(['a board 1-1/8" thick', 'a board 28 mm thick', '"step 2 + 3.0 mm"'])).toHaveLength(1);
});

/** How far down a page something stands inside its frame, as a share of what the frame holds above its foot. */
function filled({ height, paths }: ReadPage, words: readonly ReadWord[]): number {
  const frames = paths
    .filter(({ lineWidth }) => Math.abs(lineWidth - 0.7) < 0.01)
    .flatMap(({ runs }) => runs);
  const ys = frames.flatMap((run) => run.map(([, y]) => y));
  const [low, high] = [Math.min(...ys) + 8, Math.max(...ys)];
  const lowest = Math.min(
    ...paths
      .filter(({ lineWidth }) => lineWidth < 0.6)
      .flatMap(({ runs }) => runs.flatMap((run) => run.map(([, y]) => y)))
      .filter((y) => y > low + 0.5),
    ...words.map(({ maxY }) => height - maxY).filter((y) => y > low),
  );
  return (high - lowest) / (high - low);
}

testWith(MUTOOL, 'a plan made again is the same to the last byte', async () => {
  const first = await plan(stool);
  const again = await madeAnew(stool, first.file('again'));
  expect([...again.bytes.keys()]).toEqual([...first.bytes.keys()]);
  for (const [name, bytes] of first.bytes)
    expect(Buffer.compare(Buffer.from(bytes), Buffer.from(again.bytes.get(name)!)), name).toBe(0);
});

testWith(MUTOOL, 'the templates for a plotter hold each board whole at full size', async () => {
  const made = await plan(stool);
  const pages = tracedPages(MUTOOL, made.file('plan/templates.pdf'), '1-N');
  expect(pages).toHaveLength(made.templates.length);
  made.templates.forEach(({ artwork: { board } }, i) => {
    const lines = pages[i]!.paths.filter(isFine).flatMap(({ runs }) => runs);
    const meant = segments(board.outline).flatMap((piece) =>
      Array.from({ length: 60 }, (_, k) => pointAlong(piece, k / 60)),
    );
    expect(bestShift(meant, lines), board.id).toBeLessThan(0.02);
  });
});

for (const units of ['mm', 'in'] as const)
  for (const design of units === 'in' ? IN_INCHES : [stool, jig, frame, tall])
    testWith(
      MUTOOL,
      `in ${units} no words of the plan of the ${design.called} meet words or lines, on any paper`,
      async () => {
        const made = await plan(design, undefined, units);
        for (const paper of papersOf(design, units)) {
          const { collisions } = readIn(made.file(nameOf(paper)));
          expect(collisions).toHaveLength(made.sets[paper].sheets.length);
          const found = collisions.flatMap((page, i) =>
            page.map((one) => ({ page: made.sets[paper].sheets[i]!.id, ...one })),
          );
          expect(found, paper).toEqual([]);
        }
      },
    );

test('words under a line, under other words and under what is drawn later are seen; a line that blank paper hides is not', () => {
  const at = (x: number, y: number) => [x, y] as const;
  const words: WrittenText = {
    kind: 'text',
    text: 'rail',
    from: at(10, 10),
    along: [1, 0],
    width: 8,
    below: 0,
    above: 2.5,
    capitals: 2.5,
  };
  const line = { kind: 'line', from: at(0, 9), to: at(30, 9), lineWidth: 0.18 } as const;
  const blank = { kind: 'area', loops: [[at(9, 7), at(19, 7), at(19, 11), at(9, 11)]] } as const;
  const met = (...marks: readonly PageMark[]) => collisionsOn(marks).map((one) => one.with);
  expect(met(words)).toEqual([]);
  expect(met(line, words)).toEqual(['a line of 0.18 mm']);
  expect(met(line, blank, words)).toEqual([]);
  expect(met(blank, line, words)).toEqual(['a line of 0.18 mm']);
  expect(met(words, blank)).toEqual(['what is drawn over it']);
  expect(met(words, { ...words, from: at(15, 11), text: 'work' })).toEqual(['"work"']);
  expect(met(words, { ...words, from: at(12, 14), along: [0, -1] })).toEqual(['"rail"']);
  expect(met(words, { ...line, from: at(0, 13), to: at(30, 13) })).toEqual([]);
});

for (const design of [stool, jig, frame, tall])
  testWith(MUTOOL, `every board of the ${design.called} is rebuilt from what its page says`, async () => {
    const made = await plan(design);
    const pages = made.sets.A4.sheets.flatMap(({ id }, i) => (id.startsWith('boards-') ? [i + 1] : []));
    const read = pageMarks(MUTOOL, made.file('plan.a4.pdf'), pages.join(',')).flatMap((page) =>
      readBoardPage(page.filter((one) => one.kind === 'text')),
    );
    const marks = boardMarks(made.design.boards.map(({ board }) => board.id));
    for (const { board } of made.design.boards) {
      const mark = marks.get(board.id)!;
      const told = read.filter(({ heading }) => ` ${heading},`.includes(` ${mark} ${board.name},`));
      expect(told, mark).toHaveLength(1);
      expect(missingFrom(told[0]!, board, mark), mark).toEqual([]);
    }
  });

testWith(
  MUTOOL,
  'a page that lost a depth, an angle, a corner or the thickness does not rebuild its board',
  async () => {
    const made = await plan(stool);
    const page = made.sets.A4.sheets.findIndex(({ id }) => id === 'boards-2') + 1;
    const [marks = []] = pageMarks(MUTOOL, made.file('plan.a4.pdf'), String(page));
    const texts = marks.filter((one) => one.kind === 'text');
    const side = made.design.boards.find(({ board }) => board.id === 'left-side')!.board;
    const without = (lost: (text: string) => boolean) =>
      missingFrom(readBoardPage(texts.filter(({ text }) => !lost(text)))[0]!, side, 'LS');
    expect(without(() => false)).toEqual([]);
    expect(without((text) => text === '31.2')).toHaveLength(2);
    expect(without((text) => /5°/.test(text))).toHaveLength(2);
    expect(without((text) => text === '55')).toHaveLength(1);
    expect(without((text) => / × .* mm\./.test(text))).toHaveLength(3);
  },
);

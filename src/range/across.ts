import type { Answer, Glance, Judge } from './answer.js';
import { type Dimension, stepsTo, valueAt } from './dimension.js';

/** Every so many cells, full verdicts are asked for before any cell is taken as its neighbours are. */
const COARSE = 3;

/** A cell of the map, at its middle values. */
export interface Cell {
  readonly answer: Answer;
  /** A full verdict was asked for; else the cell is as the tried ones around it, and the data alone agree. */
  readonly tried: boolean;
}

/** A place between two neighbouring cells where the verdict changes, found to a step. */
export interface Border {
  /** Values of the two dimensions: the last sound place, and the first beyond it. */
  readonly sound: readonly [number, number];
  readonly unsound: readonly [number, number];
}

/** Two dimensions moved together, the others as chosen. */
export interface MapOf {
  readonly across: Dimension;
  readonly up: Dimension;
  /** Values of the columns and of the rows, the smaller first. */
  readonly columns: readonly number[];
  readonly rows: readonly number[];
  /** By row, then column. */
  readonly cells: readonly (readonly Cell[])[];
  readonly borders: readonly Border[];
}

/** How many columns and rows a map has at most, and which share of its columns is asked for. */
export interface MapSize {
  readonly columns: number;
  readonly rows: number;
  readonly share?: { readonly part: number; readonly of: number };
}

/** The verdict over two dimensions: a net of full verdicts, drawn tight where they differ or the data alone change. */
export async function mapOf(
  [across, up]: readonly [Dimension, Dimension],
  judge: Judge,
  glance: Glance,
  size: MapSize,
): Promise<MapOf> {
  const [columns, rows] = [
    columnsOf(valuesOver(across, size.columns), size.share),
    valuesOver(up, size.rows),
  ];
  const at = (column: number, row: number) => ({ [across.name]: columns[column]!, [up.name]: rows[row]! });
  const glances = rows.map((_, row) => columns.map((_, column) => glance(at(column, row))));
  const found: (Answer | undefined)[][] = rows.map(() => columns.map(() => undefined));
  const ask = async (column: number, row: number): Promise<void> => {
    found[row]![column] ??= await judge(at(column, row));
  };
  const [coarseColumns, coarseRows] = [everyFew(columns.length), everyFew(rows.length)];
  await Promise.all(coarseRows.flatMap((row) => coarseColumns.map((column) => ask(column, row))));
  const like = new Map<string, Answer>();
  const open: [number, number][] = [];
  for (const [j, bottom] of coarseRows.slice(0, -1).entries())
    for (const [i, left] of coarseColumns.slice(0, -1).entries()) {
      const [right, top] = [coarseColumns[i + 1]!, coarseRows[j + 1]!];
      const corners = [
        found[bottom]![left]!,
        found[bottom]![right]!,
        found[top]![left]!,
        found[top]![right]!,
      ];
      const block = range(bottom, top).flatMap((row) =>
        range(left, right).map((column) => [column, row] as const),
      );
      const [first] = corners;
      const even =
        corners.every((corner) => sameAnswer(corner, first!)) &&
        new Set(block.map(([column, row]) => glances[row]![column])).size === 1;
      for (const [column, row] of block) {
        if (even) like.set(`${column} ${row}`, first!);
        else open.push([column, row]);
      }
    }
  await Promise.all(open.map(([column, row]) => ask(column, row)));
  const answerAt = (column: number, row: number): Answer =>
    found[row]![column] ?? like.get(`${column} ${row}`)!;
  // a place taken for its neighbours' is asked for when one of them is not like it after all
  for (;;) {
    const doubted = [...like.keys()]
      .map((key) => key.split(' ').map(Number) as [number, number])
      .filter(
        ([column, row]) =>
          !found[row]![column] &&
          around(column, row).some(
            ([i, j]) => found[j]?.[i] && !sameAnswer(found[j][i], answerAt(column, row)),
          ),
      );
    if (doubted.length === 0) break;
    await Promise.all(doubted.map(([column, row]) => ask(column, row)));
  }
  const cells = rows.map((_, row) =>
    columns.map(
      (_, column): Cell => ({ answer: answerAt(column, row), tried: found[row]![column] !== undefined }),
    ),
  );
  return {
    across,
    up,
    columns,
    rows,
    cells,
    borders: await bordersOf([across, up], columns, rows, cells, judge),
  };
}

const around = (column: number, row: number): readonly (readonly [number, number])[] =>
  [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => [column + i, row + j] as const));

const sameAnswer = (a: Answer, b: Answer): boolean =>
  a.sound === b.sound && (a.sound || b.sound || a.code === b.code);

/** The columns of a share, from one coarse column to another, so that it asks for what the whole map asks for there. */
function columnsOf(all: readonly number[], share: MapSize['share']): readonly number[] {
  if (!share) return all;
  const coarse = everyFew(all.length);
  const blocks = coarse.length - 1;
  const from = coarse[Math.floor((blocks * (share.part - 1)) / share.of)]!;
  const to = coarse[Math.floor((blocks * share.part) / share.of)]!;
  return from === to ? [] : all.slice(from, to + 1);
}

const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

const everyFew = (count: number): readonly number[] =>
  range(0, count - 1).filter((i) => i % COARSE === 0 || i === count - 1);

/** Round values over the stated range, its ends included, each once. */
function valuesOver(dimension: Dimension, count: number): readonly number[] {
  const from: Dimension = { ...dimension, value: dimension.least };
  const all = stepsTo(from, 1);
  const steps = Array.from({ length: count }, (_, i) => Math.round((all * i) / Math.max(1, count - 1)));
  return [...new Set(steps)].map((each) => valueAt(from, 1, each));
}

/** Between neighbours that differ, halved to a step. */
async function bordersOf(
  [across, up]: readonly [Dimension, Dimension],
  columns: readonly number[],
  rows: readonly number[],
  cells: readonly (readonly Cell[])[],
  judge: Judge,
): Promise<readonly Border[]> {
  const found: Promise<Border>[] = [];
  for (const [row, y] of rows.entries())
    for (const [column, x] of columns.entries()) {
      const here = cells[row]![column]!.answer.sound;
      const right = cells[row]![column + 1];
      const above = cells[row + 1]?.[column];
      if (right && right.answer.sound !== here) {
        const put = (value: number): readonly [number, number] => [value, y];
        found.push(
          halved(across, x, columns[column + 1]!, here, put, (value) =>
            judge({ [across.name]: value, [up.name]: y }),
          ),
        );
      }
      if (above && above.answer.sound !== here) {
        const put = (value: number): readonly [number, number] => [x, value];
        found.push(
          halved(up, y, rows[row + 1]!, here, put, (value) => judge({ [across.name]: x, [up.name]: value })),
        );
      }
    }
  return Promise.all(found);
}

async function halved(
  dimension: Dimension,
  from: number,
  to: number,
  fromSound: boolean,
  put: (value: number) => readonly [number, number],
  ask: (value: number) => Promise<Answer>,
): Promise<Border> {
  const start: Dimension = { ...dimension, value: from, most: to };
  let [near, far] = [0, stepsTo(start, 1)];
  while (far - near > 1) {
    const middle = Math.floor((near + far) / 2);
    if ((await ask(valueAt(start, 1, middle))).sound === fromSound) near = middle;
    else far = middle;
  }
  const [a, b] = [put(valueAt(start, 1, near)), put(valueAt(start, 1, far))];
  return fromSound ? { sound: a, unsound: b } : { sound: b, unsound: a };
}

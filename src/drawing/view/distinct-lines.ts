import { spanOf, type Vec2 } from '../../frame/index.js';
import { SAME_LINE } from '../../tolerances.js';
import type { Piece } from './hidden-lines.js';

/** Side of a cell in which neighbours are looked for, mm. */
const CELL = 12;

/**
 * Pieces without what is covered twice: of two pieces on one line the longer one stays whole, and of the shorter what
 * reaches beyond it.
 *
 * @param before pieces that win over all of them and are not given back: visible lines over hidden ones
 */
export function distinctLines(pieces: readonly Piece[], before: readonly Piece[] = []): readonly Piece[] {
  const cells = new Map<number, number[]>();
  const placed: Piece[] = [];
  const asked: number[] = [];
  const add = (piece: Piece, keys: readonly number[]) => {
    for (const key of keys) {
      const cell = cells.get(key);
      if (cell) cell.push(placed.length);
      else cells.set(key, [placed.length]);
    }
    placed.push(piece);
    asked.push(-1);
  };
  for (const piece of before) add(piece, cellsOf(piece));
  const kept: Piece[] = [];
  const longestFirst = pieces.map((piece) => ({ piece, run: length(piece) })).sort((a, b) => b.run - a.run);
  longestFirst.forEach(({ piece }, question) => {
    const keys = cellsOf(piece);
    const near: Piece[] = [];
    for (const key of keys) {
      for (const other of cells.get(key) ?? []) {
        if (asked[other] === question) continue;
        asked[other] = question;
        near.push(placed[other]!);
      }
    }
    for (const rest of beyond(piece, near)) {
      kept.push(rest);
      add(rest, rest.from === piece.from && rest.to === piece.to ? keys : cellsOf(rest));
    }
  });
  return kept;
}

const length = ({ from, to }: Piece): number => spanOf(to[0] - from[0], to[1] - from[1]);

function cellsOf({ from, to }: Piece): number[] {
  const steps = Math.ceil(spanOf(to[0] - from[0], to[1] - from[1]) / (CELL / 2)) + 1;
  const keys: number[] = [];
  for (let i = 0; i <= steps; i += 1) {
    const x = (from[0] + ((to[0] - from[0]) * i) / steps) / CELL;
    const y = (from[1] + ((to[1] - from[1]) * i) / steps) / CELL;
    // a line on the border of two cells is in both
    const [left, right] = [Math.floor(x - 0.01), Math.floor(x + 0.01)];
    const [low, high] = [Math.floor(y - 0.01), Math.floor(y + 0.01)];
    for (let column = left; column <= right; column += 1) {
      for (let row = low; row <= high; row += 1) {
        const key = column * 65536 + row;
        if (!keys.includes(key)) keys.push(key);
      }
    }
  }
  return keys;
}

/** What of a piece lies on none of the others. */
function beyond(piece: Piece, others: readonly Piece[]): Piece[] {
  const run = length(piece);
  const along: Vec2 = [(piece.to[0] - piece.from[0]) / run, (piece.to[1] - piece.from[1]) / run];
  const covered: [number, number][] = [];
  for (const other of others) {
    const range = onLine(piece.from, along, run, other);
    if (range) covered.push(range);
  }
  covered.sort((a, b) => a[0] - b[0]);
  const left: Piece[] = [];
  const put = (start: number, end: number) => {
    if (end - start < SAME_LINE) return;
    const at = (s: number): Vec2 => [piece.from[0] + along[0] * s, piece.from[1] + along[1] * s];
    left.push({
      part: piece.part,
      from: start === 0 ? piece.from : at(start),
      to: end === run ? piece.to : at(end),
    });
  };
  let done = 0;
  for (const [start, end] of covered) {
    put(done, Math.min(start, run));
    done = Math.max(done, end);
  }
  if (done === 0 || run - done >= SAME_LINE) put(done, run);
  return left;
}

/**
 * Where another piece runs on the line of this one: both ends of the shared range within the tolerance.
 *
 * Asked of every pair that is near, so nothing is made on the way.
 */
function onLine(origin: Vec2, along: Vec2, run: number, { from, to }: Piece): [number, number] | undefined {
  const ux = along[0];
  const uy = along[1];
  const ax = from[0] - origin[0];
  const ay = from[1] - origin[1];
  const bx = to[0] - origin[0];
  const by = to[1] - origin[1];
  // how far each end lies along the line, and beside it
  const a = ax * ux + ay * uy;
  const b = bx * ux + by * uy;
  const start = Math.max(0, Math.min(a, b));
  const end = Math.min(run, Math.max(a, b));
  if (end - start < SAME_LINE / 100) return undefined;
  const besideA = ay * ux - ax * uy;
  const besideB = by * ux - bx * uy;
  const [p, beside, q, other] = a <= b ? [a, besideA, b, besideB] : [b, besideB, a, besideA];
  const slope = (other - beside) / (q - p);
  const off = (s: number) => Math.abs(beside + slope * (s - p));
  return off(start) < SAME_LINE && off(end) < SAME_LINE ? [start, end] : undefined;
}

import type { Vec2 } from '../../frame/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { type Box, boxesOverlap } from './text-width.js';

/** Air kept round every text, mm. */
const AIR = 0.4;

/** What is already on a sheet, while more words look for a place. */
export interface Room {
  /** Nobody else may write here. */
  claim(box: Box): void;
  /** Words rather keep off these lines. */
  avoid(points: readonly Vec2[]): void;
  /** True when no text stands here. */
  free(box: Box): boolean;
  /** How many lines run through a box. */
  crossed(box: Box): number;
  /** How many words a line would run through. */
  struck(from: Vec2, to: Vec2): number;
}

type Line = readonly [from: Vec2, to: Vec2];

export function emptyRoom(): Room {
  const boxes: Box[] = [];
  // lines by the cells they come through
  const cells = new Map<number, Line[]>();
  const grown = (box: Box, by: number): Box => ({
    minX: box.minX - by,
    minY: box.minY - by,
    maxX: box.maxX + by,
    maxY: box.maxY + by,
  });
  return {
    claim: (box) => {
      boxes.push(box);
    },
    avoid: (points) => {
      points.slice(1).forEach((to, i) => {
        const line: Line = [points[i]!, to];
        for (const key of cellsOf(boxRound(line), line)) {
          const cell = cells.get(key);
          if (cell) cell.push(line);
          else cells.set(key, [line]);
        }
      });
    },
    free: (box) => {
      const around = grown(box, AIR);
      return boxes.every((other) => !boxesOverlap(around, other));
    },
    crossed: (box) => {
      // what only touches does not count: whether it does would hang on last digits
      const around = grown(box, AIR - SAME_POINT);
      const near = new Set<Line>();
      for (const key of cellsOf(around)) for (const line of cells.get(key) ?? []) near.add(line);
      let count = 0;
      for (const line of near) if (runsThrough(line[0], line[1], around)) count += 1;
      return count;
    },
    struck: (from, to) => boxes.filter((box) => runsThrough(from, to, box)).length,
  };
}

/** Side of a cell, mm. */
const CELL = 8;

/** Keys of the cells a box covers; with a line, only of those it comes through. */
function cellsOf(box: Box, line?: Line): number[] {
  const keys: number[] = [];
  const last = (value: number) => Math.floor(value / CELL);
  const right = last(box.maxX);
  const low = last(box.minY);
  const high = last(box.maxY);
  for (let column = last(box.minX); column <= right; column += 1) {
    for (let row = low; row <= high; row += 1) {
      const cell = {
        minX: column * CELL,
        minY: row * CELL,
        maxX: (column + 1) * CELL,
        maxY: (row + 1) * CELL,
      };
      if (line === undefined || runsThrough(line[0], line[1], cell)) keys.push(column * 65536 + row);
    }
  }
  return keys;
}

const boxRound = ([[ax, ay], [bx, by]]: Line): Box => ({
  minX: Math.min(ax, bx),
  minY: Math.min(ay, by),
  maxX: Math.max(ax, bx),
  maxY: Math.max(ay, by),
});

/** Whether a straight line comes into a box. */
function runsThrough(from: Vec2, to: Vec2, box: Box): boolean {
  const x = from[0];
  const y = from[1];
  const dx = to[0] - x;
  const dy = to[1] - y;
  if (dx === 0 && (x < box.minX || x > box.maxX)) return false;
  if (dy === 0 && (y < box.minY || y > box.maxY)) return false;
  let lo = 0;
  let hi = 1;
  if (dx !== 0) {
    const p = (box.minX - x) / dx;
    const q = (box.maxX - x) / dx;
    lo = Math.max(lo, Math.min(p, q));
    hi = Math.min(hi, Math.max(p, q));
  }
  if (dy !== 0) {
    const p = (box.minY - y) / dy;
    const q = (box.maxY - y) / dy;
    lo = Math.max(lo, Math.min(p, q));
    hi = Math.min(hi, Math.max(p, q));
  }
  return lo <= hi;
}

/**
 * The best of some places: free, and crossed by the fewest lines; of equals the first.
 *
 * @param harm what else speaks against a place, in lines that cross it
 * @returns undefined when none is free
 */
export function bestPlace<T>(
  room: Room,
  places: Iterable<T>,
  boxOf: (place: T) => Box,
  harm: (place: T) => number = () => 0,
): T | undefined {
  let best: T | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const box = boxOf(place);
    if (!room.free(box)) continue;
    const crossed = room.crossed(box) + harm(place);
    if (crossed < least) [best, least] = [place, crossed];
    if (least === 0) break;
  }
  return best;
}

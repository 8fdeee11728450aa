import { spanOf, type Vec2 } from '../../frame/index.js';
import { CHAIN_STRAIGHT, SAME_LINE } from '../../tolerances.js';
import type { Piece } from './hidden-lines.js';

/** A line of one part, of several straight pieces. */
export interface Chain {
  readonly part: string;
  readonly points: readonly Vec2[];
}

/** Pieces that turn more than this make a corner, where dashes begin anew: cos of 60°. */
const CORNER_COS = 0.5;

/** Pieces joined end to end where they go on smoothly, so that the dashes of an arc run on. */
export function chainLines(pieces: readonly Piece[]): readonly Chain[] {
  const next = partners(pieces);
  const used = new Uint8Array(pieces.length);
  const chains: Chain[] = [];
  const walk = (first: number, end: 0 | 1) => {
    // leaves piece `first` by its end `end`, whose other end begins the chain
    const points: Vec2[] = [endOf(pieces[first]!, end === 0 ? 1 : 0)];
    let [piece, leaving] = [first, end as number];
    for (;;) {
      used[piece] = 1;
      points.push(endOf(pieces[piece]!, leaving));
      const link = next[2 * piece + leaving]!;
      if (link < 0 || used[link >> 1] === 1) break;
      piece = link >> 1;
      leaving = 1 - (link & 1);
    }
    chains.push({ part: pieces[first]!.part, points: simplified(points) });
  };
  for (let i = 0; i < pieces.length; i += 1) {
    if (used[i] === 1) continue;
    if (next[2 * i]! < 0) walk(i, 1);
    else if (next[2 * i + 1]! < 0) walk(i, 0);
  }
  // what is left runs in rings
  for (let i = 0; i < pieces.length; i += 1) if (used[i] === 0) walk(i, 1);
  return chains;
}

const endOf = (piece: Piece, end: number): Vec2 => (end === 0 ? piece.from : piece.to);

/** For each end (2 × piece + end) the end it goes on with, or -1. */
function partners(pieces: readonly Piece[]): Int32Array {
  const cells = new Map<number, number[]>();
  const links = new Int32Array(2 * pieces.length).fill(-1);
  const key = (x: number, y: number) => x * 0x1000000 + y;
  const cell = ([x, y]: Vec2) => [Math.floor(x / (2 * SAME_LINE)), Math.floor(y / (2 * SAME_LINE))] as const;
  for (let e = 0; e < links.length; e += 1) {
    const [x, y] = cell(endOf(pieces[e >> 1]!, e & 1));
    const here = cells.get(key(x, y));
    if (here) here.push(e);
    else cells.set(key(x, y), [e]);
  }
  for (let e = 0; e < links.length; e += 1) {
    if (links[e]! >= 0) continue;
    const at = endOf(pieces[e >> 1]!, e & 1);
    const out = outward(pieces[e >> 1]!, e & 1);
    const [x, y] = cell(at);
    let best = -1;
    let straightest = CORNER_COS;
    for (let dx = -1; dx <= 1; dx += 1) {
      for (let dy = -1; dy <= 1; dy += 1) {
        for (const other of cells.get(key(x + dx, y + dy)) ?? []) {
          if (links[other]! >= 0 || other >> 1 === e >> 1) continue;
          if (pieces[other >> 1]!.part !== pieces[e >> 1]!.part) continue;
          const p = endOf(pieces[other >> 1]!, other & 1);
          if (spanOf(p[0] - at[0], p[1] - at[1]) > SAME_LINE) continue;
          const back = outward(pieces[other >> 1]!, other & 1);
          const cos = -(out[0] * back[0] + out[1] * back[1]);
          if (cos > straightest) [best, straightest] = [other, cos];
        }
      }
    }
    if (best < 0) continue;
    links[e] = best;
    links[best] = e;
  }
  return links;
}

/** Direction of a piece out of one of its ends. */
function outward({ from, to }: Piece, end: number): Vec2 {
  const run = spanOf(to[0] - from[0], to[1] - from[1]);
  const sign = end === 1 ? 1 : -1;
  return [(sign * (to[0] - from[0])) / run, (sign * (to[1] - from[1])) / run];
}

function simplified(points: readonly Vec2[]): readonly Vec2[] {
  const kept: Vec2[] = [];
  points.forEach((p, i) => {
    const [before, after] = [kept.at(-1), points[i + 1]];
    if (before && after) {
      const [dx, dy] = [after[0] - before[0], after[1] - before[1]];
      const run = spanOf(dx, dy);
      const aside = Math.abs(dx * (p[1] - before[1]) - dy * (p[0] - before[0])) / (run || 1);
      if (run > 0 && aside < CHAIN_STRAIGHT && dx * (p[0] - before[0]) + dy * (p[1] - before[1]) > 0) return;
    }
    kept.push(p);
  });
  return kept;
}

import type { Facets } from './facets.js';
import type { Box } from './measure.js';
import { triangleGapSq } from './triangle-gap.js';

/** Facets in boxes, each halved into two smaller ones, so that what is near is found without looking at the rest. */
export interface FacetTree {
  /** In the order of the leaves. */
  readonly facets: Facets;
  /** The box round each facet, as `boxes`. */
  readonly bounds: Float64Array;
  /** Six numbers a box: least x, y, z, most x, y, z. */
  readonly boxes: Float64Array;
  /** Two a box: the first of its two smaller boxes, the other follows it, and 0; or its first facet and their number. */
  readonly parts: Int32Array;
}

/** Facets in one smallest box. */
const LEAF = 8;

/** Puts facets into a tree. */
export function facetTree(facets: Facets): FacetTree {
  const count = facets.length / 9;
  const bounds = new Float64Array(6 * count);
  const centres = new Float64Array(3 * count);
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j < 3; j += 1) {
      const a = facets[9 * i + j]!;
      const b = facets[9 * i + 3 + j]!;
      const c = facets[9 * i + 6 + j]!;
      bounds[6 * i + j] = Math.min(a, b, c);
      bounds[6 * i + 3 + j] = Math.max(a, b, c);
      centres[3 * i + j] = a + b + c;
    }
  }
  const order = new Uint32Array(count).map((_, i) => i);
  const boxes = new Float64Array(12 * Math.max(count, 1));
  const parts = new Int32Array(4 * Math.max(count, 1));
  let used = 1;
  const fill = (node: number, from: number, to: number): void => {
    boxAround(boxes, 6 * node, bounds, order, from, to);
    if (to - from <= LEAF) {
      parts[2 * node] = from;
      parts[2 * node + 1] = to - from;
      return;
    }
    const half = halved(centres, order, from, to);
    const first = used;
    used += 2;
    parts[2 * node] = first;
    fill(first, from, half);
    fill(first + 1, half, to);
  };
  fill(0, 0, count);
  const sorted = new Float64Array(facets.length);
  const sortedBounds = new Float64Array(bounds.length);
  for (let to = 0; to < count; to += 1) {
    const from = order[to]!;
    for (let k = 0; k < 9; k += 1) sorted[9 * to + k] = facets[9 * from + k]!;
    for (let k = 0; k < 6; k += 1) sortedBounds[6 * to + k] = bounds[6 * from + k]!;
  }
  return {
    facets: sorted,
    bounds: sortedBounds,
    boxes: boxes.slice(0, 6 * used),
    parts: parts.slice(0, 2 * used),
  };
}

function boxAround(
  boxes: Float64Array,
  at: number,
  bounds: Float64Array,
  order: Uint32Array,
  from: number,
  to: number,
): void {
  for (let j = at; j < at + 3; j += 1) {
    boxes[j] = Number.POSITIVE_INFINITY;
    boxes[j + 3] = Number.NEGATIVE_INFINITY;
  }
  for (let k = from; k < to; k += 1) {
    const one = 6 * order[k]!;
    for (let j = 0; j < 3; j += 1) {
      if (bounds[one + j]! < boxes[at + j]!) boxes[at + j] = bounds[one + j]!;
      if (bounds[one + 3 + j]! > boxes[at + 3 + j]!) boxes[at + 3 + j] = bounds[one + 3 + j]!;
    }
  }
}

/**
 * Parts facets where their middles spread most, half way between the outermost, and by number when all would fall on one side.
 *
 * @returns where the second part starts
 */
function halved(centres: Float64Array, order: Uint32Array, from: number, to: number): number {
  let most = -1;
  let axis = 0;
  let middle = 0;
  for (let j = 0; j < 3; j += 1) {
    let least = Number.POSITIVE_INFINITY;
    let greatest = Number.NEGATIVE_INFINITY;
    for (let k = from; k < to; k += 1) {
      const at = centres[3 * order[k]! + j]!;
      if (at < least) least = at;
      if (at > greatest) greatest = at;
    }
    if (greatest - least > most) {
      most = greatest - least;
      axis = j;
      middle = (greatest + least) / 2;
    }
  }
  let second = from;
  for (let k = from; k < to; k += 1) {
    const facet = order[k]!;
    if (centres[3 * facet + axis]! > middle) continue;
    order[k] = order[second]!;
    order[second] = facet;
    second += 1;
  }
  return second === from || second === to ? (from + to) >> 1 : second;
}

/**
 * The least distance between the facets of two trees, mm; `reach` when they are farther apart; 0 when some cross or touch.
 * Surfaces only: a body inside another is not near it by this.
 */
export function facetGap(a: FacetTree, b: FacetTree, reach: number): number {
  if (a.facets.length === 0 || b.facets.length === 0) return reach;
  let best = reach * reach;
  const open: number[] = [0, 0];
  while (open.length > 0 && best > 0) {
    const j = open.pop()!;
    const i = open.pop()!;
    if (boxGapSq(a.boxes, 6 * i, b.boxes, 6 * j) >= best * NO_NEARER) continue;
    const inA = a.parts[2 * i + 1]!;
    const inB = b.parts[2 * j + 1]!;
    if (inA > 0 && inB > 0) {
      best = leavesGapSq(a, i, b, j, best);
      continue;
    }
    // the larger box is opened first, and its nearer half looked at first
    if (inB > 0 || (inA === 0 && extent(a.boxes, 6 * i) > extent(b.boxes, 6 * j))) {
      const first = a.parts[2 * i]!;
      const nearer = nearerHalf(a.boxes, first, b.boxes, j);
      open.push(nearer ? first + 1 : first, j, nearer ? first : first + 1, j);
    } else {
      const first = b.parts[2 * j]!;
      const nearer = nearerHalf(b.boxes, first, a.boxes, i);
      open.push(i, nearer ? first + 1 : first, i, nearer ? first : first + 1);
    }
  }
  return Math.sqrt(best);
}

/** Is the first of two halves nearer to a box than the second, by the boxes or, when they are alike in that, by their middles? */
function nearerHalf(halves: Float64Array, first: number, boxes: Float64Array, other: number): boolean {
  const one = boxGapSq(halves, 6 * first, boxes, 6 * other);
  const two = boxGapSq(halves, 6 * first + 6, boxes, 6 * other);
  if (one !== two) return one < two;
  let apart = 0;
  for (let k = 0; k < 3; k += 1) {
    const middle = boxes[6 * other + k]! + boxes[6 * other + 3 + k]!;
    const toFirst = halves[6 * first + k]! + halves[6 * first + 3 + k]! - middle;
    const toSecond = halves[6 * first + 6 + k]! + halves[6 * first + 9 + k]! - middle;
    apart += toFirst * toFirst - toSecond * toSecond;
  }
  return apart <= 0;
}

/** What could only be nearer by the rounding of numbers is not looked at: parallel faces are equally near all over. */
const NO_NEARER = 1 - 1e-11;

function leavesGapSq(a: FacetTree, i: number, b: FacetTree, j: number, most: number): number {
  let best = most;
  const fromA = a.parts[2 * i]!;
  const toA = fromA + a.parts[2 * i + 1]!;
  const fromB = b.parts[2 * j]!;
  const toB = fromB + b.parts[2 * j + 1]!;
  for (let k = fromA; k < toA; k += 1) {
    for (let m = fromB; m < toB; m += 1) {
      if (boxGapSq(a.bounds, 6 * k, b.bounds, 6 * m) >= best * NO_NEARER) continue;
      best = triangleGapSq(a.facets, 9 * k, b.facets, 9 * m, best);
    }
  }
  return best;
}

function boxGapSq(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const x = Math.max(a[i]! - b[j + 3]!, b[j]! - a[i + 3]!, 0);
  const y = Math.max(a[i + 1]! - b[j + 4]!, b[j + 1]! - a[i + 4]!, 0);
  const z = Math.max(a[i + 2]! - b[j + 5]!, b[j + 2]! - a[i + 5]!, 0);
  return x * x + y * y + z * z;
}

const extent = (boxes: Float64Array, i: number): number =>
  boxes[i + 3]! - boxes[i]! + boxes[i + 4]! - boxes[i + 1]! + boxes[i + 5]! - boxes[i + 2]!;

/** The facets of a tree whose boxes meet a box, mm. */
export function facetsNear(tree: FacetTree, { min, max }: Box): Facets {
  const near: number[] = [];
  const room = Float64Array.of(...min, ...max);
  const open = [0];
  while (open.length > 0) {
    const node = open.pop()!;
    if (boxGapSq(tree.boxes, 6 * node, room, 0) > 0) continue;
    const count = tree.parts[2 * node + 1]!;
    const first = tree.parts[2 * node]!;
    if (count === 0) open.push(first + 1, first);
    for (let k = first; k < first + count; k += 1) near.push(k);
  }
  const facets = new Float64Array(9 * near.length);
  near.forEach((k, i) => {
    for (let n = 0; n < 9; n += 1) facets[9 * i + n] = tree.facets[9 * k + n]!;
  });
  return facets;
}

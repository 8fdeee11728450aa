import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { area } from './area.js';
import type { Slice } from './offset-slices.js';
import { perimeter, segmentLength } from './perimeter.js';
import type { Profile } from './profile.js';
import { pointAlong, type Segment, segment, sweep } from './segment.js';

/** Where slices meet, the way on is judged this far along them, mm: two arcs of 1 m radius that touch are then 1e-5 mm apart. */
const LOOK_AHEAD = 0.1;

/** A slice between two numbered meeting points. */
interface Link {
  readonly slice: Slice;
  readonly start: number;
  readonly end: number;
}

/**
 * Closed loops from slices that meet end to start. Slices that lead nowhere are left out; where several go on, the leftmost does, so
 * that loops which only touch stay apart. Loops thinner than 1e-6 mm are left out.
 */
export function stitched(slices: readonly Slice[]): readonly Profile[] {
  const nodes: Vec2[] = [];
  const numberOf = (point: Vec2): number => {
    const known = nodes.findIndex(
      (node) => Math.hypot(node[0] - point[0], node[1] - point[1]) <= 4 * SAME_POINT,
    );
    return known >= 0 ? known : nodes.push(point) - 1;
  };
  const links = withoutDeadEnds(
    slices
      .map((slice) => ({ slice, start: numberOf(slice.from), end: numberOf(slice.to) }))
      .filter((link) => link.start !== link.end),
  );
  const unused = new Set(links);
  const loops: Profile[] = [];
  for (const first of links) {
    if (!unused.has(first)) continue;
    const loop = follow(first, unused);
    if (!loop) continue;
    const profile = merged(loop).map(({ start, slice, turn }) => {
      const [x, y] = nodes[start]!;
      return { x, y, bulge: bulgeOf(slice.segment, turn) };
    });
    if (Math.abs(area(profile)) > SAME_POINT * Math.max(1, perimeter(profile) / 2)) loops.push(profile);
  }
  return loops;
}

function withoutDeadEnds(links: readonly Link[]): readonly Link[] {
  const starts = new Set(links.map((link) => link.start));
  const ends = new Set(links.map((link) => link.end));
  const kept = links.filter((link) => starts.has(link.end) && ends.has(link.start));
  return kept.length === links.length ? links : withoutDeadEnds(kept);
}

/** The links from the first one round to its start, taken out of the unused ones; undefined when the way does not close. */
function follow(first: Link, unused: Set<Link>): readonly Link[] | undefined {
  const loop: Link[] = [];
  let link: Link | undefined = first;
  while (link) {
    unused.delete(link);
    loop.push(link);
    if (link.end === first.start) return loop;
    link = onward(link, unused);
  }
  return undefined;
}

function onward(from: Link, unused: ReadonlySet<Link>): Link | undefined {
  let best: Link | undefined;
  for (const link of unused)
    if (link.start === from.end && (!best || leftwards(from, link) > leftwards(from, best))) best = link;
  return best;
}

/** How far left a link turns off from another, radians, from π for straight back on the left to -π for straight back on the right. */
function leftwards(from: Link, to: Link): number {
  const [ax, ay] = lookingFrom(from.slice, 1);
  const [bx, by] = lookingFrom(to.slice, 0);
  const clockwiseFromBack = Math.atan2(ay * bx - ax * by, ax * bx + ay * by);
  return Math.PI - (clockwiseFromBack < 0 ? clockwiseFromBack + 2 * Math.PI : clockwiseFromBack);
}

/** From a slice's start (0) or end (1) to a point a little way into it: arcs that touch there already lie apart. */
function lookingFrom({ from, to, turn }: Slice, end: 0 | 1): Vec2 {
  const part = segment(from, to, Math.tan(turn / 4));
  const fraction = Math.min(1 / 2, LOOK_AHEAD / segmentLength(part));
  const [x, y] = pointAlong(part, end === 0 ? fraction : 1 - fraction);
  const at = end === 0 ? from : to;
  return [x - at[0], y - at[1]];
}

/** Neighbours on one line or circle as one again, with the angle they turn through together. */
function merged(loop: readonly Link[]): readonly { start: number; slice: Slice; turn: number }[] {
  const breaks = loop.findIndex((link, i) => link.slice.source !== loop.at(i - 1)!.slice.source);
  const ordered = breaks < 0 ? loop : [...loop.slice(breaks), ...loop.slice(0, breaks)];
  const result: { start: number; slice: Slice; turn: number }[] = [];
  for (const { slice, start } of ordered) {
    const last = result.at(-1);
    if (breaks >= 0 && last?.slice.source === slice.source) last.turn += slice.turn;
    else result.push({ start, slice, turn: slice.turn });
  }
  return result;
}

/** The bulge of a part of a segment; of the whole one its own, to the last digit. */
function bulgeOf(whole: Segment, turn: number): number {
  if (whole.kind === 'line') return 0;
  return turn === sweep(whole) ? whole.bulge : Math.tan(turn / 4);
}

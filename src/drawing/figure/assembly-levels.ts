import { frame } from '../../frame/index.js';
import { regionBounds } from '../../profile/index.js';
import { box, type Solids, section } from '../../solid/index.js';

/** A size along an axis, and what it is of; mm, assembly frame. */
export interface Level {
  readonly at: number;
  readonly what: string;
}

/** Nearer levels are one, mm. */
const SAME = 0.3;

/** More heights than these are not told beside a view. */
const MOST = 9;

/** Cut this far below what lies on top, mm: less than is printed of what leans. */
const BELOW = 0.02;

/** What lies on top takes at most this share of the height. */
const THIN = 0.4;

/** The floor, both sides of every board that hangs above it, and the top: measured on the solids. */
export function heights(solids: Solids): readonly Level[] {
  const { floor, top, boards } = extents(solids);
  const hung = boards.filter(({ low }) => low > floor + 1);
  const all = [
    { at: floor, what: 'floor' },
    ...hung.flatMap(({ name, low, high }) => [
      { at: low, what: `underside of the ${name}` },
      { at: high, what: `top of the ${name}` },
    ]),
    { at: top, what: 'top' },
  ];
  const levels = apart(all);
  return levels.length > MOST || levels.length < 3 ? [] : levels;
}

/**
 * Along an axis: the ends of what lies on top and, right below it, the outer sides of what carries it; none where nothing
 * stands over.
 */
export function overhangs(solids: Solids, axis: 0 | 1): readonly Level[] {
  const { floor, top, boards } = extents(solids);
  const upper = boards.filter(({ high, low }) => high > top - SAME && high - low < THIN * (top - floor));
  if (upper.length === 0) return [];
  const seat = Math.min(...upper.map(({ low }) => low)) - BELOW;
  const plane = frame([0, 0, seat], [0, 0, 1], [1, 0, 0]);
  const carrying = boards
    .filter(({ low, high }) => low < seat && high > seat)
    .flatMap(({ id }) => {
      const region = section(solids.boards.get(id)!.body, plane);
      if (region.length === 0) return [];
      const { minX, maxX, minY, maxY } = regionBounds(region);
      return [axis === 0 ? [minX, maxX] : [minY, maxY]];
    });
  if (carrying.length === 0) return [];
  const levels = apart([
    { at: Math.min(...upper.map(({ min }) => min[axis])), what: 'end of what lies on top' },
    { at: Math.min(...carrying.map(([from]) => from!)), what: 'outside of what carries it' },
    { at: Math.max(...carrying.map(([, to]) => to!)), what: 'outside of what carries it' },
    { at: Math.max(...upper.map(({ max }) => max[axis])), what: 'end of what lies on top' },
  ]);
  return levels.length > 2 ? levels : [];
}

function extents(solids: Solids) {
  const boards = [...solids.boards.values()].map(({ id, board, body }) => {
    const { min, max } = box(body);
    return { id, name: board.name, min, max, low: min[2], high: max[2] };
  });
  const floor = Math.min(...boards.map(({ low }) => low));
  const top = Math.max(...boards.map(({ high }) => high));
  return { boards, floor, top };
}

/** In order, those that coincide told once. */
const apart = (levels: readonly Level[]): readonly Level[] =>
  levels.toSorted((a, b) => a.at - b.at).filter(({ at }, i, all) => i === 0 || at - all[i - 1]!.at > SAME);

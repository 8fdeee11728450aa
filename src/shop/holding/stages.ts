import type { Board } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { bounds, type Profile, polygon, rectangle, type Vertex } from '../../profile/index.js';
import { NOISE, SAME_POINT } from '../../tolerances.js';
import type { Stage } from './stage.js';

/**
 * How a board looks as it is worked: milled to its blank, its ends cut, its whole outline cut.
 *
 * `ends cut` takes off what a straight saw cut from edge to edge takes: every straight end of the outline that has the whole
 * outline on one side, and every bevel over the whole width. A stage that changes nothing is still listed. Holes, slots and grooves
 * are cut later and stand in no stage.
 *
 * @param board the finished board
 * @param cut ids of the mortises that are cut already; none when left out
 */
export function stagesOf(board: Board, cut: ReadonlySet<string> = new Set()): readonly Stage[] {
  const { length, width } = board.blank;
  const blank = rectangle({ length, width });
  const sawn: Board = {
    ...board,
    bevels: [],
    openings: [],
    holes: [],
    slots: [],
    grooves: [],
    mortises: board.mortises.filter((mortise) => cut.has(mortise.id)),
  };
  return [
    { name: 'milled blank', board: { ...sawn, outline: blank } },
    {
      name: 'ends cut',
      board: {
        ...sawn,
        outline: endsCut(board, blank),
        bevels: board.bevels.filter((bevel) => bevel.within === undefined),
      },
    },
    {
      name: 'outline cut',
      board: { ...sawn, outline: board.outline, bevels: board.bevels, openings: board.openings },
    },
  ];
}

/** The blank less what lies beyond each through end cut; the outline itself when that is all there is to it. */
function endsCut(board: Board, blank: Profile): Profile {
  let left: readonly Vec2[] = blank.map(({ x, y }) => [x, y]);
  for (const [from, to] of throughEnds(board.outline)) {
    left = withoutRepeats(leftOf(left, from, to));
  }
  const same = board.outline.every(
    (v) => v.bulge === 0 && left.some(([x, y]) => Math.hypot(x - v.x, y - v.y) < 100 * SAME_POINT),
  );
  // its own corners keep the names of its edges
  if (same && left.length === board.outline.length) return board.outline;
  return polygon(left.map(([x, y]) => ({ x, y })));
}

/** A cut that runs through a corner of the blank may leave that corner twice. */
const withoutRepeats = (loop: readonly Vec2[]): readonly Vec2[] =>
  loop.filter(([x, y], i) => {
    const [px, py] = loop.at(i - 1)!;
    return Math.hypot(x - px, y - py) > 10 * SAME_POINT;
  });

/** An end sawn at this slope or steeper, run along the grain over run across it, is still an end cut: a mitre of 60°. */
const STEEPEST_END = Math.sqrt(3) + NOISE;

/** Straight end-grain runs of the outline with the whole outline on one side: across the grain, or a mitre from edge to edge. */
function throughEnds(outline: Profile): readonly (readonly [Vertex, Vertex])[] {
  const { minY, maxY } = bounds(outline);
  return outline
    .map((from, i) => [from, outline[(i + 1) % outline.length]!] as const)
    .filter(([from, to]) => {
      const run = Math.hypot(to.x - from.x, to.y - from.y);
      const [along, across] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
      const wholeWidth = across > maxY - minY - 100 * SAME_POINT;
      if (from.bulge !== 0 || across < SAME_POINT) return false;
      if (along > (wholeWidth ? STEEPEST_END * across : across - 100 * SAME_POINT)) return false;
      // seen along the run, nothing of the outline lies to its right
      const [cx, cy] = [(to.x - from.x) / run, (to.y - from.y) / run];
      const turned = outline.map((v) => ({
        x: (v.x - from.x) * cx + (v.y - from.y) * cy,
        y: (v.y - from.y) * cx - (v.x - from.x) * cy,
        bulge: v.bulge,
      }));
      return bounds(turned).minY > -100 * SAME_POINT;
    });
}

/** What of a convex loop lies left of a line, where the wood of a counter-clockwise outline stands; the loop itself when all does. */
function leftOf(loop: readonly Vec2[], from: Vertex, to: Vertex): readonly Vec2[] {
  const run = Math.hypot(to.x - from.x, to.y - from.y);
  const [cx, cy] = [(to.x - from.x) / run, (to.y - from.y) / run];
  const off = ([x, y]: Vec2) => (y - from.y) * cx - (x - from.x) * cy;
  if (loop.every((p) => off(p) > -100 * SAME_POINT)) return loop;
  return loop.flatMap((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    const [atP, atQ] = [off(p), off(q)];
    const t = atP / (atP - atQ);
    const crossing: Vec2 = [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t];
    return [...(atP >= 0 ? [p] : []), ...(atP >= 0 !== atQ >= 0 && atP !== 0 && atQ !== 0 ? [crossing] : [])];
  });
}

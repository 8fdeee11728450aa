import type { Vec2 } from '../../frame/index.js';
import { printAngle } from '../../length/index.js';
import { type Box, type Dimension, labelAt, type Room, type SheetEntity, stroke } from '../sheet/index.js';
import { type View, viewBox, viewPoint } from '../view/index.js';

/** Lines leaning less than this are plumb, more than that are no legs, degrees. */
const [PLUMB, MOST] = [0.3, 45];

/** A lean is read off lines at least this long, in shares of the view's height, and at most so many are told in a view. */
const LONG = 0.35;
const COUNT = 3;

/** Radius of an arc on the sheet, mm. */
const RADIUS = 17;

/** How far the plumb line runs on beyond its arc, mm. */
const BEYOND = 2.5;

/** Words stand no farther to the right of the view, mm. */
const BESIDE = 4;

interface Lean {
  readonly deg: number;
  /** The end farther out, where the plumb line stands beside the wood, and the other. */
  readonly foot: Vec2;
  readonly head: Vec2;
}

/**
 * Boards that lean in a view: each lean once, as an arc between its outermost edge and a plumb line; mm on the sheet.
 *
 * @param border of the view
 */
export function leanAngles(
  view: View,
  place: { readonly at: Vec2; readonly factor: number },
  room: Room,
  border: Box,
): readonly SheetEntity[] {
  const { minX, maxX } = viewBox(view);
  const middle = (minX + maxX) / 2;
  return leansIn(view, middle).flatMap(({ deg, foot, head }): readonly SheetEntity[] => {
    const [vertex, along] = [viewPoint(place, foot), viewPoint(place, head)];
    const run = Math.hypot(along[0] - vertex[0], along[1] - vertex[1]);
    const radius = Math.min(RADIUS, run * 0.8);
    const up = Math.sign(along[1] - vertex[1]);
    const plumb = up > 0 ? 90 : 270;
    const turn = (Math.atan2(along[1] - vertex[1], along[0] - vertex[0]) * 180) / Math.PI;
    const edge = (turn + 360) % 360;
    const onArc = (degrees: number, reach = radius): Vec2 => {
      const radians = (degrees * Math.PI) / 180;
      return [vertex[0] + reach * Math.cos(radians), vertex[1] + reach * Math.sin(radians)];
    };
    const tip = onArc(plumb, radius + BEYOND);
    room.avoid([vertex, tip]);
    const words = labelAt(room, onArc((plumb + edge) / 2), printAngle(deg), 1.2, {
      leader: 'from afar',
      within: { ...border, maxX: border.maxX + BESIDE },
    });
    const dimension: Dimension = {
      kind: 'dimension',
      what: 'lean out of plumb',
      value: deg,
      unit: 'deg',
      parts: [
        stroke('dimension', vertex, tip),
        {
          kind: 'arc',
          line: 'dimension',
          centre: vertex,
          radius,
          startDeg: Math.min(plumb, edge),
          sweepDeg: Math.abs(plumb - edge),
        },
        ...words,
      ],
    };
    return [dimension];
  });
}

/** The leans of a view's long visible lines, steepest lean first; of those alike the one farthest to the right. */
function leansIn(view: View, middle: number): readonly Lean[] {
  const { minY, maxY } = viewBox(view);
  const found = new Map<number, Lean>();
  for (const { line, points } of view.lines) {
    if (line !== 'visible') continue;
    points.slice(1).forEach((q, i) => {
      const p = points[i]!;
      const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
      const deg = (Math.atan2(Math.abs(dx), Math.abs(dy)) * 180) / Math.PI;
      if (deg < PLUMB || deg > MOST || Math.abs(dy) < LONG * (maxY - minY)) return;
      const [foot, head] = p[0] > q[0] ? [p, q] : [q, p];
      if (foot[0] < middle) return;
      const known = found.get(Math.round(deg * 10));
      if (!known || foot[0] > known.foot[0] + 0.01) found.set(Math.round(deg * 10), { deg, foot, head });
    });
  }
  return [...found.values()].toSorted((a, b) => b.deg - a.deg).slice(0, COUNT);
}

import { add, scale, type Vec2, type Vec3 } from '../../frame/index.js';
import type { GlueStep, GlueUp } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { arrowHead, letters, stroke } from '../sheet/index.js';
import { onSheet, VIEW_FRAMES, viewBox, viewLines, viewOf } from '../view/index.js';
import { seenParts } from './picture.js';

/** Drawn farther apart than the tenons need, mm, so that they are seen. */
const MORE = 35;

const MOST: readonly [width: number, height: number] = [36, 36];

/** A step of the glue-up as it is about to be made: what is put together so far, the moving group drawn back along its way. */
export function glueFigure(solids: Solids, up: GlueUp, step: GlueStep): DrawnFigure {
  const groups = new Set([...step.moving, ...step.still]);
  const back = scale(step.direction, -(step.travel + MORE));
  const moves = new Set(step.moving);
  const shifts = new Map<string, Vec3>();
  for (const id of step.moving) shifts.set(id, back);
  for (const { tenons, board } of up.seatings) {
    if (!groups.has(board)) continue;
    for (const id of tenons) {
      groups.add(id);
      if (moves.has(board)) shifts.set(id, back);
    }
  }
  const parts = seenParts(solids, shifts).filter(({ id }) => groups.has(id));
  const frame = VIEW_FRAMES.isometric;
  const view = viewOf(parts, frame, { hidden: false, toned: 'apart' });
  const box = viewBox(view);
  const factor = Math.min(MOST[0] / (box.maxX - box.minX), MOST[1] / (box.maxY - box.minY));
  const [width, height] = [factor * (box.maxX - box.minX), factor * (box.maxY - box.minY) + 6];
  const joint = solids.design.joints.find(({ id }) => id === step.joints[0]?.joint);
  const named = (ids: readonly string[]) =>
    ids.map((id) => solids.boards.get(id)?.board.name ?? id).join(' and ');
  return {
    kind: 'drawn',
    said: `${step.id} of the glue-up: ${named(step.moving)} about to go on to ${named(step.still)}.`,
    width,
    height,
    draw: ([x, y]) => {
      const at: Vec2 = [x - factor * box.minX, y - factor * box.minY];
      const place = { frame, at, factor };
      const arrow = joint ? [add(joint.seat.origin, back), add(joint.seat.origin, scale(back, 0.15))] : [];
      const [from, to] = arrow.map((p) => onSheet(place, p));
      return [
        ...viewLines(view, { at, factor }),
        ...(from && to ? [stroke('visible', from, to), arrowHead(to, from, 4)] : []),
        letters([x, y + height - 3], step.id, { bold: true }),
      ];
    },
  };
}

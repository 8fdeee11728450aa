import { add, scale, subtract, unit, type Vec2 } from '../../frame/index.js';
import type { ClampPlan } from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { arrowHead, labelAt, letters, roomOf, type SheetEntity, stroke } from '../sheet/index.js';
import { onSheet, type View, viewBox, viewLines } from '../view/index.js';

const MOST: readonly [width: number, height: number] = [36, 30];

/** Length of an arrow at a jaw, mm at full size for each mm of the picture's width. */
const ARROW = 0.14;

/** Kept round the picture for arrows and names, mm on the sheet. */
const AROUND = 6;

/**
 * A stage as it stands in its clamps: at each jaw an arrow the way it pushes, with the clamp's name at one of them.
 *
 * @param view of the whole piece, isometric
 */
export function clampFigure(view: View, plan: ClampPlan, stage: number): DrawnFigure | undefined {
  const clamps = plan.clamps.filter((clamp) => clamp.stage === stage);
  if (clamps.length === 0) return undefined;
  const { frame } = view;
  const box = viewBox(view);
  const factor = Math.min(MOST[0] / (box.maxX - box.minX), MOST[1] / (box.maxY - box.minY));
  const width = factor * (box.maxX - box.minX) + 2 * AROUND;
  const height = factor * (box.maxY - box.minY) + 2 * AROUND;
  return {
    kind: 'drawn',
    said: `Stage ${stage} in its clamps, ${clamps.map(({ id }) => id).join(', ')}, seen from a corner: an arrow at each jaw the way it pushes.`,
    width,
    height,
    draw: ([x, y]): readonly SheetEntity[] => {
      const at: Vec2 = [x + AROUND - factor * box.minX, y + AROUND - factor * box.minY];
      const place = { frame, at, factor };
      const drawn: SheetEntity[] = [
        ...viewLines(view, { at, factor }),
        letters([x, y + height - 1.5], `clamps of stage ${stage}`, { bold: true }),
      ];
      const room = roomOf(drawn);
      // names keep to the figure, below its heading
      const within = { minX: x - AROUND, maxX: x + width + AROUND, minY: y, maxY: y + height - 4 };
      for (const { id, ends } of clamps) {
        ends.forEach((end, i) => {
          const other = ends[1 - i]!;
          const push = unit(subtract(other.at, end.at));
          const tip = onSheet(place, end.at);
          const tail = onSheet(place, add(end.at, scale(push, -ARROW * (box.maxX - box.minX))));
          drawn.push(stroke('visible', tail, tip), arrowHead(tip, tail, 3));
          room.avoid([tail, tip]);
          if (i === 0)
            drawn.push(...labelAt(room, tail, id, 1.5, { leader: 'from afar', within, bold: true }));
        });
      }
      return drawn;
    },
  };
}

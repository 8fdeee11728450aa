import type { PlacedBoard } from '../../src/assembly/index.js';
import { type Hole, makeBoard } from '../../src/board/index.js';
import { type Frame, frame } from '../../src/frame/index.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';

/** `near` is on the person's side of the work. */
export const SIDES = ['near', 'far'] as const;
export type Side = (typeof SIDES)[number];

/** Both rails are one piece made twice: reference edge against the work, reference face against the plate. */
export function rail(side: Side, v: JigValues, l: Layout): PlacedBoard {
  const { stack, railLength } = l;
  const holes = [-1, 1].map(
    (end): Hole => ({
      id: `bolt-hole-${end < 0 ? 1 : 2}`,
      face: 'opposite-face',
      at: frame([railLength / 2 + end * l.slotPosition, v.railWidth / 2, v.railHeight], [0, 0, 1], [1, 0, 0]),
      diameter: stack.bolt.clearanceHole,
      depth: 'through',
      counterbore: { diameter: stack.counterboreDiameter, depth: stack.counterboreDepth },
    }),
  );
  return {
    board: makeBoard({
      id: `${side}-rail`,
      material: v.railMaterial,
      blank: { length: railLength, width: v.railWidth, thickness: v.railHeight },
      holes,
    }),
    place: placeOf(side, l),
  };
}

/** The underside of the plate is z = 0; a rail's thickness runs down from it, its width away from the work. */
function placeOf(side: Side, l: Layout): Frame {
  const away = side === 'near' ? -1 : 1;
  return frame([(away * l.railLength) / 2, (away * l.drawn) / 2, 0], [0, 0, -1], [-away, 0, 0]);
}

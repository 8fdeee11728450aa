import type { PlacedBoard } from '../../src/assembly/index.js';
import { type Hole, makeBoard, type Slot } from '../../src/board/index.js';
import { frame, WORLD } from '../../src/frame/index.js';
import { circle } from '../../src/profile/index.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';

/** The base plate: its reference face slides on the work. */
export function plate(v: JigValues, l: Layout): PlacedBoard {
  const [middleX, middleY] = [l.plateLength / 2, l.plateWidth / 2];
  const { screw, sinkDiameter, pattern } = l.mounting;
  const holes = pattern.holes.map(
    ({ at: [x, y] }, i): Hole => ({
      id: `screw-hole-${i + 1}`,
      face: 'reference-face',
      at: frame([middleX + x, middleY + y, 0], [0, 0, -1], [1, 0, 0]),
      diameter: screw.clearanceHole,
      depth: 'through',
      countersink: { diameter: sinkDiameter, angleDeg: screw.countersunkHead.angleDeg },
    }),
  );
  const slots = [-1, 1].map(
    (side): Slot => ({
      id: side < 0 ? 'left-slot' : 'right-slot',
      face: 'reference-face',
      at: frame([middleX + side * l.slotPosition, middleY, 0], [0, 0, -1], [0, 1, 0]),
      width: l.slotWidth,
      length: l.slotLength,
      depth: 'through',
      ...(v.slots === 'open' && { openAt: 'end' }),
    }),
  );
  return {
    board: makeBoard({
      id: 'plate',
      name: 'base plate',
      material: v.plateMaterial,
      blank: { length: l.plateLength, width: l.plateWidth, thickness: v.plateThickness },
      openings: [
        { id: 'bit-opening', outline: circle({ diameter: v.bitOpening, centre: [middleX, middleY] }) },
      ],
      holes,
      slots,
    }),
    place: { ...WORLD, origin: [-middleX, -middleY, 0] },
  };
}

import type { Design } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { type Frame, frame, frameOut, type Vec3, WORLD } from '../../src/frame/index.js';
import { polygon } from '../../src/profile/index.js';
import { design } from './crowded-designs.js';

/** A picture frame of four rails mitred at 45°, lying wherever `stand` is. */
export function mitredFrame(
  wide: number,
  { length = 600, width = 400, thick = 24, stand = WORLD as Frame } = {},
): Design {
  const rail = (id: string, long: number, at: Vec3, along: Vec3) => ({
    board: makeBoard({
      id,
      material: 'European ash',
      blank: { length: long, width: wide, thickness: thick },
      outline: polygon([
        { x: 0, y: 0 },
        { x: long, y: 0 },
        { x: long - wide, y: wide },
        { x: wide, y: wide },
      ]),
    }),
    place: frameOut(stand, frame(at, [0, 0, 1], along)),
  });
  return design(
    [
      rail('front', length, [0, 0, 0], [1, 0, 0]),
      rail('right', width, [length, 0, 0], [0, 1, 0]),
      rail('back', length, [length, width, 0], [-1, 0, 0]),
      rail('left', width, [0, width, 0], [0, -1, 0]),
    ],
    [
      { a: 'front', b: 'right' },
      { a: 'back', b: 'right' },
      { a: 'back', b: 'left' },
      { a: 'left', b: 'front' },
    ],
    'mitred-frame',
  );
}

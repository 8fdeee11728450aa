import { type Board, type Mortise, makeBoard } from '../../src/board/index.js';
import { frame } from '../../src/frame/index.js';
import { circle, polygon, rectangle } from '../../src/profile/index.js';

const leanDeg = 10;
const lean = (leanDeg * Math.PI) / 180;

/** A mortise of 8 × 40, 25 deep; the rest is given. */
export const mortise = (given: Pick<Mortise, 'id' | 'face' | 'at'> & Partial<Mortise>): Mortise => ({
  width: 8,
  length: 40,
  depth: 25,
  joint: 'rail/left-side',
  tenon: 'rail/left-side/1',
  ...given,
});

/** 300 × 120 × 20 with one of everything a template shows. */
export const sampleBoard: Board = {
  ...makeBoard({
    id: 'left-side',
    material: 'birch plywood',
    blank: { length: 300, width: 120, thickness: 20 },
    outline: polygon([
      { x: 0, y: 0 },
      { x: 300, y: 0, radius: 25 },
      { x: 300, y: 120, radius: 25 },
      { x: 0, y: 120 },
    ]),
    openings: [
      {
        id: 'grip',
        outline: polygon([
          { x: 200, y: 45, radius: 10 },
          { x: 260, y: 45, radius: 10 },
          { x: 260, y: 75, radius: 10 },
          { x: 200, y: 75, radius: 10 },
        ]),
      },
    ],
    bevels: [
      {
        id: 'foot',
        point: [0, 0, 20],
        normal: [-Math.cos(lean), 0, -Math.sin(lean)],
      },
      {
        id: 'notch',
        point: [0, 112, 20],
        normal: [0, Math.SQRT1_2, Math.SQRT1_2],
        within: rectangle({ x: 60, y: 90, length: 100, width: 40 }),
      },
    ],
    holes: [
      {
        id: 'bolt',
        face: 'opposite-face',
        at: frame([150, 90, 20], [0, 0, 1], [1, 0, 0]),
        diameter: 8.4,
        depth: 'through',
        counterbore: { diameter: 16, depth: 9 },
      },
      {
        id: 'pin',
        face: 'reference-edge',
        at: frame([250, 0, 10], [0, -1, 0], [1, 0, 0]),
        diameter: 6,
        depth: 30,
      },
    ],
    slots: [
      {
        id: 'track',
        face: 'opposite-face',
        at: frame([280, 60, 20], [0, 0, 1], [1, 0, 0]),
        width: 10,
        length: 40,
        depth: 'through',
        openAt: 'end',
      },
    ],
  }),
  mortises: [
    mortise({
      id: 'm1',
      face: 'opposite-face',
      at: frame([60, 60, 20], [0, 0, 1], [0, 1, 0]),
      depth: 15,
    }),
    mortise({ id: 'm2', face: 'reference-face', at: frame([110, 60, 0], [0, 0, -1], [0, 1, 0]), depth: 12 }),
    mortise({ id: 'm3', face: 'reference-edge', at: frame([180, 0, 10], [0, -1, 0], [1, 0, 0]) }),
    mortise({
      id: 'm4',
      face: 'foot',
      at: frame(
        [-10 * Math.tan(lean) + 20 * Math.tan(lean), 60, 10],
        [-Math.cos(lean), 0, -Math.sin(lean)],
        [0, 1, 0],
      ),
      depth: 30,
    }),
  ],
};

/** The same board without its grip, whose outline is a plain disc: for tests on a single arc. */
export const disc: Board = makeBoard({
  id: 'disc',
  blank: { length: 100, width: 100, thickness: 12 },
  outline: circle({ diameter: 100, centre: [50, 50] }),
});

import { assemble, type PlacedBoard } from '../src/assembly/index.js';
import { makeBoard } from '../src/board/index.js';
import { InputError } from '../src/errors.js';
import { frame, WORLD } from '../src/frame/index.js';
import { PRACTICE } from '../src/joinery/index.js';
import { count, defineModel, length } from '../src/model/index.js';
import { nearestCutter } from '../src/tables/index.js';

/** Least opening between two rails, so that a clamp and a hand pass, mm. Common practice, no source. */
const LEAST_OPENING = 50;

export default defineModel({
  name: 'frame',
  title: 'Frame',
  summary: 'Four rails joined in a rectangle without mitres, for a shed door or a cold-frame light.',
  parameters: {
    length: length({ min: 200, max: 2400, default: 600, help: 'Outside length, along the two long rails.' }),
    width: length({ min: 200, max: 2400, default: 400, help: 'Outside width, over both long rails.' }),
    railWidth: length({ min: 40, max: 200, default: 70, help: 'Width of every rail.' }),
    thickness: length({ min: 15, max: 60, default: 24, help: 'Thickness of every rail.' }),
    tenons: count({ min: 1, max: 3, default: 1, help: 'Loose tenons in each corner.' }),
    cutter: length({
      min: 4,
      max: 20,
      derived: 'the cutter at hand nearest a third of the thickness',
      help: 'Diameter of the cutter; it sets the mortise width.',
    }),
  },
  build(v, { cutters }) {
    for (const [option, size] of [
      ['length', v.length],
      ['width', v.width],
    ] as const) {
      if (size - 2 * v.railWidth < LEAST_OPENING) {
        throw new InputError(
          'frame-closed',
          (say) =>
            `${option} ${say.fine(size)} with rail-width ${say.fine(v.railWidth)} leaves ${say.fines(Math.max(size - 2 * v.railWidth, 0), LEAST_OPENING)[0]} between the rails; it must leave at least ${say.fines(Math.max(size - 2 * v.railWidth, 0), LEAST_OPENING)[1]}: make the frame larger or the rails narrower`,
        );
      }
    }
    const long = (id: string, y: number): PlacedBoard => ({
      board: makeBoard({ id, blank: { length: v.length, width: v.railWidth, thickness: v.thickness } }),
      place: { ...WORLD, origin: [0, y, 0] },
    });
    // the short rails run away from the person: their grain is the assembly's y
    const short = (id: string, x: number): PlacedBoard => ({
      board: makeBoard({
        id,
        blank: { length: v.width - 2 * v.railWidth, width: v.railWidth, thickness: v.thickness },
      }),
      place: frame([x + v.railWidth, v.railWidth, 0], [0, 0, 1], [0, 1, 0]),
    });
    const cutter = v.cutter ?? nearestCutter(v.thickness * PRACTICE.tenonShare, cutters);
    const options = { tenons: v.tenons, cutter };
    return assemble({
      name: 'frame',
      title: 'Frame',
      cutter,
      boards: [
        long('front-rail', 0),
        long('back-rail', v.width - v.railWidth),
        short('left-rail', 0),
        short('right-rail', v.length - v.railWidth),
      ],
      joints: ['left-rail', 'right-rail'].flatMap((a) =>
        ['front-rail', 'back-rail'].map((b) => ({ a, b, options })),
      ),
    });
  },
});

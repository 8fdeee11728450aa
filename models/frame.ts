import { assemble, type PlacedBoard } from '../src/assembly/index.js';
import { makeBoard } from '../src/board/index.js';
import { InputError } from '../src/errors.js';
import { frame, WORLD } from '../src/frame/index.js';
import { PRACTICE } from '../src/joinery/index.js';
import { INCH, type Units } from '../src/length/index.js';
import { count, defineModel, length, type Tools } from '../src/model/index.js';
import { nearestCutter } from '../src/tables/index.js';

/** Least opening between two rails, so that a clamp and a hand pass, mm. Common practice, no source. */
const LEAST_OPENING = 50;

/** What a size is when nothing that was given asks for another, mm; round in the units the frame is made in. */
const USUAL: Readonly<Record<Units, { width: number; railWidth: number; thickness: number }>> = {
  mm: { width: 400, railWidth: 70, thickness: 24 },
  in: { width: 16 * INCH, railWidth: 2.75 * INCH, thickness: INCH },
};

/** Seat a row of more than two tenons wants, for each of them, mm. */
const TENON_SEAT = 32;

interface Given {
  readonly width?: number | undefined;
  readonly railWidth?: number | undefined;
  readonly thickness?: number | undefined;
  readonly cutter?: number | undefined;
  readonly tenons: number;
}

/** What was left out follows from what was given. */
function sized<V extends Given>(
  v: V,
  { units = 'mm' }: Pick<Tools, 'units'>,
): V & { width: number; railWidth: number; thickness: number } {
  const usual = USUAL[units];
  const railWidth = v.railWidth ?? Math.max(usual.railWidth, v.tenons > 2 ? v.tenons * TENON_SEAT : 0);
  return {
    ...v,
    railWidth,
    width: v.width ?? Math.max(usual.width, 2 * railWidth + 2 * LEAST_OPENING),
    thickness: v.thickness ?? Math.max(usual.thickness, (v.cutter ?? 0) + 2 * PRACTICE.wall),
  };
}

export default defineModel({
  name: 'frame',
  title: 'Frame',
  summary: 'Four rails joined in a rectangle without mitres, for a shed door or a cold-frame light.',
  parameters: {
    length: length({
      min: 200,
      max: 2400,
      default: 600,
      inches: 24,
      help: 'Outside length, along the two long rails.',
    }),
    width: length({
      min: 200,
      max: 2400,
      derived: (say) => `${say.fine(USUAL[say.units].width)}; more between wide rails`,
      help: 'Outside width, over both long rails.',
    }),
    railWidth: length({
      min: 40,
      max: 200,
      derived: (say) => `${say.fine(USUAL[say.units].railWidth)}; more for three tenons`,
      help: 'Width of every rail.',
    }),
    thickness: length({
      min: 15,
      max: 60,
      derived: (say) => `${say.fine(USUAL[say.units].thickness)}; more when the cutter asks for it`,
      help: 'Thickness of every rail.',
    }),
    tenons: count({ min: 1, max: 3, default: 1, help: 'Loose tenons in each corner.' }),
    cutter: length({
      min: 4,
      max: 20,
      derived: 'the cutter at hand nearest a third of the thickness',
      help: 'Diameter of the cutter; it sets the mortise width.',
    }),
  },
  complete: sized,
  build(given, tools) {
    const { cutters, deepest, wood } = tools;
    const v = sized(given, tools);
    for (const [option, size] of [
      ['length', v.length],
      ['width', v.width],
    ] as const) {
      if (size - 2 * v.railWidth < LEAST_OPENING) {
        throw new InputError(
          'frame-closed',
          (say) =>
            `${option} ${say.fine(size)} with rail-width ${say.fine(v.railWidth)} leaves ${say.fines(Math.max(size - 2 * v.railWidth, 0), LEAST_OPENING)[0]} between the rails; it must leave at least ${say.fines(Math.max(size - 2 * v.railWidth, 0), LEAST_OPENING)[1]}: make the frame larger or the rails narrower`,
          { of: 'size', name: option },
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
    const reach = deepest?.(cutter);
    const options = {
      tenons: v.tenons,
      cutter,
      ...(reach !== undefined && { deepest: reach }),
      ...wood,
    };
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

import fc from 'fast-check';
import frameModel from '../../models/frame.js';
import jigModel from '../../models/jig.js';
import stoolModel from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { InputError, JoinError } from '../../src/errors.js';
import { type Model, readParameters } from '../../src/model/index.js';

/** Sizes to a tenth of a millimetre or degree, as a person would give them. */
const tenths = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 10), max: Math.round(max * 10) }).map((n) => n / 10);

/** A design by the name of its model and the values given. */
export interface Wish {
  readonly model: 'stool' | 'frame' | 'jig';
  readonly raw: Readonly<Record<string, string | number | boolean>>;
}

const stools = fc
  .record({
    treads: fc.constantFrom(1, 2),
    height: tenths(200, 320),
    perTread: tenths(0, 60),
    treadLength: tenths(320, 800),
    treadDepth: tenths(180, 340),
    treadThickness: tenths(18, 45),
    overhang: tenths(0, 60),
    setback: tenths(0, 30),
    sideThickness: tenths(18, 45),
    rake: fc.oneof(fc.constant(0), tenths(0, 20), fc.double({ min: 0, max: 20, noNaN: true })),
    taper: fc.oneof(fc.constant(0), tenths(0, 8)),
    arch: fc.boolean(),
    archHeight: tenths(30, 70),
    archRadius: tenths(0, 30),
    footLength: tenths(30, 60),
    stretcherWidth: tenths(60, 100),
    stretcherThickness: tenths(18, 45),
    stretcherBelow: tenths(45, 90),
    handOpening: fc.boolean(),
    treadTenons: fc.constantFrom(1, 2),
    cutter: fc.constantFrom(6, 6.35, 8),
    cheekClearance: fc.constantFrom(0.05, 0.1, 0.2),
    edgeClearance: fc.constantFrom(0.5, 1, 3),
    endGap: fc.constantFrom(0, 0.5, 1, 2),
  })
  .map(({ perTread, arch, archHeight, height: one, stretcherBelow, ...raw }): Wish => {
    const height = raw.treads === 1 ? one : 1.8 * one + perTread;
    // far enough below the tread for its mortises and the stretcher's not to meet in the side
    const stretcherHeight = one - raw.treadThickness - raw.stretcherWidth - stretcherBelow;
    return {
      model: 'stool',
      raw: {
        ...raw,
        archHeight: arch ? archHeight : 0,
        height,
        stretcherHeight: Math.max(stretcherHeight, 20),
      },
    };
  });

const frames = fc
  .record({
    length: tenths(300, 2400),
    width: tenths(300, 1200),
    railWidth: tenths(45, 140),
    thickness: tenths(18, 60),
    tenons: fc.constantFrom(1, 1, 2),
    cutter: fc.constantFrom(6, 6.35, 8, 10),
  })
  .map(
    (raw): Wish => ({
      model: 'frame',
      raw: raw.tenons === 2 ? { ...raw, railWidth: raw.railWidth + 40 } : raw,
    }),
  );

/** Stools and frames of sizes that go together. */
export const wishes: fc.Arbitrary<Wish> = fc.oneof(
  { weight: 2, arbitrary: stools },
  { weight: 1, arbitrary: frames },
);

const models = { stool: stoolModel, frame: frameModel, jig: jigModel } as unknown as Readonly<
  Record<Wish['model'], Model>
>;

/**
 * The design wished for.
 *
 * @returns the refusal when the model refuses it; any other error is a fault and is thrown
 */
export function built({ model, raw }: Wish): Design | InputError | JoinError {
  try {
    return models[model].build(readParameters(models[model], raw, 'mm'));
  } catch (error) {
    if (error instanceof InputError || error instanceof JoinError) return error;
    throw error;
  }
}

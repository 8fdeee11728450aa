import { INCH, type Units } from '../../src/length/index.js';

/** Sizes the jig works out when they are left out. */
export type Size =
  | 'baseDiameter'
  | 'holeCircle'
  | 'bitOpening'
  | 'cutter'
  | 'workMin'
  | 'workMax'
  | 'railWidth'
  | 'railHeight'
  | 'knobHeight'
  | 'knobThread';

/** What each is when nothing that was given asks for another, mm; round in the units the jig is made in. */
export const USUAL: Readonly<Record<Units, Readonly<Record<Size, number>>>> = {
  mm: {
    baseDiameter: 150,
    holeCircle: 110,
    bitOpening: 32,
    cutter: 10,
    workMin: 20,
    workMax: 85,
    railWidth: 40,
    railHeight: 45,
    knobHeight: 28,
    knobThread: 20,
  },
  in: {
    baseDiameter: 6 * INCH,
    holeCircle: 4.25 * INCH,
    bitOpening: 1.25 * INCH,
    cutter: 0.375 * INCH,
    workMin: 0.75 * INCH,
    workMax: 3.375 * INCH,
    railWidth: 1.5 * INCH,
    railHeight: 1.75 * INCH,
    knobHeight: 1.125 * INCH,
    knobThread: 0.75 * INCH,
  },
};

/** Cutter to the flat towards the person, of a round base with flats none of which is given, mm. */
export const BASE_FLAT: Readonly<Record<Units, number>> = { mm: 60, in: 2.375 * INCH };

/** Sizes that are worked out are whole steps of this, mm. */
export const STEP: Readonly<Record<Units, number>> = { mm: 1, in: INCH / 16 };

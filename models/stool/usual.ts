import { INCH, type Units } from '../../src/length/index.js';

/** What a size is when nothing that was given asks for another, mm and degrees; round in the units the stool is made in. */
export interface Usual {
  /** By the number of treads. */
  readonly height: Readonly<Record<1 | 2, number>>;
  readonly treadDepth: number;
  /** So that every edge stands well inside the feet. */
  readonly overhang: number;
  readonly setback: number;
  readonly rake: number;
  readonly taper: number;
  readonly treadThickness: number;
  readonly sideThickness: number;
  readonly archHeight: number;
  readonly archRadius: number;
  readonly footLength: number;
  readonly stretcherWidth: number;
  readonly stretcherThickness: number;
  readonly stretcherHeight: number;
  /** Sizes that are worked out are whole steps of this. */
  readonly step: number;
}

export const USUAL: Readonly<Record<Units, Usual>> = {
  mm: {
    height: { 1: 230, 2: 420 },
    treadDepth: 240,
    overhang: 25,
    setback: 8,
    rake: 10,
    taper: 5,
    treadThickness: 28,
    sideThickness: 28,
    archHeight: 45,
    archRadius: 25,
    footLength: 55,
    stretcherWidth: 70,
    stretcherThickness: 24,
    stretcherHeight: 85,
    step: 1,
  },
  // stock of 1 in: of 3/4 in, raked sides leave too little wood beside the mortises and the tread pulls too hard on them
  in: {
    height: { 1: 9 * INCH, 2: 16.5 * INCH },
    treadDepth: 9.5 * INCH,
    overhang: INCH,
    setback: 0.3125 * INCH,
    rake: 10,
    taper: 5,
    treadThickness: INCH,
    sideThickness: INCH,
    archHeight: 1.75 * INCH,
    archRadius: INCH,
    footLength: 2.25 * INCH,
    stretcherWidth: 3 * INCH,
    stretcherThickness: INCH,
    stretcherHeight: 3.375 * INCH,
    step: INCH / 16,
  },
};

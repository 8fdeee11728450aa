import { INCH, type Units } from '../../length/index.js';
import { cutters } from '../../tables/index.js';
import type { CutterAtHand, Shop } from './shop.js';

/**
 * The shop that is assumed when no shop file is given, named so in every paper. Common practice, no source; nothing in it is
 * measured, so it has no eccentricity, no cutter diameters and no test slots.
 *
 * @param units `in` gives inch sizes where the trade has them
 */
export function builtInShop(units: Units): Shop {
  const inches = units === 'in';
  const size = (mm: number, inch: number): number => (inches ? inInches(inch) : mm);
  return {
    name: 'built-in shop',
    units,
    measures: units,
    router: {
      base: { shape: 'round', along: size(150, 6), across: size(150, 6) },
      plungeTravel: size(60, 2.375),
      turretSteps: [0, size(6, 0.25), size(12, 0.5)],
      collets: inches ? [INCH / 4, 8, INCH / 2] : [6, 8, 12],
      baseThickness: size(10, 0.375),
      guideReach: size(150, 6),
    },
    cutters: cutters()
      .filter(({ system }) => system === (inches ? 'inch' : 'metric'))
      .map(({ diameter }) => usualCutter(diameter)),
    bushes: [
      { outside: size(16, 0.625), bore: size(13, 0.53125), collarLength: size(5, 0.1875) },
      { outside: size(24, 1), bore: size(21, 0.875), collarLength: size(5, 0.1875) },
    ],
    jig: {},
    sawKerf: size(3, 0.125),
    sheets: [
      { name: 'birch plywood', length: size(2440, 96), width: size(1220, 48), thickness: size(12, 0.5) },
      {
        name: 'medium density fibreboard',
        length: size(2440, 96),
        width: size(1220, 48),
        thickness: size(6, 0.25),
      },
    ],
    lumber: [
      { thickness: size(32, 1.25), width: size(150, 6), length: size(2400, 96), count: 6 },
      { thickness: size(50, 2), width: size(150, 6), length: size(2400, 96), count: 2 },
    ],
    roughAllowance: { length: size(30, 1.25), width: size(8, 0.375), thickness: size(4, 0.1875) },
    shortest: { planer: size(300, 12), saw: size(300, 12) },
    clamps: [
      { opening: size(300, 12), throat: size(80, 3), count: 6 },
      { opening: size(600, 24), throat: size(95, 3.75), count: 4 },
    ],
    paper: inches ? 'Letter' : 'A4',
    glue: { openMinutes: 10, clampMinutes: 45, leastCelsius: 10 },
  };
}

/** Ten times an inch is whole: 12 in is 304.8 mm to the last bit. */
const inInches = (inch: number): number => (inch * (INCH * 10)) / 10;

/** Lengths of a spiral up-cut cutter as sold: the thicker, the deeper it cuts. From memory. */
function usualCutter(nominal: number): CutterAtHand {
  const [cuttingLength, overallLength, shank] =
    nominal < 7 ? [25, 65, 6] : nominal < 9 ? [32, 80, 8] : nominal < 11 ? [35, 85, 8] : [42, 95, 12];
  const inch = Number.isInteger((nominal / INCH) * 32);
  const inchShank = nominal < 9 ? INCH / 4 : INCH / 2;
  return { nominal, cuttingLength, overallLength, shank: inch ? inchShank : shank };
}

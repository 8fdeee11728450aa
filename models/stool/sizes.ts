import type * as z from 'zod';
import { leaning } from '../../src/frame/index.js';
import { PRACTICE } from '../../src/joinery/index.js';
import type { parameters } from './parameters.js';
import { USUAL } from './usual.js';

/** What a person says of the stool; mm and degrees. */
export type StoolValues = z.infer<z.ZodObject<typeof parameters>>;

/** The same with every size that was left out worked out, but for the cutter, which the shop has a say in. */
export type StoolSizes = Pick<StoolValues, 'cutter'> & {
  [Size in Exclude<keyof StoolValues, 'cutter'>]-?: NonNullable<StoolValues[Size]>;
};

/** From the arch to the stretcher's lower edge, and from its upper edge to a tread: room for their mortises, mm. */
const ABOVE_ARCH = 40;
const BELOW_TREAD = 35;

/** From the arch to the underside of a tread, and straight wood between the arch's two corners, mm. */
const ARCH_TO_TREAD = 40;
const LEAST_ARCH = 20;

/** Seat a row of more than two tenons wants, for each of them, mm. */
const TENON_SEAT = 32;

/**
 * Works out what was left out from what was given, so that one size asked for finds its neighbours ready for it. A size that was given is
 * never touched.
 */
export function sized(v: StoolValues): StoolSizes {
  const walls = (v.cutter ?? 0) + 2 * PRACTICE.wall;
  const treadThickness = v.treadThickness ?? Math.max(USUAL.treadThickness, walls);
  const sideThickness = v.sideThickness ?? Math.max(USUAL.sideThickness, walls);
  const stretcherThickness = v.stretcherThickness ?? Math.max(USUAL.stretcherThickness, walls);
  const bevelRun = sideThickness * leaning({ splayDeg: v.rake }).outPerRise[0];

  // below a height that was given, what is left for stretcher and arch
  const under = v.height === undefined ? Number.POSITIVE_INFINITY : v.height - treadThickness;
  const lowest =
    v.treads === 1 ? under : (v.lowerHeight ?? (v.height ?? Number.POSITIVE_INFINITY) / 2) - treadThickness;
  const usualWidth = Math.max(
    USUAL.stretcherWidth,
    v.stretcherTenons > 2 ? v.stretcherTenons * TENON_SEAT : 0,
  );
  const belowStretcher = v.stretcherHeight ?? 20;
  const stretcherWidth = v.stretcherWidth ?? clamp(under - BELOW_TREAD - belowStretcher, 40, usualWidth);
  const archRoom = Math.min(
    lowest - ARCH_TO_TREAD,
    (v.stretcherHeight ?? under - BELOW_TREAD - stretcherWidth) - 10,
  );
  const archWished = Math.max(USUAL.archHeight, v.archRadius ?? 0);
  const archFits = Math.min(archWished, archRoom);
  const archHeight = v.archHeight ?? (archFits > bevelRun + 5 ? archFits : 0);
  const stretcherHeight =
    v.stretcherHeight ??
    clamp(under - BELOW_TREAD - stretcherWidth, 20, Math.max(USUAL.stretcherHeight, archHeight + ABOVE_ARCH));

  const height =
    v.height ??
    Math.max(
      USUAL.height[v.treads],
      stretcherHeight + stretcherWidth + BELOW_TREAD + treadThickness,
      v.treads === 2 ? 2 * (archHeight + ARCH_TO_TREAD + treadThickness) : 0,
      v.treads === 2 ? (v.lowerHeight ?? 0) + treadThickness + 60 : 0,
    );
  const lowerHeight = v.lowerHeight ?? height / 2;

  // along the floor: two feet and the arch between them
  const spread =
    ((v.treads === 1 ? height : lowerHeight) - treadThickness) * leaning({ splayDeg: v.taper }).outPerRise[0];
  const room = (depth: number) => (v.treads === 1 ? depth : 2 * depth) - 2 * v.setback + 2 * spread;
  const wished =
    2 * (v.footLength ?? USUAL.footLength) + Math.max(2 * (v.archRadius ?? USUAL.archRadius), LEAST_ARCH);
  const parts = v.treads;
  const treadDepth =
    v.treadDepth ??
    (archHeight === 0
      ? USUAL.treadDepth
      : Math.max(USUAL.treadDepth, Math.ceil((wished + 2 * v.setback - 2 * spread) / parts)));
  const between = room(treadDepth);
  const footLength =
    v.footLength ??
    clamp((between - Math.max(2 * (v.archRadius ?? 0), LEAST_ARCH)) / 2, 20, USUAL.footLength);
  const archRadius =
    v.archRadius ?? clamp(Math.min(archHeight, (between - 2 * footLength) / 2), 0, USUAL.archRadius);
  return {
    ...v,
    height,
    lowerHeight,
    treadDepth,
    treadThickness,
    sideThickness,
    archHeight,
    archRadius,
    footLength,
    stretcherWidth,
    stretcherThickness,
    stretcherHeight,
  };
}

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));

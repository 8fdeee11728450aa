import type * as z from 'zod';
import { leaning } from '../../src/frame/index.js';
import { PRACTICE } from '../../src/joinery/index.js';
import type { Tools } from '../../src/model/index.js';
import type { parameters } from './parameters.js';
import { USUAL, type Usual } from './usual.js';

/** What a person says of the stool; mm and degrees. */
export type StoolValues = z.infer<z.ZodObject<typeof parameters>>;

/** Worked out later: the shop has a say in the cutter, and every joint in its clearance. */
type Later = 'cutter' | 'edgeClearance';

/** The same with every other size that was left out worked out. */
export type StoolSizes = Pick<StoolValues, Later> & {
  [Size in Exclude<keyof StoolValues, Later>]-?: NonNullable<StoolValues[Size]>;
};

/** From the arch to the stretcher's lower edge, and from its upper edge to a tread: room for their mortises, mm. */
const ABOVE_ARCH = 40;
const BELOW_TREAD = 35;

/** A stool is at most this many times as high as its stretcher is wide, so that its joints bear a push sideways. Our own. */
const HEIGHT_TO_STRETCHER = 8;

/** From the arch to the underside of a tread, and straight wood between the arch's two corners, mm. */
const ARCH_TO_TREAD = 40;
const LEAST_ARCH = 20;

/** Every edge of a tread stands so far inside the line round the feet, mm. Common practice, no source. */
const INSIDE_FEET = 10;

/** Seat a row of more than two tenons wants, for each of them, mm. */
const TENON_SEAT = 32;

/**
 * Works out what was left out from what was given, so that one size asked for finds its neighbours ready for it. A size that was given is
 * never touched.
 */
export function sized(v: StoolValues, { units = 'mm' }: Pick<Tools, 'units'>): StoolSizes {
  const usual = USUAL[units];
  const walls = (v.cutter ?? 0) + 2 * PRACTICE.wall;
  const treadThickness = v.treadThickness ?? Math.max(usual.treadThickness, walls);
  const sideThickness = v.sideThickness ?? Math.max(usual.sideThickness, walls);
  const stretcherThickness = v.stretcherThickness ?? Math.max(usual.stretcherThickness, walls);
  const spreads = spreading(v, usual, treadThickness, sideThickness);
  const { rake, taper, setback } = spreads;
  const bevelRun = sideThickness * leaning({ splayDeg: rake }).outPerRise[0];

  // below a height that was given, what is left for stretcher and arch
  const under = v.height === undefined ? Number.POSITIVE_INFINITY : v.height - treadThickness;
  const lowest =
    v.treads === 1 ? under : (v.lowerHeight ?? (v.height ?? Number.POSITIVE_INFINITY) / 2) - treadThickness;
  const usualWidth = Math.max(
    usual.stretcherWidth,
    roundUp((v.height ?? 0) / HEIGHT_TO_STRETCHER, usual.step),
    v.stretcherTenons > 2 ? v.stretcherTenons * TENON_SEAT : 0,
  );
  const belowStretcher = v.stretcherHeight ?? 20;
  const stretcherWidth = v.stretcherWidth ?? clamp(under - BELOW_TREAD - belowStretcher, 40, usualWidth);
  const archRoom = Math.min(
    lowest - ARCH_TO_TREAD,
    (v.stretcherHeight ?? under - BELOW_TREAD - stretcherWidth) - 10,
  );
  const archWished = Math.max(usual.archHeight, v.archRadius ?? 0);
  const archFits = Math.min(archWished, archRoom);
  const archHeight = v.archHeight ?? (archFits > bevelRun + 5 ? archFits : 0);
  const stretcherHeight =
    v.stretcherHeight ??
    clamp(under - BELOW_TREAD - stretcherWidth, 20, Math.max(usual.stretcherHeight, archHeight + ABOVE_ARCH));

  const height =
    v.height ??
    Math.max(
      usual.height[v.treads],
      stretcherHeight + stretcherWidth + BELOW_TREAD + treadThickness,
      v.treads === 2 ? 2 * (archHeight + ARCH_TO_TREAD + treadThickness) : 0,
      v.treads === 2 ? (v.lowerHeight ?? 0) + treadThickness + 60 : 0,
    );
  const lowerHeight = v.lowerHeight ?? height / 2;

  // along the floor: two feet and the arch between them
  const spread =
    ((v.treads === 1 ? height : lowerHeight) - treadThickness) * leaning({ splayDeg: taper }).outPerRise[0];
  const room = (depth: number) => (v.treads === 1 ? depth : 2 * depth) - 2 * setback + 2 * spread;
  const wished =
    2 * (v.footLength ?? usual.footLength) + Math.max(2 * (v.archRadius ?? usual.archRadius), LEAST_ARCH);
  const parts = v.treads;
  const treadDepth =
    v.treadDepth ??
    (archHeight === 0
      ? usual.treadDepth
      : Math.max(usual.treadDepth, roundUp((wished + 2 * setback - 2 * spread) / parts, usual.step)));
  const between = room(treadDepth);
  const footLength =
    v.footLength ??
    clamp((between - Math.max(2 * (v.archRadius ?? 0), LEAST_ARCH)) / 2, 20, usual.footLength);
  const archRadius =
    v.archRadius ?? clamp(Math.min(archHeight, (between - 2 * footLength) / 2), 0, usual.archRadius);
  return {
    ...v,
    ...spreads,
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

/**
 * How far the sides lean and spread, and how far the treads reach beyond them, so that the feet stand outside every edge: what was
 * given is never touched, and what was not makes up for it.
 */
function spreading(v: StoolValues, usual: Usual, treadThickness: number, sideThickness: number) {
  const under =
    (v.treads === 1 ? (v.height ?? usual.height[1]) : (v.lowerHeight ?? (v.height ?? usual.height[2]) / 2)) -
    treadThickness;
  const halves = (out: number, up: number): number =>
    Math.ceil((2 * Math.atan2(out, up) * 180) / Math.PI) / 2;
  const rake =
    v.rake ??
    (v.overhang === undefined
      ? usual.rake
      : clamp(halves(v.overhang + INSIDE_FEET, under), usual.rake, STEEPEST.rake));
  const lean = leaning({ splayDeg: rake });
  const overhang =
    v.overhang ?? clamp(roundDown(under * lean.outPerRise[0] - INSIDE_FEET, usual.step), 0, usual.overhang);
  const length = under * lean.lengthPerRise + sideThickness * lean.outPerRise[0];
  const taper = v.taper ?? clamp(halves((v.setback ?? 0) + INSIDE_FEET, length), usual.taper, STEEPEST.taper);
  const spread = length * leaning({ splayDeg: taper }).outPerRise[0];
  const setback = v.setback ?? clamp(roundDown(spread - INSIDE_FEET, usual.step), 0, usual.setback);
  return { rake, overhang, taper, setback };
}

/** The ends of the ranges, degrees. */
const STEEPEST = { rake: 20, taper: 10 } as const;

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));

const roundUp = (value: number, step: number): number => Math.ceil(value / step) * step;
const roundDown = (value: number, step: number): number => Math.floor(value / step) * step;

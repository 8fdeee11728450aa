import { type ErrorText, InputError } from '../../src/errors.js';
import { type Lean, leaning } from '../../src/frame/index.js';
import { PRACTICE } from '../../src/joinery/index.js';
import type { Tools } from '../../src/model/index.js';
import { nearestCutter } from '../../src/tables/index.js';
import type { StoolSizes } from './sizes.js';

/** Where everything lies: assembly frame, mm; x = 0 in the middle, y = 0 in the middle of the top of a side. */
export interface Layout {
  readonly material: string;
  /** Diameter, mm. */
  readonly cutter: number;
  /** Of the right side, outwards. */
  readonly lean: Lean;
  readonly side: {
    readonly thickness: number;
    /** Along the grain, long point to long point. */
    readonly length: number;
    /** How far a bevelled end runs along the grain, through the thickness. */
    readonly bevelRun: number;
  };
  readonly topFront: number;
  readonly topBack: number;
  readonly footFront: number;
  readonly footBack: number;
  readonly arch: { height: number; radius: number; from: number; to: number } | undefined;
  readonly step: Step | undefined;
  readonly treads: readonly Tread[];
  /** Height of the top of the sides. */
  readonly under: number;
  readonly stretcher: { width: number; thickness: number; height: number; middle: number };
  /** Distance from the middle to a side's outer face at a height. */
  readonly outerAt: (height: number) => number;
}

/** The lower seat of a stepped side, measured up the grain and in assembly y. */
export interface Step {
  /** Whether it is sawn out of one board; built of two when not. */
  readonly sawn: boolean;
  /** Height of the seat, and how far up the grain its long point lies. */
  readonly under: number;
  readonly seat: number;
  readonly front: number;
  readonly riser: number;
  readonly radius: number;
}

export interface Tread {
  readonly id: string;
  readonly length: number;
  readonly front: number;
  readonly back: number;
  /** Height of its underside. */
  readonly under: number;
}

/** Air kept between the lower tread's back edge and the riser, or the rounded corner of a sawn step. */
const CORNER_AIR = 1;

/** @throws InputError when sizes that are each in range do not go together */
export function layOut(v: StoolSizes, { cutters }: Tools): Layout {
  const lean = leaning({ splayDeg: v.rake });
  const [spread] = leaning({ splayDeg: v.taper }).outPerRise;
  const { height } = v;
  const under = height - v.treadThickness;
  const bevelRun = v.sideThickness * lean.outPerRise[0];
  const length = under * lean.lengthPerRise + bevelRun;
  const topOuter = v.treadLength / 2 - v.overhang;
  const outerAt = (z: number) => topOuter + (under - z) * lean.outPerRise[0];
  const innerTop = topOuter - v.sideThickness * lean.lengthPerRise;
  require(innerTop >= 40, 'tread-length', (say) =>
    `tread-length ${say.fine(v.treadLength)} with overhang ${say.fine(v.overhang)} and side-thickness ${say.fine(v.sideThickness)} leaves ${say.lengths(Math.max(2 * innerTop, 0), 80)[0]} between the sides at the top; it must leave at least ${say.lengths(Math.max(2 * innerTop, 0), 80)[1]}: lengthen the tread or shorten the overhang`);

  const topFront = -v.treadDepth / 2 + v.setback;
  const topBack = v.treadDepth / 2 - v.setback;
  const upper: Tread = {
    id: v.treads === 1 ? 'tread' : 'upper-tread',
    length: v.treadLength,
    front: -v.treadDepth / 2,
    back: v.treadDepth / 2,
    under,
  };
  const footBack = topBack + length * spread;
  const lower = v.treads === 2 ? stepOf(v, height, topFront, { bevelRun, lean, outerAt }) : undefined;
  const footFront = lower ? lower.step.front - lower.step.seat * spread : topFront - length * spread;

  const arch = archOf(v, footFront, footBack, bevelRun);
  const lowest = lower ? lower.tread.under : under;
  require(v.stretcherHeight + v.stretcherWidth <= under, 'stretcher-height', (say) =>
    `stretcher-height ${say.fine(v.stretcherHeight)} and stretcher-width ${say.fine(v.stretcherWidth)} put the top of the stretcher ${say.lengths(v.stretcherHeight + v.stretcherWidth, under)[0]} above the floor; the underside of the tread is at ${say.lengths(v.stretcherHeight + v.stretcherWidth, under)[1]}: lower the stretcher or make it narrower`);
  require(lowest >= (arch?.height ?? 0) + 30, 'arch-height', (say) =>
    `the arch, ${say.fine(v.archHeight)} high, comes within ${say.fine(30)} of the underside of a tread, at ${say.length(lowest)}: lower arch-height`);
  return {
    material: v.wood,
    cutter:
      v.cutter ??
      nearestCutter(
        Math.min(v.treadThickness, v.sideThickness, v.stretcherThickness) * PRACTICE.tenonShare,
        cutters,
      ),
    lean,
    side: { thickness: v.sideThickness, length, bevelRun },
    topFront,
    topBack,
    footFront,
    footBack,
    arch,
    step: lower?.step,
    under,
    treads: lower ? [upper, lower.tread] : [upper],
    stretcher: {
      width: v.stretcherWidth,
      thickness: v.stretcherThickness,
      height: v.stretcherHeight,
      middle: (topFront + topBack) / 2,
    },
    outerAt,
  };
}

function stepOf(
  v: StoolSizes,
  height: number,
  topFront: number,
  { bevelRun, lean, outerAt }: { bevelRun: number } & Pick<Layout, 'lean' | 'outerAt'>,
): { step: Step; tread: Tread } {
  const { lowerHeight } = v;
  const under = lowerHeight - v.treadThickness;
  require(height - lowerHeight >= v.treadThickness + 60 && under >= 60, 'lower-height', (say) =>
    `lower-height ${say.fine(lowerHeight)} leaves ${say.length(height - lowerHeight - v.treadThickness)} between the treads and ${say.length(under)} below the lower one; both must be at least ${say.fine(60)}: change height or lower-height`);
  const sawn = v.steppedSide === 'one-board';
  const radius = sawn ? v.notchRadius : 0;
  const back = topFront - radius - CORNER_AIR;
  const front = back - v.treadDepth;
  const seat = under * lean.lengthPerRise + bevelRun;
  return {
    step: { sawn, under, seat, front: front + v.setback, riser: topFront, radius },
    tread: { id: 'lower-tread', length: 2 * (outerAt(under) + v.overhang), front, back, under },
  };
}

function archOf(v: StoolSizes, footFront: number, footBack: number, bevelRun: number): Layout['arch'] {
  if (v.archHeight === 0) return undefined;
  const from = footFront + v.footLength;
  const to = footBack - v.footLength;
  require(to - from >= Math.max(2 * v.archRadius, 20), 'foot-length', (say) =>
    `foot-length ${say.fine(v.footLength)} leaves ${say.lengths(Math.max(to - from, 0), Math.max(2 * v.archRadius, 20))[0]} between the feet; the arch needs ${say.lengths(Math.max(to - from, 0), Math.max(2 * v.archRadius, 20))[1]} for its two corners: shorten the feet, make arch-radius smaller, or set arch-height to 0`);
  require(v.archRadius <= v.archHeight, 'arch-radius', (say) =>
    `arch-radius ${say.fines(v.archRadius, v.archHeight)[0]} is more than arch-height ${say.fines(v.archRadius, v.archHeight)[1]}: make the radius smaller or the arch higher`);
  require(v.archHeight > bevelRun, 'arch-height', (say) =>
    `arch-height ${say.lengths(v.archHeight, bevelRun)[0]} is no more than the ${say.lengths(v.archHeight, bevelRun)[1]} that the foot's bevel takes: raise it, or set it to 0`);
  return { height: v.archHeight, radius: v.archRadius, from, to };
}

/** @param name of the size that is told to be wrong */
function require(sound: boolean, name: string, text: ErrorText): void {
  if (!sound) throw new InputError('sizes-disagree', text, { of: 'size', name });
}

import type { Say } from '../../length/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { type CutterAtHand, cutterAtHand, type Shop, type Verdict } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';

/** Which way the grain runs at a mortise's mouth: the cutter cuts a different width in each. */
export type SlotGrain = 'face grain' | 'end grain';

/** The width a cutter really cuts, and how far it is known. */
export interface SlotWidth {
  readonly cutter: number;
  /** mm; the smaller of what was measured, the nominal diameter when nothing was. */
  readonly width: number;
  readonly governs: SlotGrain | 'nominal diameter';
  readonly verdict: Verdict;
  readonly text: string;
  /** Said when the two kinds of grain differ too much for one tenon. */
  readonly warning: string | undefined;
}

/**
 * The slot a tenon has to fit.
 *
 * @param cutter nominal diameter, mm
 * @param grains those of the mortises the tenon goes into
 */
export function slotWidthOf(shop: Shop, cutter: number, grains: readonly SlotGrain[], say: Say): SlotWidth {
  const at = cutterAtHand(shop, cutter);
  const measured = grains.flatMap((grain) => {
    const width = at && slotIn(at, grain);
    return width === undefined ? [] : [{ grain, width }];
  });
  const missing = grains.filter((grain) => !measured.some((one) => one.grain === grain));
  const least = measured.toSorted((a, b) => a.width - b.width)[0];
  const both = { face: at?.slotInFace, end: at?.slotInEnd };
  const apart = both.face !== undefined && both.end !== undefined ? Math.abs(both.face - both.end) : 0;
  return {
    cutter,
    width: least?.width ?? cutter,
    governs: least?.grain ?? 'nominal diameter',
    verdict: missing.length === 0 ? 'passed' : 'not verified',
    text:
      missing.length === 0
        ? `slots of the ${say.fine(cutter)} cutter were measured; the narrower, ${say.fine(least!.width)} in ${least!.grain}, governs`
        : `no slot of the ${say.fine(cutter)} cutter was measured in ${missing.join(' or in ')}: cut one in an offcut, measure it and write it in the shop file`,
    warning:
      apart > STOCK_PRACTICE.slotDifference + SAME_POINT && grains.length > 1
        ? `the ${say.fine(cutter)} cutter cuts ${say.fine(both.face!)} wide in face grain and ${say.fine(both.end!)} in end grain, ${say.fine(apart)} apart; up to ${say.fine(STOCK_PRACTICE.slotDifference)} one tenon fits both: look for a loose collet or a blunt cutter, then cut the test slots again`
        : undefined,
  };
}

const slotIn = (cutter: CutterAtHand, grain: SlotGrain): number | undefined =>
  grain === 'face grain' ? cutter.slotInFace : cutter.slotInEnd;

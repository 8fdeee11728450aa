import { speaker } from '../../length/index.js';
import { cutterAtHand, type Shop } from '../at-hand/index.js';
import type { LaidIn } from '../holding/index.js';
import type { Figure } from './setup-card.js';

/** The slot the cutter cuts in the wood of these mouths, as measured; the narrower of two kinds of grain. */
export function cardSlot(
  group: readonly LaidIn[],
  shop: Shop,
): { readonly width: number; readonly figure: Figure } {
  const nominal = group[0]!.holding.mortise.width;
  const cutter = cutterAtHand(shop, nominal);
  const grains = [...new Set(group.map(({ mouth }) => (mouth.grain === 'end' ? 'end' : 'face')))];
  const measured = grains.map((grain) => (grain === 'end' ? cutter?.slotInEnd : cutter?.slotInFace));
  const known = measured.filter((width) => width !== undefined);
  const complete = known.length === grains.length;
  const width = known.length > 0 ? Math.min(...known) : (cutter?.diameter ?? nominal);
  return {
    width,
    figure: {
      name: 'slot width',
      needed: nominal,
      available: known.length > 0 ? width : undefined,
      verdict: complete ? 'passed' : 'not verified',
      text: complete
        ? `a test slot in ${grains.join(' and ')} grain measured ${speaker(shop.units).fit(width)}`
        : `cut a test slot in ${grains.join(' and ')} grain, write its width into the shop file; until then the fit is a guess`,
    },
  };
}

import { cutterAtHand } from '../../shop/index.js';
import { nearestCutter } from '../../tables/index.js';
import type { Bench } from '../bench/index.js';
import type { Finding } from '../finding/index.js';

/** Every joint can be cut with a cutter the shop has; a shop that names none is not judged. */
export function cuttersAtHand({ solids, held, say }: Bench): readonly Finding[] {
  if (!held || held.shop.cutters.length === 0) return [];
  const { shop } = held;
  const owned = shop.cutters.map(({ nominal }) => nominal);
  const { joints } = solids.design;
  const lacking = [...new Set(joints.map(({ cutter }) => cutter))].filter(
    (cutter) => cutterAtHand(shop, cutter) === undefined,
  );
  return lacking.map((cutter): Finding => {
    const mine = joints.filter((joint) => joint.cutter === cutter).map(({ id }) => id);
    const nearest = nearestCutter(cutter, owned);
    const texts = say.fines(cutter, ...owned);
    const has = (size: number) => texts[[cutter, ...owned].indexOf(size)]!;
    return {
      code: 'cutter-not-at-hand',
      level: 'warning',
      subjects: mine,
      measured: cutter,
      limit: nearest,
      unit: 'mm',
      message: `${mine.length === 1 ? `joint ${mine[0]} needs` : `${mine.length} joints need`} a ${has(cutter)} cutter, and ${shop.name} has none; it has ${owned.map(has).join(', ')}`,
      remedy: `use the nearest at hand, ${has(nearest)}, or get a ${has(cutter)} cutter and write it in the shop file`,
      basis: 'the cutters the shop file names',
    };
  });
}

import type { Mortise } from '../../board/index.js';
import type { Say } from '../../length/index.js';
import { cutterAtHand, type Shop } from '../at-hand/index.js';
import { COLLET_GRIP_DIAMETERS } from '../practice/index.js';
import type { BrokenLimit, LimitCode } from './holding.js';

/**
 * What the router and the cutter at hand cannot do at a mortise. What the shop file does not say breaks nothing here: the
 * set-up card tells it as not verified.
 *
 * @param through thickness between the router's base and the work, mm: the jig's plate, a template, or nothing
 */
export function toolLimits(mortise: Mortise, through: number, shop: Shop, say: Say): readonly BrokenLimit[] {
  const { router } = shop;
  const below = through + mortise.depth;
  const cutter = cutterAtHand(shop, mortise.width);
  const broken: BrokenLimit[] = [];
  const mm = say.length;
  const add = (
    code: LimitCode,
    measured: number,
    limit: number,
    text: (needs: string, has: string) => string,
    remedy: string,
  ) => broken.push({ code, measured, limit, message: text(...say.lengths(measured, limit)), remedy });
  if (router.plungeTravel !== undefined && below > router.plungeTravel) {
    add(
      'plunge-travel',
      below,
      router.plungeTravel,
      (needs, has) =>
        `the router must plunge ${needs}, through ${mm(through)} of plate and ${mm(mortise.depth)} of wood; it plunges only ${has}`,
      `make the mortise ${say.lengths(below - router.plungeTravel)[0]} shallower, or the plate thinner`,
    );
  }
  if (cutter?.cuttingLength !== undefined && cutter.cuttingLength < mortise.depth && rubs(cutter)) {
    add(
      'cutting-length',
      mortise.depth,
      cutter.cuttingLength,
      (needs, has) =>
        `the cutter's edges must be ${needs} long to reach the bottom of the mortise; they are only ${has} long`,
      `take a cutter with edges ${mm(mortise.depth)} long, or make the mortise shallower`,
    );
  }
  if (
    cutter?.overallLength !== undefined &&
    cutter.shank !== undefined &&
    router.baseThickness !== undefined
  ) {
    const needed = COLLET_GRIP_DIAMETERS * cutter.shank + router.baseThickness + below;
    if (needed > cutter.overallLength) {
      add(
        'cutter-length',
        needed,
        cutter.overallLength,
        (needs, has) =>
          `to reach from the collet through base and plate to the bottom of the mortise, the cutter must be ${needs} long; it is only ${has} long`,
        `take a cutter at least ${mm(needed)} long, a thinner plate, or a shallower mortise`,
      );
    }
  }
  return broken;
}

/** A shank as thick as the cutter or thicker rubs on the walls above the edges; a thinner one goes down freely. */
const rubs = (cutter: { readonly shank?: number; readonly nominal: number }): boolean =>
  cutter.shank === undefined || cutter.shank >= cutter.nominal;

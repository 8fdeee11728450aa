import { obround } from '../../profile/index.js';
import type { SetupCard } from '../../shop/index.js';
import { COLOURS, round, type SetUpBench } from './set-up-bench.js';
import { BASE, PLATE, RAIL } from './set-up-size.js';

/** mm at full size, our own: radii of base, body and rod, how high the body hangs over the base when the cutter is down, its height. */
const [ROUND, BODY, ROD, OVER, HIGH] = [70, 32, 4, 12, 44];

/** The turret: how far out it stands, its lowest step, and half a depth block, mm. */
const [OUT, STEP, HALF] = [48, 6, 9];

/** Plate or template and router of a card as depth is zeroed: the cutter on the wood, the depth block between turret and stop rod. */
export function routerParts(card: SetupCard, on: SetUpBench): void {
  const { nearRail, farRail, guideOffset, window, cutter, depth, travelling, mortiseLength } = card;
  const half = travelling.along / 2;
  const carrier = standsOn(card);
  if (nearRail || farRail) {
    const side = (rail: typeof nearRail) => (rail?.distance ?? 42) + RAIL + 2;
    const plate = on.block([-half, -side(nearRail), 0], [half, side(farRail), PLATE]);
    on.put('plate', on.halved(on.opened(plate, round(cutter + 10))), COLOURS.plate);
  }
  if (window) {
    const { bush } = window;
    const long = mortiseLength + bush - cutter;
    const slab = on.block([-long / 2 - 30, -55, 0], [0, 55, BASE]);
    on.put('template', on.halved(on.opened(slab, obround({ length: long, width: bush }))), COLOURS.aid);
    const ring = on.opened(on.solid(round(bush), 1, carrier), round(cutter + 3));
    on.put('guide bush', on.halved(ring), COLOURS.steel);
  }
  const top = carrier + BASE;
  const reach = guideOffset ?? Math.min(ROUND, half);
  const base = on.opened(on.solid(round(2 * reach), carrier, top), round(cutter + 10));
  on.put("router's base", on.halved(base), COLOURS.steel);
  const body = top + OVER + depth;
  on.put('router', on.solid(round(2 * BODY), body, body + HIGH), COLOURS.router);
  on.put('cutter', on.solid(round(cutter), 0, body), COLOURS.steel);
  const foot = top + STEP + depth;
  on.put('turret', on.solid(round(34, [0, OUT]), top, top + STEP), COLOURS.router);
  on.put('depth block', on.block([-HALF, OUT - HALF, top + STEP], [HALF, OUT + HALF, foot]), COLOURS.aid);
  on.put('stop rod', on.solid(round(2 * ROD, [0, OUT]), foot, body + HIGH), COLOURS.steel);
}

/** Thickness of what the router stands on, mm: the jig's plate, a template, or the wood itself. */
export const standsOn = ({ nearRail, farRail, window }: SetupCard): number =>
  nearRail || farRail ? PLATE : window ? BASE : 0;

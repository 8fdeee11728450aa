import { cross, dot, scale, type Vec3 } from '../../frame/index.js';
import type { LaidIn } from '../holding/index.js';

/**
 * The axis a router's cutter turns about, right-handed, the router upright: clockwise seen from above, as the arrows on bases
 * and fences show. All words about feed follow from it. Common knowledge of the trade, no source.
 */
const SPIN: Vec3 = [0, 0, -1];

/** As the person stands at the work: x to the right, y away, z up. */
const RIGHT: Vec3 = [1, 0, 0];

/**
 * Which way the wood pushes the router sideways: the cutter's foremost edge sweeps across the feed, and the wood stands against
 * it.
 *
 * @param feed the way the router is moved, unit; x to the right, y away from the person, z up
 * @returns unit
 */
const sidePush = (feed: Vec3): Vec3 => scale(cross(SPIN, feed), -1);

/** The feed that presses the router away from the person or towards them, as words. */
export const feedPressing = (which: 'away' | 'towards'): 'from left to right' | 'from right to left' =>
  sidePush(RIGHT)[1] > 0 === (which === 'away') ? 'from left to right' : 'from right to left';

/**
 * Which way to feed, the work lying in the jig as the card says: a guide is safe when the push of the cut closes it. A rail
 * hangs outside the work and is closed by a push across the work, a guide board by a push against it.
 */
export function feedWords({ holding, near, far }: Pick<LaidIn, 'holding' | 'near' | 'far'>): string {
  switch (holding.way) {
    case 'both rails':
      return `${feedPressing('away')}, the near rail towards you; the work is trapped between the rails, so the way back may cut lightly too`;
    case 'one rail': {
      const side = near === undefined && far !== undefined ? 'far' : 'near';
      return `${feedPressing(side === 'near' ? 'away' : 'towards')} only, the rail ${side === 'near' ? 'on your side of the work' : 'beyond the work'}: the cut then pulls the rail against the work; lift the cutter for the way back`;
    }
    case 'guide board':
      return `${feedPressing('away')} only, the guide board beyond the router: the cut then pushes the base against it; lift the cutter for the way back`;
    case 'windowed template':
      return 'from left to right and back: the opening is no wider than the bush, which traps it; raise the cutter out of the wood before you lift the router';
  }
}

/** With the router's own edge guide: its fence hangs outside the edge, so the push has to go across the work. */
export const EDGE_GUIDE_FEED = `turn the work until that edge is towards you, the fence against it, and feed ${feedPressing('away')} only: the cut then pulls the fence against the edge; lift the cutter for the way back`;

/**
 * Which way round to rout along a template, seen from above: the cutter's edge on the wood must run the way of the feed, or it
 * climbs and takes the router with it.
 *
 * @param wood whether the wood that stays lies inside the line, as a board in its outline, or outside, as round an opening
 */
export function feedRound(wood: 'inside' | 'outside'): 'counter-clockwise' | 'clockwise' {
  const feed = RIGHT;
  const left = cross([0, 0, 1], feed);
  const keepLeft = dot(cross(SPIN, left), feed) > 0;
  // with the wood on the left, one goes round a board counter-clockwise and round the inside of an opening clockwise
  return keepLeft === (wood === 'inside') ? 'counter-clockwise' : 'clockwise';
}

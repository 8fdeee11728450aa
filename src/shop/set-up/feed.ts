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
      return `${feedPressing('away')}, the near rail towards you`;
    case 'one rail': {
      const side = near === undefined && far !== undefined ? 'far' : 'near';
      return `${feedPressing(side === 'near' ? 'away' : 'towards')} only, the rail ${side === 'near' ? 'on your side of the work' : 'beyond the work'}`;
    }
    case 'guide board':
      return `${feedPressing('away')} only, the guide board beyond the router`;
    case 'windowed template':
      return 'from left to right and back';
  }
}

/** What holds for every card of a way, besides which way to feed: said once, before them. */
export const FEED_OF: Readonly<Record<LaidIn['holding']['way'], string>> = {
  'both rails': `Feed between two rails: the near rail towards you, ${feedPressing('away')}; the work is trapped, and the way back may cut lightly too.`,
  'one rail':
    'Feed along one rail: only the way the card says: the cut then pulls the rail against the work; lift the cutter for the way back.',
  'guide board':
    'Feed along a guide board: only the way the card says: the cut then pushes the base against it; lift the cutter for the way back.',
  'windowed template':
    'Feed in a windowed template: from end to end and back: the opening is no wider than the bush, which traps it; raise the cutter out of the wood before you lift the router.',
};

/** With the router's own edge guide: its fence hangs outside the edge, so the push has to go across the work. */
export const EDGE_GUIDE_FEED = `Or by edge guide, where the row of a mortise names an edge for it: turn the work until that edge is towards you, the fence against it, and feed ${feedPressing('away')} only: the cut then pulls the fence against the edge; lift the cutter for the way back.`;

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

import type { Mortise } from '../../board/index.js';
import type { Say } from '../../length/index.js';
import type { JigAtHand, RailAtHand } from '../at-hand/index.js';
import type { Bearing } from './bearing.js';
import type { BrokenLimit } from './holding.js';

/** Slack of a limit against rounding: the last bit of a sum must not refuse a set-up. */
const ROUNDING = 1e-6;

/**
 * Which limits of the jig two bearings break: how far each rail goes out, how near it comes to the cutter, and the gap between
 * both.
 */
export function railLimits(
  given: { readonly near?: Bearing; readonly far?: Bearing },
  mortise: Mortise,
  jig: JigAtHand,
  say: Say,
): readonly BrokenLimit[] {
  const { near, far } = given;
  const broken = [
    ...(near ? oneRail('near', near, jig.near, mortise, say) : []),
    ...(far ? oneRail('far', far, jig.far, mortise, say) : []),
  ];
  if (!near || !far) return broken;
  const gap = near.toRail + far.toRail;
  const work = near.wedge || far.wedge ? 'the work and its wedges are' : 'the work is';
  if (gap > jig.grip.most + ROUNDING) {
    broken.push({
      code: 'grip-too-wide',
      measured: gap,
      limit: jig.grip.most,
      message: `${work} ${say.length(gap)} thick between the rails, which open to ${say.length(jig.grip.most)}`,
      remedy: `lengthen the jig's slots by ${say.length(gap - jig.grip.most)}, or hold it against one rail`,
    });
  }
  if (gap < jig.grip.least - ROUNDING) {
    broken.push({
      code: 'grip-too-narrow',
      measured: gap,
      limit: jig.grip.least,
      message: `${work} ${say.length(gap)} thick between the rails, which close to ${say.length(jig.grip.least)}`,
      remedy: `add a straight packing ${say.length(jig.grip.least - gap)} thick beside it, or use smaller knobs or wider rails`,
    });
  }
  return broken;
}

function oneRail(
  which: 'near' | 'far',
  bearing: Bearing,
  rail: RailAtHand,
  mortise: Mortise,
  say: Say,
): BrokenLimit[] {
  const least = mortise.width / 2 + rail.cutterAir;
  const stands = `the ${which} rail must stand ${say.length(bearing.toRail)} from the cutter`;
  if (bearing.toRail > rail.most + ROUNDING) {
    return [
      {
        code: 'rail-reach',
        measured: bearing.toRail,
        limit: rail.most,
        message: `${stands}; it reaches ${say.length(rail.most)}`,
        remedy: `lengthen the jig's slots by ${say.length(2 * (bearing.toRail - rail.most))}, or guide the router along a board`,
      },
    ];
  }
  if (bearing.toRail < least - ROUNDING) {
    return [
      {
        code: 'rail-near-cutter',
        measured: bearing.toRail,
        limit: least,
        message: `${stands}; a turning cutter ${say.length(mortise.width)} thick needs ${say.length(least)}`,
        remedy: `add a straight packing ${say.length(least - bearing.toRail)} thick, or take a thinner cutter`,
      },
    ];
  }
  return [];
}

import type { Mortise } from '../../board/index.js';
import type { Say } from '../../length/index.js';
import { LIMIT_ROUNDING } from '../../tolerances.js';
import type { JigAtHand, RailAtHand } from '../at-hand/index.js';
import type { Bearing } from './bearing.js';
import type { BrokenLimit } from './holding.js';

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
  const work = near.wedge || far.wedge ? 'the work with its wedges is' : 'the work is';
  if (gap > jig.grip.most + LIMIT_ROUNDING) {
    const [thick, most, over] = say.lengths(gap, jig.grip.most, gap - jig.grip.most);
    broken.push({
      code: 'grip-too-wide',
      measured: gap,
      limit: jig.grip.most,
      message: `${work} ${thick} thick, and the rails open to only ${most}`,
      remedy: `lengthen the jig's slots by ${over}, or hold it against one rail`,
    });
  }
  if (gap < jig.grip.least - LIMIT_ROUNDING) {
    const [thick, least, packing] = say.lengths(gap, jig.grip.least, jig.grip.least - gap);
    broken.push({
      code: 'grip-too-narrow',
      measured: gap,
      limit: jig.grip.least,
      message: `${work} ${thick} thick, and the rails close to no less than ${least}`,
      remedy: `put a straight packing ${packing} thick beside it, or use smaller knobs or wider rails`,
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
  const must = (reach: string) => `the ${which} rail must stand ${reach} from the cutter`;
  if (bearing.toRail > rail.most + LIMIT_ROUNDING) {
    const longer = 2 * (bearing.toRail - rail.most);
    const [reach, most, by] = say.lengths(bearing.toRail, rail.most, longer);
    return [
      {
        code: 'rail-reach',
        measured: bearing.toRail,
        limit: rail.most,
        message: `${must(reach)} and reaches only ${most}`,
        remedy: `lengthen the jig's slots by ${by}, or guide the router along a board`,
      },
    ];
  }
  if (bearing.toRail < least - LIMIT_ROUNDING) {
    const [reach, needed, packing] = say.lengths(bearing.toRail, least, least - bearing.toRail);
    return [
      {
        code: 'rail-near-cutter',
        measured: bearing.toRail,
        limit: least,
        message: `${must(reach)}, but a cutter ${say.length(mortise.width)} across needs ${needed} to turn clear of it`,
        remedy: `put a straight packing ${packing} thick between rail and work, or take a thinner cutter`,
      },
    ];
  }
  return [];
}

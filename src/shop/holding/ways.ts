import type { Say } from '../../length/index.js';
import type { Region } from '../../profile/index.js';
import {
  baseOf,
  type JigAtHand,
  plateOf,
  type Shop,
  stopDistance,
  type Travelling,
} from '../at-hand/index.js';
import { GUIDE_WOOD, WEDGE_BEYOND, WOOD_AIR } from '../practice/index.js';
import { type Bearing, bearings } from './bearing.js';
import { type Guide, guideHolds, guides } from './guide.js';
import type { BrokenLimit, Holding } from './holding.js';
import { clearWay, inTheWay, woodAbove } from './obstacle.js';
import { railLimits } from './rail-limits.js';
import { toolLimits } from './tool-limits.js';
import { type Window, windowFor } from './window.js';
import type { Work } from './work-at-stage.js';

/** What a mortise can be held with, asked once for a whole design. */
export interface AtHand {
  readonly jig: JigAtHand;
  readonly shop: Shop;
  readonly say: Say;
  /** Longest mortise of the design: one guide board serves all. */
  readonly longest: number;
}

/** One way to hold a mortise at a stage, with the limits it breaks. */
export interface Way {
  readonly way: Holding['way'];
  readonly wedged: boolean;
  /** 0 needs least: both rails, one rail, both with wedges, one with a wedge, guide board, template. */
  readonly rank: number;
  readonly work: Work;
  readonly near?: Bearing;
  readonly far?: Bearing;
  readonly guide?: Guide;
  readonly window?: Window;
  readonly travelling: Travelling;
  readonly stopDistance: number;
  readonly broken: readonly BrokenLimit[];
}

/** Every way to hold a mortise at a stage between the rails or against one, sound or not. */
export function railWays(work: Work, hand: AtHand): readonly Way[] {
  const { jig } = hand;
  const plate = plateOf(jig);
  const travel = (work.mortise.length - work.mortise.width) / 2;
  const reach = { halfLength: jig.near.length / 2 + travel, height: jig.near.height };
  const wedgeLength = 10 * Math.ceil((work.mortise.length + 2 * WEDGE_BEYOND) / 10);
  const near = bearings(work, 'near', reach, wedgeLength);
  const far = bearings(work, 'far', reach, wedgeLength);
  const shared = commonLimits(work, plate, woodAbove(work), hand);
  const wayOf = (given: { near?: Bearing; far?: Bearing }): Way => {
    const both = given.near !== undefined && given.far !== undefined;
    const wedged = [given.near, given.far].some((bearing) => bearing?.wedge);
    return {
      ...given,
      way: both ? 'both rails' : 'one rail',
      wedged,
      rank: (both ? 0 : 1) + (wedged ? 2 : 0),
      work,
      ...shared,
      broken: [...railLimits(given, work.mortise, hand.jig, hand.say), ...shared.broken],
    };
  };
  return [
    ...near.flatMap((one) => far.map((other) => wayOf({ near: one, far: other }))),
    ...near.map((one) => wayOf({ near: one })),
    ...far.map((one) => wayOf({ far: one })),
  ];
}

/** Ways to hold a mortise without rails: along a guide board, in a windowed template. */
export function freeWays(work: Work, hand: AtHand): readonly Way[] {
  const { shop, say } = hand;
  const base = baseOf(shop.router);
  const above = woodAbove(work);
  const common = { wedged: false, work };
  const guided = guides(work, shop.router, hand.longest).map((guide): Way => {
    const shared = commonLimits(work, base, above, hand);
    const [wood, needed] = say.lengths(guide.wood, GUIDE_WOOD);
    const broken: readonly BrokenLimit[] = guideHolds(guide)
      ? []
      : [
          {
            code: 'guide-wood',
            measured: guide.wood,
            limit: GUIDE_WOOD,
            message: `there is ${wood} of wood beside the mortise to clamp a guide board to; it needs ${needed}`,
            remedy: 'clamp a block of the same height beside the work, or open the jig until a rail reaches',
          },
        ];
    return {
      ...common,
      ...shared,
      way: 'guide board',
      rank: 4,
      guide,
      broken: [...broken, ...shared.broken],
    };
  });
  const window = windowFor(work.mortise, shop);
  if (!window) return guided;
  const shared = commonLimits(work, { ...base, thickness: window.thickness }, above, hand);
  const [x, y] = [window.along / 2, window.across / 2];
  const blocked = inTheWay(above, [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ]);
  const broken: readonly BrokenLimit[] = blocked
    ? [
        {
          code: 'template-meets-work',
          measured: x,
          limit: Math.min(...clearWay(above, { ...base, along: 2 * x, across: 2 * y })),
          message: 'wood that stands above the mouth is in the way of the template',
          remedy: 'cut this mortise before the parts are glued together, or chop it by hand',
        },
      ]
    : [];
  return [
    ...guided,
    {
      ...common,
      ...shared,
      way: 'windowed template',
      rank: 5,
      window,
      broken: [...broken, ...shared.broken],
    },
  ];
}

/** Travel, wood in its way, and what router and cutter can do. */
function commonLimits(
  work: Work,
  travelling: Travelling,
  above: readonly Region[],
  { shop, say }: AtHand,
): { travelling: Travelling; stopDistance: number; broken: readonly BrokenLimit[] } {
  const { mortise } = work;
  const stop = stopDistance(mortise.length, travelling.along, mortise.width);
  const clear = Math.min(...clearWay(above, travelling));
  const needed = stop + WOOD_AIR;
  const meets = (needs: string, at: string) =>
    `the ${travelling.what} needs ${needs} of room from the mortise's centre, and ${at} away it meets wood that stands above the mouth`;
  const blocked: BrokenLimit[] =
    clear < needed
      ? [
          {
            code: travelling.what === 'jig plate' ? 'plate-meets-work' : 'base-meets-work',
            measured: needed,
            limit: clear,
            message: meets(...say.lengths(needed, clear)),
            remedy:
              'cut this mortise while that wood is a piece of its own and glue it on afterwards, use a smaller base, or chop it by hand',
          },
        ]
      : [];
  return {
    travelling,
    stopDistance: stop,
    broken: [...blocked, ...toolLimits(mortise, travelling.thickness, shop, say)],
  };
}

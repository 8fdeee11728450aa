import {
  FOOT_PATCH,
  GRAVITY,
  leanAngle,
  type Standing,
  tippingForce,
  tippingLoad,
} from '../statics/index.js';
import type { Asked } from './asked.js';
import { type Reach, reaches } from './foot-line.js';
import { type Margin, NOTHING, together, type Worked } from './margin.js';
import type { Resting } from './resting.js';
import type { UsedSurface } from './used-surface.js';

/** Room wanted between an edge somebody stands on and the foot line, mm. Common practice, no source. */
const WANTED_INSIDE = 10;

/** Added sideways in a test of seats, N; and where the weight sits from the edge, mm: EN 1022, as quoted by trade pages. */
const PUSH = 20;
const SAT_ON = { load: 600, kg: 110, from: 60 } as const;

/** Load on the edge of a table that must not tip it, N: somebody rests on both arms. Our own. */
const LEANT_ON = 300;

/** No load on an edge is thought of beyond this, N: five people. Our own. */
const HEAVIEST = 5 * 1471.5;

/** What feet are to hold of the load on them before they slip: EN 14183, as quoted by trade pages. */
const FRICTION = 0.2;

/** For the lean of a standing person, mm. */
const STATURE = 1750;

const REMEDY = 'move the feet out, let the surface reach less far, or make the piece lower';

/** How the piece stands, loaded at every side of every surface. */
export function standing(asked: Asked): Worked {
  const { surfaces, resting } = asked;
  if (surfaces.every(({ use }) => use === 'shelf'))
    return { margins: [], notComputed: [{ what: 'how it stands', why: SHELVES }] };
  if (resting.feet.length < 3)
    return { margins: [], notComputed: [{ what: 'how it stands', why: 'it touches the floor in no area' }] };
  return together(
    surfaces.map((surface) => {
      if (surface.use === 'shelf') return NOTHING;
      const all = reaches(surface, resting);
      const sides = all.flatMap((reach) => sideOf(asked, surface, reach));
      return {
        margins: asked.atOnce ? sides : [...sides, ...aboutPerson(asked, surface, all)],
        notComputed: [],
      };
    }),
  );
}

const SHELVES =
  'a piece that only holds shelves is to be fixed to a wall: what climbs or pulls on it is not known';

function sideOf({ resting, user }: Asked, surface: UsedSurface, reach: Reach): readonly Margin[] {
  const { use, placed } = surface;
  const { side } = reach.line;
  const own = ownOf(resting, reach);
  const height = surface.height - resting.floor;
  const about = { subjects: [placed.board.id], at: reach.at, remedy: REMEDY };
  const edge = `the ${side} edge of ${placed.board.name}`;
  const on = (load: number, from: number): Standing => ({
    ...own,
    load,
    inside: reach.inside + from,
    height,
  });
  const tipsUnder = (load: number | undefined, limits: Pick<Margin, 'warning'>): readonly Margin[] =>
    load === undefined || load > HEAVIEST
      ? []
      : [
          {
            ...about,
            ...limits,
            code: 'tips-under-load',
            what: `smallest load that tips it on ${edge}`,
            figure: load,
            unit: 'N',
            better: 'more',
          },
        ];
  if (use === 'table-top') return tipsUnder(tippingLoad(on(0, 0)), { warning: LEANT_ON });
  if (use === 'seat')
    return [
      {
        ...about,
        code: 'tips-sideways',
        what: `push to the ${side} that tips it with somebody sitting near ${edge}`,
        figure: tippingForce(on((SAT_ON.load * Math.max(user.kg, SAT_ON.kg)) / SAT_ON.kg, SAT_ON.from)),
        unit: 'N',
        better: 'more',
        error: 0,
        warning: PUSH,
      },
    ];
  const weight = user.kg * GRAVITY;
  return [
    {
      ...about,
      code: 'edge-outside-feet',
      what: `room inside the foot line at ${edge}`,
      figure: reach.inside,
      unit: 'mm',
      better: 'more',
      error: 0,
      warning: WANTED_INSIDE,
    },
    {
      ...about,
      code: 'tips-sideways',
      what: `push to the ${side} that tips it with somebody on the bare line of ${edge}`,
      figure: tippingForce(on(weight, 0)),
      unit: 'N',
      better: 'more',
      // outside the feet it tips without a push: that is told already
      ...(reach.inside >= 0 && { warning: PUSH }),
    },
    ...tipsUnder(tippingLoad(on(0, 0)), {}),
  ];
}

/** For information, at the side that is worst: a foot wholly on the surface, a person who leans, feet that slip. */
function aboutPerson(
  { resting, user }: Asked,
  surface: UsedSurface,
  all: readonly Reach[],
): readonly Margin[] {
  const { use, placed, height: top } = surface;
  if (use !== 'step') return [];
  const weight = user.kg * GRAVITY;
  const height = top - resting.floor;
  const [worst] = all
    .map((reach) => {
      const stands: Standing = {
        ...ownOf(resting, reach),
        load: weight,
        inside: reach.inside + FOOT_PATCH / 2,
        height,
      };
      return { reach, stands, push: tippingForce(stands) };
    })
    .toSorted((a, b) => a.push - b.push);
  const { reach, stands, push } = worst!;
  const about = {
    code: 'tips-sideways',
    subjects: [placed.board.id],
    better: 'more',
    governs: `to the ${reach.line.side}`,
    remedy: REMEDY,
    at: reach.at,
  } as const;
  const { name } = placed.board;
  return [
    { ...about, what: `push that tips it with a foot wholly on ${name}`, figure: push, unit: 'N' },
    {
      ...about,
      what: `lean at which it goes over together with a person on ${name}`,
      figure: leanAngle(stands, STATURE).deg,
      unit: 'deg',
    },
    {
      ...about,
      governs: 'its feet',
      what: `push on ${name} under which its feet slide, when they hold a fifth of the load`,
      figure: FRICTION * (weight + resting.kg * GRAVITY),
      unit: 'N',
    },
  ];
}

const ownOf = (
  resting: Resting,
  { ownInside }: Reach,
): Pick<Standing, 'own' | 'ownInside' | 'ownHeight'> => ({
  own: resting.kg * GRAVITY,
  ownInside,
  ownHeight: resting.centre[2] - resting.floor,
});

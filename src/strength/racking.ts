import { add, scale, type Vec3 } from '../frame/index.js';
import { trimmed } from '../length/index.js';
import { once, onceForEach } from '../once.js';
import { regionBounds } from '../profile/index.js';
import { FOOT_PATCH, type FrameLoad, type Passed } from '../statics/index.js';
import type { Asked } from './asked.js';
import { framed, type Push } from './framed.js';
import { glueShear, MOST_GLUED_MOISTURE } from './glue.js';
import { jointHold } from './joint-holds.js';
import { pulled, racked, sheared, type Under } from './joint-margins.js';
import type { Load } from './load.js';
import { type Margin, NOTHING, type NotComputed, passed, together, type Worked } from './margin.js';
import { FIRM, type Skeleton, skeletonOf } from './skeleton.js';
import { sway } from './sway.js';
import type { UsedSurface } from './used-surface.js';

/** What feet that must not slip hold sideways of what stands on them: EN 14183, as quoted by trade pages. */
const FRICTION = 0.2;

/** How soft and how stiff a joint may be when none was measured, N·mm/rad. From memory, a guess. */
const GUESSED = { least: 2e6, most: 20e6 } as const;

/** A floor that lets the feet slide, N/mm: so little that a long rail spreads them freely, and the piece still has its place. */
const SLIPPERY = 0.01;

/** What the joints bear of the loads of every surface: pulls under what stands on it, and moments when it is pushed sideways. */
export const racking = (asked: Asked): Worked => (asked.atOnce ? rackingAtOnce(asked) : rackingBy(asked));

interface Racked extends Worked {
  /** Whether a joint was told nothing of a moment, for no shoulder presses against it. */
  readonly unpressed?: boolean;
}

function rackingBy(asked: Asked): Racked {
  const { design, surfaces, resting, stock, atOnce } = asked;
  const [stiff, ...softer] = stiffnesses(asked);
  const band = atOnce ? [stiff] : [stiff, ...softer];
  if (design.joints.length === 0) return NOTHING;
  const none = (why: string): Worked => ({
    margins: [],
    notComputed: [{ what: 'strength of the joints', why }],
  });
  if (stock.moisture > MOST_GLUED_MOISTURE)
    return none(
      `its wood is taken to come to ${trimmed(stock.moisture, 1)} % of water, and above ${MOST_GLUED_MOISTURE} % no strength of usual indoor glue is told (Wood Handbook, FPL-GTR-282 (2021), p. 10–20)`,
    );
  const glued = glueShear(asked.glue);
  if (glued === undefined)
    return none(
      'what its glue holds was not measured: shear test pieces of your own, and tell the least of them in the shop file, glue, shear',
    );
  const pressed = surfaces.map((surface) => ({ surface, points: pointsOf(surface) }));
  const skeleton = skeletonOf(
    design,
    pressed.flatMap(({ surface, points }) =>
      points.map(({ at }) => ({ board: surface.placed.board.id, at })),
    ),
    resting.floor,
  );
  const loose = surfaces.find(
    ({ placed }) => skeleton.nodeAt(placed.board.id, placed.place.origin) === undefined,
  );
  if (loose) return none(`${loose.placed.board.name} is neither joined nor fastened to anything`);
  if (skeleton.feet.length === 0) return none('none of its joined boards stands flat on the floor');
  const frames = band.flatMap(({ as, stiffness }) => {
    const standing = framed(skeleton, FIRM, stiffness);
    if (!standing) return [];
    // what has its place on a firm floor has it on a slippery one
    const sliding = once(() => framed(skeleton, [SLIPPERY, SLIPPERY, FIRM[2]], stiffness) ?? standing);
    return [{ as, standing: onceForEach(standing), sliding }];
  });
  if (frames.length === 0) return none('its boards can move against each other as they are joined');

  const pushed = pushesOf(pressed, skeleton);
  const passedOn = frames.map(({ standing, sliding }) => {
    const under: Under[][] = design.joints.map(() => []);
    const bears = (load: Load, size: number, passed: readonly Passed[]) => {
      for (const [i, one] of under.entries()) one.push({ load, passed: scaled(passed[i]!, size) });
    };
    for (const { surface, points } of pressed)
      for (const { at, place } of points) {
        const node = skeleton.nodeAt(surface.placed.board.id, at)!;
        const one: readonly FrameLoad[] = [{ node, at, force: [0, 0, -1] }];
        const onward = heldByFloor(standing(one).passed, () => sliding()(one).passed, skeleton);
        const pressing = surface.loads
          .filter((load) => pressesAt(load, place))
          .map((load) => ({ load, size: sizeOf(load, surface) }))
          .toSorted((a, b) => b.size - a.size);
        // what the heaviest does not shear off, no other does
        for (const { load, size } of atOnce ? pressing.slice(0, 1) : pressing) bears(load, size, onward);
      }
    for (const { load, loads } of pushed) bears(load, 1, standing(loads).passed);
    return under;
  });
  const margins: Margin[] = [];
  const notComputed: NotComputed[] = [];
  let unpressed = false;
  design.joints.forEach((joint, i) => {
    const hold = jointHold(asked, joint, glued);
    if (typeof hold === 'string') {
      notComputed.push({ what: `strength of joint ${joint.id}`, why: hold });
      return;
    }
    const under = passedOn.map((of) => of[i]!);
    // our estimate of a pull refuses nothing
    if (!atOnce) margins.push(...pulled(joint, hold, under));
    margins.push(...racked(joint, hold, under), ...sheared(joint, hold, under));
    if (hold.levers.includes(0)) {
      unpressed = true;
      notComputed.push({
        what: `moment across the tenons of ${joint.id}`,
        why: 'no shoulder reaches beyond them to press against',
      });
    }
  });
  const swaying = atOnce ? NOTHING : sway(asked, frames, pushed);
  return { ...together([{ margins, notComputed }, swaying]), unpressed };
}

/**
 * What may refuse a piece, by the stiff joints alone: a joint is refused for what it passes on by the stiffness that spares it
 * most, so that what holds by one holds by both. Only when something does not are both asked.
 */
function rackingAtOnce(asked: Asked): Worked {
  const found = rackingBy(asked);
  const refused = found.margins.some((margin) => passed(margin)?.level === 'error');
  // a pull no shoulder presses against is told of no joint: by the other stiffness it may be
  const unsure = found.margins.length === 0 || refused || found.unpressed;
  return unsure ? rackingBy({ ...asked, atOnce: false }) : found;
}

interface Stiffness {
  readonly as: string;
  /** Of a joint, N·mm/rad. */
  readonly stiffness: number;
}

/** The joints of a frame: as stiff as one was measured, or as stiff and as soft as they may be. */
const stiffnesses = ({ jointStiffness }: Asked): readonly [Stiffness, ...Stiffness[]] =>
  jointStiffness === undefined
    ? [
        { as: 'if its joints are stiff', stiffness: GUESSED.most },
        { as: 'if its joints are soft', stiffness: GUESSED.least },
      ]
    : [{ as: 'by the stiffness you measured', stiffness: jointStiffness * NEWTON_METRES }];

/** N·mm in a N·m. */
const NEWTON_METRES = 1000;

/**
 * What the ties pass when the floor holds the feet apart by a fifth of what stands on each and no more: between the frame whose
 * feet are held and the one whose feet slide, as far as the foot that slips first lets it.
 */
function heldByFloor(
  held: readonly Passed[],
  sliding: () => readonly Passed[],
  { joints, feet }: Skeleton,
): readonly Passed[] {
  const share = feet.reduce((least, _, i) => {
    const [x, y, z] = held[joints.length + i]!.force;
    return z <= 0 ? least : Math.min(least, (FRICTION * z) / Math.max(Math.hypot(x, y), FRICTION * z));
  }, 1);
  if (share === 1) return held.slice(0, joints.length);
  const slides = sliding();
  const between = (a: Vec3, b: Vec3) => add(scale(a, share), scale(b, 1 - share));
  return joints.map((_, i) => ({
    force: between(held[i]!.force, slides[i]!.force),
    moment: between(held[i]!.moment, slides[i]!.moment),
  }));
}

interface Pressed {
  readonly at: Vec3;
  readonly place: 'middle' | 'edge';
}

/** The middle of a surface, and of each of its sides with a foot wholly on it; assembly frame. */
function pointsOf({ region, height }: UsedSurface): readonly Pressed[] {
  const { minX, maxX, minY, maxY } = regionBounds(region);
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const [reachX, reachY] = [(maxX - minX) / 2, (maxY - minY) / 2].map((half) =>
    Math.max(half - FOOT_PATCH / 2, 0),
  );
  return [
    { at: [x, y, height], place: 'middle' },
    ...[-1, 1].flatMap((side): Pressed[] => [
      { at: [x + side * reachX!, y, height], place: 'edge' },
      { at: [x, y + side * reachY!, height], place: 'edge' },
    ]),
  ];
}

/** A surface pushed sideways, to the right and away. */
function pushesOf(
  pressed: readonly { readonly surface: UsedSurface; readonly points: readonly Pressed[] }[],
  { nodeAt }: Skeleton,
): readonly Push[] {
  return pressed.flatMap(({ surface, points }) =>
    surface.loads
      .filter(({ kind }) => kind === 'sideways')
      .flatMap((load) => {
        const { at } = points[0]!;
        const node = nodeAt(surface.placed.board.id, at)!;
        const ways: readonly Vec3[] = [
          [load.size, 0, 0],
          [0, load.size, 0],
        ];
        return ways.map((force) => ({ load, surface, loads: [{ node, at, force }] as const }));
      }),
  );
}

/** A person stands anywhere, a test load in the middle or at an edge, a spread load has its middle. */
const pressesAt = ({ kind }: Load, place: Pressed['place']): boolean =>
  kind === 'person' ||
  (kind === 'edge' && place === 'edge') ||
  ((kind === 'proof' || kind === 'spread') && place === 'middle');

function sizeOf({ kind, size }: Load, { region }: UsedSurface): number {
  if (kind !== 'spread') return size;
  const { minX, maxX, minY, maxY } = regionBounds(region);
  return size * (maxX - minX) * (maxY - minY);
}

const scaled = ({ force, moment }: Passed, by: number): Passed => ({
  force: scale(force, by),
  moment: scale(moment, by),
});

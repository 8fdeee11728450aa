import type { Bevel, Board, Groove, Hole, Mortise, Slot } from '../../board/index.js';
import { add, type Frame, scale, subtract, type Vec3 } from '../../frame/index.js';
import { type Profile, pointAlong, segments } from '../../profile/index.js';
import { COPLANAR } from '../../tolerances.js';

/** Something cut into a blank, told so that it can be compared whatever way the board lies. */
export interface Trait {
  /** Two traits of one kind have the same number of points and sizes. */
  readonly kind: string;
  /** Unchanged by turning: lengths, angles. */
  readonly sizes: readonly number[];
  /** From the middle of the blank, board directions, mm; their order counts. */
  readonly points: readonly Vec3[];
  /** Points that may be told in any order: the two ends of a slot. */
  readonly loose: readonly Vec3[];
}

/** Everything that makes a board differ from its milled blank. */
export function traitsOf(board: Board): readonly Trait[] {
  const { length, width, thickness } = board.blank;
  const middle: Vec3 = [length / 2, width / 2, thickness / 2];
  const seen = (p: Vec3): Vec3 => subtract(p, middle);
  return [
    ...loop('outline', board.outline, middle).filter((trait) => !onBlank(trait, middle)),
    ...board.openings.flatMap((opening) => loop('opening', opening.outline, middle)),
    ...board.bevels.flatMap((bevel) => bevelTraits(bevel, middle)),
    ...board.mortises.map((mortise) => mortiseTrait(mortise, seen)),
    ...board.holes.map((hole) => holeTrait(hole, seen)),
    ...board.slots.map((slot) => slotTrait(slot, seen)),
    ...board.grooves.map((groove) => grooveTrait(groove, seen)),
  ];
}

/** Each line and arc as the wall it leaves through the thickness. */
function loop(kind: string, outline: Profile, [mx, my, mz]: Vec3): readonly Trait[] {
  return segments(outline).map((piece): Trait => {
    const along = piece.kind === 'arc' ? [0, 1 / 2, 1] : [0, 1];
    const points = along.map((share) => pointAlong(piece, share));
    return {
      kind: `${kind} ${piece.kind}`,
      sizes: piece.kind === 'arc' ? [piece.radius] : [],
      points: [],
      loose: points.flatMap(([x, y]): Vec3[] => [
        [x - mx, y - my, -mz],
        [x - mx, y - my, mz],
      ]),
    };
  });
}

/** A wall from corner to corner of the blank is the blank's own. */
const onBlank = (trait: Trait, middle: Vec3): boolean =>
  trait.kind === 'outline line' &&
  trait.loose.every((p) => p.every((part, i) => Math.abs(Math.abs(part) - middle[i]!) < COPLANAR));

function bevelTraits({ point, normal, within }: Bevel, middle: Vec3): readonly Trait[] {
  const from = subtract(point, middle);
  const foot = scale(normal, normal[0] * from[0] + normal[1] * from[1] + normal[2] * from[2]);
  const plane: Trait = { kind: 'bevel', sizes: [], points: [foot, add(foot, normal)], loose: [] };
  return within ? [plane, ...loop('bevel strip', within, middle)] : [plane];
}

type Seen = (p: Vec3) => Vec3;

const mortiseTrait = ({ at, width, length, depth }: Mortise, seen: Seen): Trait => ({
  kind: 'mortise',
  sizes: [width, length, depth],
  points: [seen(at.origin), seen(into(at, depth))],
  loose: endsOf(at, length).map(seen),
});

function holeTrait(hole: Hole, seen: Seen): Trait {
  const { at, diameter, depth, counterbore, countersink } = hole;
  const sizes = [
    diameter,
    counterbore?.diameter ?? 0,
    counterbore?.depth ?? 0,
    countersink?.diameter ?? 0,
    countersink?.angleDeg ?? 0,
  ];
  if (depth !== 'through')
    return { kind: 'hole', sizes, points: [seen(at.origin), seen(into(at, depth))], loose: [] };
  // a plain through hole is the same from both faces
  if (!counterbore && !countersink)
    return { kind: 'plain hole', sizes, points: [], loose: axisOf(at, seen, [at.origin]) };
  return {
    kind: 'through hole',
    sizes,
    points: [nearest(at, seen(at.origin)), seen(at.origin)],
    loose: [],
  };
}

function slotTrait({ at, width, length, depth, openAt }: Slot, seen: Seen): Trait {
  const ends = endsOf(at, length);
  const open = openAt && ends[openAt === 'start' ? 0 : 1]!;
  if (depth === 'through') {
    return {
      kind: open ? 'open through slot' : 'through slot',
      sizes: [width, length],
      points: open ? [nearest(at, seen(open))] : [],
      loose: axisOf(at, seen, ends),
    };
  }
  return {
    kind: open ? 'open slot' : 'slot',
    sizes: [width, length, depth],
    points: [seen(at.origin), seen(into(at, depth)), ...(open ? [seen(open)] : [])],
    loose: ends.map(seen),
  };
}

function grooveTrait({ at, width, length, depth, stopped }: Groove, seen: Seen): Trait {
  const ends = endsOf(at, length);
  const stops = stopped.map((end) => ends[end === 'start' ? 0 : 1]!);
  return {
    kind: `groove stopped at ${stops.length}`,
    sizes: [width, length, depth],
    points: [seen(at.origin), seen(into(at, depth)), ...(stops.length === 1 ? stops.map(seen) : [])],
    loose: ends.map(seen),
  };
}

const into = (at: Frame, depth: number): Vec3 => add(at.origin, scale(at.z, -depth));

const endsOf = (at: Frame, length: number): readonly [Vec3, Vec3] => [
  add(at.origin, scale(at.x, -length / 2)),
  add(at.origin, scale(at.x, length / 2)),
];

/** The point nearest to the middle of the blank on a line along the frame's z: the same from whichever face it is seen. */
const nearest = ({ z }: Frame, p: Vec3): Vec3 =>
  subtract(p, scale(z, p[0] * z[0] + p[1] * z[1] + p[2] * z[2]));

/** Lines through the board, without a sense: a point on each and the same a step to both sides. */
const axisOf = (at: Frame, seen: Seen, through: readonly Vec3[]): readonly Vec3[] =>
  through.flatMap((point): Vec3[] => {
    const foot = nearest(at, seen(point));
    return [foot, add(foot, at.z), subtract(foot, at.z)];
  });

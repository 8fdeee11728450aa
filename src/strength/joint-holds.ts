import type { Design, PlacedBoard } from '../assembly/index.js';
import { dot, type Vec3 } from '../frame/index.js';
import { type Joint, shortBy, type Tenon } from '../joinery/index.js';
import { bareMoment, cheeks, GLUE_SHEAR, ROLLING_SHARE, slopeShare } from '../statics/index.js';
import { FIT_ROUNDING, PARALLEL_DEG } from '../tolerances.js';
import { type WoodStrength, whyNoStrength, woodStrength } from './wood-strength.js';

/** What the tenons of a joint hold at 5 % values; N, N·mm. */
export interface JointHold {
  /** Pull that tears the weakest: a board, or the tenons themselves; and which. */
  readonly pull: number;
  readonly governs: string;
  /** Middle of the tenons in the seat's x and y. */
  readonly middle: readonly [x: number, y: number];
  /**
   * Moments about the seat's x and y that tear it, over the pull, mm: the way from the tenons to the shoulder's edge that is
   * pressed, or what the glue lines in torsion hold where no shoulder is; 0 where nothing does.
   */
  readonly levers: readonly [aboutX: number, aboutY: number];
  /** Force in the seat that shears the tenons or their glue off or crushes the wood beside them, along its x and its y, and what gives. */
  readonly shear: readonly [alongX: number, alongY: number];
  readonly shearGoverns: string;
}

/** More air between both cheeks than this, and no glue is known to hold as its class says, mm. */
const MOST_GAP = 0.3;

/** Cosines between grains that run one way, and up to which a seat runs along the grain. */
const ALONG = Math.cos((PARALLEL_DEG * Math.PI) / 180);
const SEAT_ALONG = 0.1;

/** What a joint holds, or why that is not told. */
export function jointHold(design: Design, joint: Joint): JointHold | string {
  const sides = [joint.a, joint.b].map((id) => design.boards.find(({ board }) => board.id === id)!);
  const [a, b] = sides as [PlacedBoard, PlacedBoard];
  if (Math.abs(dot(a.place.x, b.place.x)) > ALONG && Math.abs(dot(a.place.x, joint.seat.z)) < SEAT_ALONG)
    return 'a seam glued along its whole length holds as the wood does (Wood Handbook, FPL-GTR-282 (2021), p. 10–16); its tenons only line it up';
  if (2 * joint.fit.cheek > MOST_GAP + FIT_ROUNDING)
    return 'its glue would fill more than 0.3 mm, and what glue holds in such a gap is not known';
  const woods = sides.map((side) => woodStrength(design, side));
  const weak = sides[woods.indexOf(undefined)];
  if (weak) return `${weak.board.name}: ${whyNoStrength(design, weak)}`;
  const [woodA, woodB] = woods as [WoodStrength, WoodStrength];
  const { tenons } = joint;
  if (tenons.length === 0) return 'it has no tenons';
  const sum = (of: (tenon: Tenon) => number) => tenons.reduce((total, tenon) => total + of(tenon), 0);
  const flat = (tenon: Tenon) => tenon.width - tenon.thickness;
  const areas = sum((tenon) => flat(tenon) * tenon.thickness);
  const holds = [
    {
      name: a.board.name,
      pull: sum((tenon) => pullIn(tenon, a, woodA, tenon.intoA - shortBy(tenon, tenon.mitreA) / 2)),
    },
    {
      name: b.board.name,
      pull: sum((tenon) => pullIn(tenon, b, woodB, tenon.intoB - shortBy(tenon, tenon.mitreB) / 2)),
    },
    { name: 'the tenons themselves', pull: areas * woodA.bending.five },
  ];
  const weakest = holds.reduce((least, one) => (one.pull < least.pull ? one : least));
  const own = tenons.map(({ place }) => {
    const off = [
      place.origin[0] - joint.seat.origin[0],
      place.origin[1] - joint.seat.origin[1],
      place.origin[2] - joint.seat.origin[2],
    ] as const;
    return [dot(off, joint.seat.x), dot(off, joint.seat.y)] as const;
  });
  const mean = (i: 0 | 1) => own.reduce((total, at) => total + at[i], 0) / own.length;
  const middle = [mean(0), mean(1)] as const;
  const reach = (size: number, off: number) => size / 2 - Math.abs(off);
  const [first] = tenons as [Tenon, ...Tenon[]];
  // a shoulder that reaches no further than the tenons presses nothing
  const aboutX = reach(joint.shoulder.width, middle[1]);
  const aboutY = reach(joint.shoulder.length, middle[0]);
  const spread = Math.max(...own.map(([x]) => Math.abs(x - middle[0]))) + flat(first) / 2;
  const bare = sum((tenon) =>
    Math.min(
      bareMoment({ length: tenon.intoA, flat: flat(tenon), shear: woodA.shear.five }),
      bareMoment({ length: tenon.intoB, flat: flat(tenon), shear: woodB.shear.five }),
    ),
  );
  const shears = shearOf(joint, flat, areas, woodA, woodB, [a, b]);
  return {
    pull: weakest.pull,
    governs: weakest.name,
    middle,
    levers: [aboutX > first.thickness / 2 ? aboutX : 0, aboutY > spread ? aboutY : bare / weakest.pull],
    ...shears,
  };
}

/** What wood bears in shear a way: along the grain, across it rolling, between both by Hankinson; no more than the glue. */
function shearAlong(way: Vec3, { place }: PlacedBoard, { shear }: WoodStrength): number {
  const cos = Math.abs(dot(way, place.x));
  const slope = Math.sqrt(Math.max(1 - cos * cos, 0)) / cos;
  return Math.min(shear.five * slopeShare(slope, ROLLING_SHARE, 2), GLUE_SHEAR);
}

/** What one tenon holds in one board when it is pulled: its cheeks. */
const pullIn = (tenon: Tenon, side: PlacedBoard, wood: WoodStrength, length: number): number =>
  cheeks({ length, flat: tenon.width - tenon.thickness }) * shearAlong(tenon.place.z, side, wood);

function shearOf(
  { tenons }: Joint,
  flat: (tenon: Tenon) => number,
  areas: number,
  woodA: WoodStrength,
  woodB: WoodStrength,
  [a, b]: readonly [PlacedBoard, PlacedBoard],
): Pick<JointHold, 'shear' | 'shearGoverns'> {
  const across = (areas * woodA.shear.five) / 1.5;
  const bears = (side: (tenon: Tenon) => number) => {
    const of = (into: (tenon: Tenon) => number) =>
      tenons.reduce((sum, one) => sum + side(one) * into(one), 0);
    return [
      of(({ intoA }) => intoA) * woodA.bearing.five,
      of(({ intoB }) => intoB) * woodB.bearing.five,
    ] as const;
  };
  // along the cheeks their glue holds, the tenon's own wood rolling; where it does not, the edges press
  const glued = (side: PlacedBoard, wood: WoodStrength, into: (tenon: Tenon) => number) =>
    tenons.reduce(
      (sum, one) =>
        sum +
        cheeks({ length: into(one), flat: flat(one) }) *
          Math.min(shearAlong(one.place.x, side, wood), ROLLING_SHARE * woodA.shear.five),
      0,
    );
  const pressed = bears(({ thickness }) => thickness);
  const edge = [
    Math.max(
      pressed[0],
      glued(a, woodA, ({ intoA }) => intoA),
    ),
    Math.max(
      pressed[1],
      glued(b, woodB, ({ intoB }) => intoB),
    ),
  ] as const;
  const cheek = bears(flat);
  const least = Math.min(across, ...edge);
  return {
    shear: [least, Math.min(across, ...cheek)],
    shearGoverns:
      least === across ? 'the tenons themselves' : edge[0] <= edge[1] ? a.board.name : b.board.name,
  };
}

import type { PlacedBoard } from '../assembly/index.js';
import { dot, subtract, type Vec3 } from '../frame/index.js';
import { type Joint, shortBy, type Tenon } from '../joinery/index.js';
import { bareMoment, cheeks, ROLLING_SHARE, slopeShare } from '../statics/index.js';
import { FIT_ROUNDING, PARALLEL_DEG } from '../tolerances.js';
import type { Asked } from './asked.js';
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

/**
 * What a joint holds, or why that is not told.
 *
 * @param glued what its glue bears in shear, MPa
 */
export function jointHold(
  { design, stock }: Pick<Asked, 'design' | 'stock'>,
  joint: Joint,
  glued: number,
): JointHold | string {
  const placed = [joint.a, joint.b].map((id) => design.boards.find(({ board }) => board.id === id)!);
  const [a, b] = placed as [PlacedBoard, PlacedBoard];
  if (Math.abs(dot(a.place.x, b.place.x)) > ALONG && Math.abs(dot(a.place.x, joint.seat.z)) < SEAT_ALONG)
    return 'a seam glued along its whole length holds as the wood does (Wood Handbook, FPL-GTR-282 (2021), p. 10–16); its tenons only line it up';
  if (2 * joint.fit.cheek > MOST_GAP + FIT_ROUNDING)
    return 'its glue would fill more than 0.3 mm, and what glue holds in such a gap is not known';
  const { tenons } = joint;
  const [first] = tenons;
  if (!first) return 'it has no tenons';
  const woods = placed.map(({ board }) => woodStrength(board.material, stock));
  const weak = placed[woods.indexOf(undefined)];
  if (weak) return `${weak.board.name}: ${whyNoStrength(weak.board.material, stock)}`;
  const [woodA, woodB] = woods as [WoodStrength, WoodStrength];
  const tenonWood = joint.tenonWood ?? a.board.material;
  const own = woodStrength(tenonWood, stock);
  if (!own) return `its tenons: ${whyNoStrength(tenonWood, stock)}`;

  const flat = (tenon: Tenon) => tenon.width - tenon.thickness;
  const sum = (of: (tenon: Tenon) => number) => tenons.reduce((total, tenon) => total + of(tenon), 0);
  const areas = sum((tenon) => flat(tenon) * tenon.thickness);
  const sides: readonly Side[] = [
    {
      placed: a,
      wood: woodA,
      into: ({ intoA }) => intoA,
      held: (tenon) => tenon.intoA - shortBy(tenon, tenon.mitreA) / 2,
    },
    {
      placed: b,
      wood: woodB,
      into: ({ intoB }) => intoB,
      held: (tenon) => tenon.intoB - shortBy(tenon, tenon.mitreB) / 2,
    },
  ];
  // no more than the glue, and the tenon's own wood along its grain
  const cheek = (side: Side, way: Vec3) => Math.min(shearAlong(way, side), own.shear.five, glued);
  const holds = [
    ...sides.map((side) => ({
      name: side.placed.board.name,
      pull: sum(
        (tenon) => cheeks({ length: side.held(tenon), flat: flat(tenon) }) * cheek(side, tenon.place.z),
      ),
    })),
    { name: 'the tenons themselves', pull: areas * own.bending.five },
  ];
  const weakest = holds.reduce((least, one) => (one.pull < least.pull ? one : least));
  const at = tenons.map(({ place }) => {
    const off = subtract(place.origin, joint.seat.origin);
    return [dot(off, joint.seat.x), dot(off, joint.seat.y)] as const;
  });
  const mean = (i: 0 | 1) => at.reduce((total, one) => total + one[i], 0) / at.length;
  const middle = [mean(0), mean(1)] as const;
  const reach = (size: number, off: number) => size / 2 - Math.abs(off);
  // a shoulder that reaches no further than the tenons presses nothing
  const aboutX = reach(joint.shoulder.width, middle[1]);
  const aboutY = reach(joint.shoulder.length, middle[0]);
  const spread = Math.max(...at.map(([x]) => Math.abs(x - middle[0]))) + flat(first) / 2;
  const bare = sum((tenon) =>
    Math.min(
      ...sides.map(({ wood, into }) =>
        bareMoment({ length: into(tenon), flat: flat(tenon), shear: wood.shear.five }),
      ),
    ),
  );

  const across = (areas * own.shear.five) / 1.5;
  const pressed = sides.map((side) => {
    const bears = (width: (tenon: Tenon) => number) =>
      sum((tenon) => width(tenon) * side.into(tenon)) * side.wood.bearing.five;
    // along the cheeks their glue holds, the tenon's own wood rolling; where it does not, the edges press
    const rolls = sum(
      (tenon) =>
        cheeks({ length: side.into(tenon), flat: flat(tenon) }) *
        Math.min(cheek(side, tenon.place.x), ROLLING_SHARE * own.shear.five),
    );
    return {
      name: side.placed.board.name,
      alongX: Math.max(
        bears(({ thickness }) => thickness),
        rolls,
      ),
      alongY: bears(flat),
    };
  });
  const gives = pressed.reduce((least, one) => (one.alongX < least.alongX ? one : least));
  return {
    pull: weakest.pull,
    governs: weakest.name,
    middle,
    levers: [aboutX > first.thickness / 2 ? aboutX : 0, aboutY > spread ? aboutY : bare / weakest.pull],
    shear: [Math.min(across, gives.alongX), Math.min(across, ...pressed.map(({ alongY }) => alongY))],
    shearGoverns: across <= gives.alongX ? 'the tenons themselves' : gives.name,
  };
}

/** A board of a joint, its wood, and how far a tenon reaches into it: at its deepest, and over the length that its cheeks hold. */
interface Side {
  readonly placed: PlacedBoard;
  readonly wood: WoodStrength;
  readonly into: (tenon: Tenon) => number;
  readonly held: (tenon: Tenon) => number;
}

/** What wood bears in shear a way: along the grain, across it rolling, between both by Hankinson. */
function shearAlong(way: Vec3, { placed, wood }: Side): number {
  const cos = Math.abs(dot(way, placed.place.x));
  const slope = Math.sqrt(Math.max(1 - cos * cos, 0)) / cos;
  return wood.shear.five * slopeShare(slope, ROLLING_SHARE, 2);
}

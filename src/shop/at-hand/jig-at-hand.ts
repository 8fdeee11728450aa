import { type Design, type Mechanism, type PlacedBoard, type Pose, STILL } from '../../assembly/index.js';
import { pointOut, type Vec3 } from '../../frame/index.js';
import { bounds } from '../../profile/index.js';
import { NOISE } from '../../tolerances.js';
import { CUTTER_AIR } from '../practice/index.js';

/** One rail of the jig; distances from the cutter's centre to its inner face, mm. */
export interface RailAtHand {
  /** Board id. */
  readonly id: string;
  /** Everything that moves with it: rail, bolts, washers, knobs. */
  readonly moves: readonly string[];
  /** As it is drawn in the design. */
  readonly drawn: number;
  /** Farthest it can be set. */
  readonly most: number;
  /** Air it keeps to a turning cutter. */
  readonly cutterAir: number;
  readonly length: number;
  readonly height: number;
}

/** What a jig can hold, read from its design: x along the rails, y across, the sliding face at `slidingZ`; mm. */
export interface JigAtHand {
  readonly design: Design;
  /** On the -y and the +y side. */
  readonly near: RailAtHand;
  readonly far: RailAtHand;
  /** Gap between both rails that can be had. */
  readonly grip: { readonly least: number; readonly most: number };
  readonly plate: {
    readonly id: string;
    readonly along: number;
    readonly across: number;
    readonly thickness: number;
  };
  /** Height of the face that slides on the work. */
  readonly slidingZ: number;
  readonly cutter: number;
}

/**
 * Reads a two-rail jig from its design: the boards its poses move are the rails, the one they leave is the plate.
 *
 * @param design what the jig's model builds: two boards that move and one that does not
 * @throws RangeError when it is not such a jig: a fault of the program, not of the person
 */
export function jigAtHand(design: Design): JigAtHand {
  const { mechanism = STILL } = design;
  const moving = design.boards.filter(({ board }) => mechanism.poses.some((pose) => pose.shift[board.id]));
  const still = design.boards.filter((placed) => !moving.includes(placed));
  const [one, other] = moving.toSorted((a, b) => middleY(a) - middleY(b));
  const plate = still[0];
  if (moving.length !== 2 || still.length !== 1 || !one || !other || !plate)
    throw new RangeError(`${design.name}: a two-rail jig has two boards that move and one that does not`);
  const box = boxOf(plate);
  const gaps = mechanism.poses.map((pose) => innerIn(other, pose, -1) - innerIn(one, pose, 1));
  return {
    design,
    near: railOf(design, mechanism, one, -1),
    far: railOf(design, mechanism, other, 1),
    grip: { least: Math.min(...gaps), most: Math.max(...gaps) },
    plate: {
      id: plate.board.id,
      along: box.max[0] - box.min[0],
      across: box.max[1] - box.min[1],
      thickness: box.max[2] - box.min[2],
    },
    slidingZ: box.min[2],
    cutter: design.cutter,
  };
}

function railOf(design: Design, mechanism: Mechanism, rail: PlacedBoard, side: 1 | -1): RailAtHand {
  const { id } = rail.board;
  const sameWay = (shift: Vec3 | undefined, pose: Pose) =>
    shift !== undefined && pose.shift[id]!.every((part, i) => Math.abs(part - shift[i]!) < NOISE);
  const pieces = [...design.boards.map(({ board }) => board.id), ...design.hardware.map((piece) => piece.id)];
  const box = boxOf(rail);
  const kept = mechanism.keepApart.find(
    (rule) => [rule.a, rule.b].includes(id) && isCutter(design, rule.a === id ? rule.b : rule.a),
  );
  return {
    id,
    moves: pieces.filter((piece) => mechanism.poses.every((pose) => sameWay(pose.shift[piece], pose))),
    drawn: side * innerIn(rail, undefined, -side as 1 | -1),
    most: Math.max(...mechanism.poses.map((pose) => side * innerIn(rail, pose, -side as 1 | -1))),
    cutterAir: kept?.least ?? CUTTER_AIR,
    length: box.max[0] - box.min[0],
    height: box.max[2] - box.min[2],
  };
}

const isCutter = (design: Design, id: string): boolean =>
  design.hardware.some((piece) => piece.id === id && piece.kind === 'cutter');

/** y of a rail's face towards the cutter: its greatest y for the near one (1), its least for the far one (-1). */
function innerIn(rail: PlacedBoard, pose: Pose | undefined, towards: 1 | -1): number {
  const box = boxOf(rail);
  return (towards > 0 ? box.max[1] : box.min[1]) + (pose?.shift[rail.board.id]?.[1] ?? 0);
}

const middleY = (placed: PlacedBoard): number => (boxOf(placed).min[1] + boxOf(placed).max[1]) / 2;

function boxOf({ board, place }: PlacedBoard): { readonly min: Vec3; readonly max: Vec3 } {
  const { minX, maxX, minY, maxY } = bounds(board.outline);
  const corners = [minX, maxX].flatMap((x) =>
    [minY, maxY].flatMap((y) => [0, board.blank.thickness].map((z) => pointOut(place, [x, y, z]))),
  );
  const along = (i: 0 | 1 | 2, of: typeof Math.min) => of(...corners.map((corner) => corner[i]));
  return {
    min: [along(0, Math.min), along(1, Math.min), along(2, Math.min)],
    max: [along(0, Math.max), along(1, Math.max), along(2, Math.max)],
  };
}

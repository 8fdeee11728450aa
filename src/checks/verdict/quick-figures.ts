import type { Design, PlacedBoard } from '../../assembly/index.js';
import { type Mortise, mouthOf } from '../../board/index.js';
import {
  angleDeg,
  directionIn,
  dot,
  frameOut,
  pointIn,
  pointOut,
  subtract,
  type Vec3,
} from '../../frame/index.js';
import type { Tenon } from '../../joinery/index.js';
import type { MortiseFigures, TenonFigures } from '../../solid/index.js';
import { SAME_PLACE_MM, SAME_POINT } from '../../tolerances.js';
import { type DataWalls, wallsByData } from './quick-walls.js';

/** What the data of joints say, and what they leave open. */
export interface QuickFigures {
  readonly tenons: readonly TenonFigures[];
  /** What the full verdict must look at: boards and joints with words. */
  readonly open: readonly string[];
}

/**
 * The figures of every joint worked out from its data, none better than what would be measured on the solids: where only a bound
 * is cheap it is the lesser.
 */
export function quickFigures(design: Design): QuickFigures {
  const open: string[] = [];
  const boards = new Map(design.boards.map((placed) => [placed.board.id, placed]));
  const walls = new Map(design.boards.map(({ board }) => [board.id, wallsByData(board)]));
  const within = (id: string, tenon: Tenon, into: 1 | -1) =>
    inBoard(boards.get(id), walls.get(id), tenon, into, open);
  const tenons = design.joints.flatMap((joint) =>
    joint.tenons.flatMap((tenon): TenonFigures[] => {
      const [a, b] = [within(joint.a, tenon, -1), within(joint.b, tenon, 1)];
      if (!a || !b || tenon.mitreA || tenon.mitreB) {
        open.push(`tenon ${tenon.id}`);
        return [];
      }
      if (!shouldersMeet(a, b, tenon)) open.push(`shoulders of ${joint.id}`);
      return [
        {
          joint,
          tenon,
          thickness: tenon.thickness,
          width: tenon.width,
          length: tenon.intoA + tenon.intoB,
          mortises: [a.figures, b.figures],
          ...outOfLine(a, b, tenon),
        },
      ];
    }),
  );
  return { tenons, open };
}

interface InBoard {
  readonly placed: PlacedBoard;
  readonly mortise: Mortise;
  readonly figures: MortiseFigures;
}

function inBoard(
  placed: PlacedBoard | undefined,
  walls: ReadonlyMap<Mortise, DataWalls> | undefined,
  tenon: Tenon,
  into: 1 | -1,
  open: string[],
): InBoard | undefined {
  const mortise = placed?.board.mortises.find((one) => one.tenon === tenon.id);
  if (!placed || !walls || !mortise) return undefined;
  const { wall, endWood } = walls.get(mortise)!;
  if (wall === undefined) open.push(`walls of ${mortise.id} in ${placed.board.id}`);
  const at = frameOut(placed.place, mortise.at);
  const reach = into < 0 ? tenon.intoA : tenon.intoB;
  const seen = (x: number, y: number, z: number): Vec3 => pointIn(at, pointOut(tenon.place, [x, y, z]));
  const [halfWidth, half] = [tenon.width / 2, tenon.thickness / 2];
  const corners = [0, into * reach].flatMap((z) =>
    [-halfWidth, halfWidth].flatMap((x) => [-half, half].map((y) => seen(x, y, z))),
  );
  const far = corners.slice(4);
  const across = Math.max(...corners.map(([, y]) => Math.abs(y)));
  const along = Math.max(...corners.map(([x]) => Math.abs(x)));
  const cheek = mortise.width / 2 - across;
  const { length, width, depth } = mortise;
  // the middle of what is trimmed stands in the wood, the ends of both are round alike
  if (along >= length / 2 - SAME_POINT) open.push(`ends of tenon ${tenon.id} in ${placed.board.id}`);
  return {
    placed,
    mortise,
    figures: {
      board: placed.board.id,
      mortise,
      width,
      length,
      depth,
      bottomClearance: depth + Math.min(...far.map(([, , z]) => z)),
      cheekClearance: Math.max(0, cheek),
      flankClearance: Math.max(0, Math.min(cheek, length / 2 - along)),
      wall: wall ?? Number.POSITIVE_INFINITY,
      endWood,
      webWood: Number.POSITIVE_INFINITY,
      boardDepth: WIDE[mortise.face] === true ? placed.board.blank.thickness : Number.POSITIVE_INFINITY,
    },
  };
}

const WIDE: Readonly<Record<string, boolean>> = { 'reference-face': true, 'opposite-face': true };

/** The two mouths lie in one plane, on the seat. */
function shouldersMeet(a: InBoard, b: InBoard, tenon: Tenon): boolean {
  return [a, b].every(({ placed, mortise }, i) => {
    const normal = mouthOf(mortise).normal;
    const out = directionIn(tenon.place, directionInAssembly(placed, normal));
    const middle = pointIn(tenon.place, pointOut(placed.place, mortise.at.origin));
    const other = [a, b][1 - i]!;
    const facing = dot(
      directionInAssembly(placed, normal),
      directionInAssembly(other.placed, mouthOf(other.mortise).normal),
    );
    return Math.abs(dot(out, middle)) < SAME_PLACE_MM && facing < -1 + SAME_POINT;
  });
}

const directionInAssembly = ({ place }: PlacedBoard, direction: Vec3): Vec3 =>
  subtract(pointOut(place, direction), place.origin);

function outOfLine(a: InBoard, b: InBoard, tenon: Tenon): Pick<TenonFigures, 'offLine' | 'offLineDeg'> {
  const [one, other] = [a, b].map(({ placed, mortise }) => frameOut(placed.place, mortise.at)) as [
    Tenon['place'],
    Tenon['place'],
  ];
  /** Where an axis crosses the seat. */
  const crossing = ({ origin, z }: Tenon['place']): readonly [number, number] => {
    const [from, along] = [pointIn(tenon.place, origin), directionIn(tenon.place, z)];
    const way = -from[2] / along[2];
    return [from[0] + way * along[0], from[1] + way * along[1]];
  };
  const [p, q] = [crossing(one), crossing(other)];
  const tilt = angleDeg(one.z, other.z);
  const turn = angleDeg(one.x, other.x);
  return {
    offLine: Math.hypot(p[0] - q[0], p[1] - q[1]),
    offLineDeg: Math.max(Math.min(tilt, 180 - tilt), Math.min(turn, 180 - turn)),
  };
}

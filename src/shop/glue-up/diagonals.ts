import type { Design, PlacedBoard } from '../../assembly/index.js';
import { type FaceId, faces, type Mortise } from '../../board/index.js';
import { angleDeg, dot, length, pointOut, scale, subtract, type Vec3 } from '../../frame/index.js';
import { NOISE } from '../../tolerances.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';
import { faceWords } from '../words/index.js';
import type { Entry } from './entry.js';
import type { GlueUp } from './glue-up.js';
import { entriesOf } from './glue-up-entry.js';

/** A corner of a board that a rule can be put to. Assembly frame, mm. */
export interface Corner {
  readonly board: string;
  readonly at: Vec3;
  /** `left side, top front corner of its opposite face`. */
  readonly words: string;
}

/** Two distances across one figure, to be measured in the clamps. mm. */
export interface Diagonals {
  readonly stage: number;
  /** The two boards between which it is measured. */
  readonly between: readonly [string, string];
  readonly pairs: readonly [Diagonal, Diagonal];
  /** Each may be off by this, mm. */
  readonly tolerance: number;
}

export interface Diagonal {
  readonly from: Corner;
  readonly to: Corner;
  readonly length: number;
}

/** The four corners of the face of a board that looks at another board. */
type FaceCorners = readonly [lowNear: Vec3, lowFar: Vec3, highNear: Vec3, highFar: Vec3];

/**
 * What to measure before the glue grabs: between two boards that the same third board holds apart, both ways across, once
 * along the grain of the first (is it racked?) and once across it (is it wound?). Corners are those of the faces in which
 * the third board is mortised.
 */
export function diagonalsOf(design: Design, up: GlueUp): readonly Diagonals[] {
  const placed = new Map(design.boards.map((one) => [one.board.id, one]));
  const entries = entriesOf(design);
  const found: Diagonals[] = [];
  const measured = new Set<string>();
  for (const { number: stage } of up.stages) {
    const closed = up.steps.filter((step) => step.stage <= stage).flatMap(({ joints }) => joints);
    const joined = closed.map(({ joint }) => joint);
    for (const [one, other] of heldApart(entries.filter(({ joint }) => joined.includes(joint.id)))) {
      const key = [one.receiver, other.receiver].toSorted().join('\n');
      if (measured.has(key)) continue;
      measured.add(key);
      const [a, b] = [placed.get(one.receiver)!, placed.get(other.receiver)!];
      found.push(...between(a, one.joint.id, b, other.joint.id, stage));
    }
  }
  return found;
}

/** Joints at opposite ends of one board. */
const heldApart = (entries: readonly Entry[]): readonly (readonly [Entry, Entry])[] =>
  entries.flatMap((one, i) =>
    entries
      .slice(i + 1)
      .filter(
        (other) =>
          other.owner === one.owner &&
          other.receiver !== one.receiver &&
          angleDeg(one.axis, other.axis) > 135,
      )
      .map((other) => [one, other] as const),
  );

function between(a: PlacedBoard, jointA: string, b: PlacedBoard, jointB: string, stage: number): Diagonals[] {
  const grain = a.place.x;
  const one = cornersOf(a, jointA, grain);
  const other = cornersOf(b, jointB, grain);
  if (!one || !other) return [];
  const corner = (of: typeof one, i: number): Corner => ({
    board: of.id,
    at: of.corners[i]!,
    words: wordsOf(of, i),
  });
  const pair = (i: number, k: number): Diagonal => {
    const [from, to] = [one.corners[i]!, other.corners[k]!];
    return { from: corner(one, i), to: corner(other, k), length: length(subtract(to, from)) };
  };
  const shared = {
    stage,
    between: [a.board.id, b.board.id] as const,
    tolerance: PRACTICE.diagonalTolerance,
  };
  const long = (i: number, k: number) => length(subtract(one.corners[k]!, one.corners[i]!));
  const racked: Diagonals[] =
    long(0, 2) < PRACTICE.leastDiagonalSide ? [] : [{ ...shared, pairs: [pair(0, 2), pair(2, 0)] }];
  const wound: Diagonals[] =
    long(0, 1) < PRACTICE.leastDiagonalSide ? [] : [{ ...shared, pairs: [pair(0, 1), pair(1, 0)] }];
  return [...racked, ...wound];
}

/** The corners of the face that holds the board's mortises for a joint, ordered along a direction and across it. */
function cornersOf({ board, place }: PlacedBoard, joint: string, grain: Vec3) {
  const mortise = board.mortises.find((one: Mortise) => one.joint === joint)!;
  const face = faces(board).find(({ id }) => id === mortise.face);
  if (!face) return undefined;
  const points = face.region.flat().map(([x, y]): Vec3 => pointOut(place, pointOut(face.frame, [x, y, 0])));
  const across = acrossOf(points, grain);
  const span = (direction: Vec3) => {
    const along = points.map((point) => dot(point, direction));
    return { least: Math.min(...along), size: Math.max(Math.max(...along) - Math.min(...along), NOISE) };
  };
  const [g, h] = [span(grain), span(across)];
  const share = (point: Vec3, direction: Vec3, of: { least: number; size: number }) =>
    (dot(point, direction) - of.least) / of.size;
  const extreme = (high: number, far: number): Vec3 =>
    points.reduce((best, point) => {
      const score = (p: Vec3) => high * share(p, grain, g) + far * share(p, across, h);
      return score(point) > score(best) + NOISE ? point : best;
    });
  const corners: FaceCorners = [extreme(-1, -1), extreme(-1, 1), extreme(1, -1), extreme(1, 1)];
  return { id: board.id, name: board.name, face: faceWords(board, face.id as FaceId), corners };
}

/** The direction of the assembly across the grain in which the face is widest: away from the person, up or right. */
function acrossOf(points: readonly Vec3[], grain: Vec3): Vec3 {
  const axes: readonly Vec3[] = [
    [0, 1, 0],
    [0, 0, 1],
    [1, 0, 0],
  ];
  const flat = axes
    .map((axis) => subtract(axis, scale(grain, dot(axis, grain))))
    .filter((direction) => length(direction) > 0.5);
  const size = (direction: Vec3) => {
    const along = points.map((point) => dot(point, direction) / length(direction));
    return Math.max(...along) - Math.min(...along);
  };
  return flat.reduce((best, direction) => (size(direction) > size(best) + 1e-6 ? direction : best));
}

const WAYS = [
  ['left', 'right'],
  ['front', 'back'],
  ['bottom', 'top'],
] as const;

/** Where a corner is, seen by the person in front: against its neighbours along the face and across it. */
function wordsOf(of: { name: string; face: string; corners: FaceCorners }, which: number): string {
  const at = of.corners[which]!;
  // corners differ in the first bit across and in the second along
  const told = (neighbour: number, ways: readonly number[]) => {
    const from = subtract(at, of.corners[neighbour]!);
    const way = ways.reduce((most, i) => (Math.abs(from[i]!) > Math.abs(from[most]!) + 1e-6 ? i : most));
    return { way, word: WAYS[way]![from[way]! < 0 ? 0 : 1] };
  };
  const along = told(which ^ 2, [2, 1, 0]);
  // a corner far along from its neighbour across is told across all the same: no corner is at the top twice
  const across = told(
    which ^ 1,
    [2, 1, 0].filter((way) => way !== along.way),
  );
  const ordered = [along, across].toSorted((a, b) => b.way - a.way).map(({ word }) => word);
  return `${of.name}, ${ordered.join(' ')} corner of its ${of.face}`;
}

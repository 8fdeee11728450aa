import type { Mortise } from '../board/index.js';
import { type Frame, frameIn, pointOut, type Vec3 } from '../frame/index.js';
import type { Joint, Tenon } from '../joinery/index.js';
import { type Moments, regionMoments } from '../profile/index.js';
import { mortiseCavity, mortiseWall } from './cavity.js';
import type { Body } from './kernel.js';
import { matrix } from './kernel.js';
import { type Box, box, boxIn, gap, hit, section } from './measure.js';
import type { BoardSolid, Solids } from './solids.js';

/** How far a cheek clearance and the wood past a mortise's end are looked for, mm. */
const CHEEK_REACH = 5;
const END_REACH = 60;

/** What was found of one mortise, on the solids; mm. */
export interface MortiseMeasure {
  readonly board: string;
  readonly mortise: Mortise;
  readonly width: number;
  readonly length: number;
  readonly depth: number;
  /** Air between the tenon's end and the mortise's bottom; negative when the tenon goes deeper. */
  readonly bottomClearance: number;
  /** Least air round the tenon's flanks; 0 when it touches or overlaps. */
  readonly cheekClearance: number;
  /** Thinnest wood round the cavity; 0 when it breaks through or meets another cavity. */
  readonly wall: number;
  /** Wood past the nearer end of the mortise, along its length, just below its mouth. */
  readonly endWood: number;
  /** The board's extent along the mortise's axis. */
  readonly boardDepth: number;
}

/** What was found of one tenon and its two mortises. */
export interface TenonMeasure {
  readonly joint: Joint;
  readonly tenon: Tenon;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly mortises: readonly [a: MortiseMeasure, b: MortiseMeasure];
  /** How far apart the two mortises' axes pass at the seat, mm, and their angle in tilt or turn, degrees. */
  readonly offLine: number;
  readonly offLineDeg: number;
}

/** Measures every joint on the solids, by ways that do not use the sizes the mortises were cut with. */
export function measureJoints(solids: Solids): readonly TenonMeasure[] {
  return solids.design.joints.flatMap((joint) =>
    joint.tenons.map((tenon) => {
      const extent = boxIn(solids.tenons.get(tenon.id)!.body, tenon.place);
      const a = measureMortise(solids, joint.a, tenon, extent, -1);
      const b = measureMortise(solids, joint.b, tenon, extent, 1);
      return {
        joint,
        tenon,
        thickness: extent.max[1] - extent.min[1],
        width: extent.max[0] - extent.min[0],
        length: extent.max[2] - extent.min[2],
        mortises: [a.measure, b.measure] as const,
        ...offLine(a.axis, b.axis),
      };
    }),
  );
}

/** A cavity's axis: where it crosses the seat, its slope, and which way its length runs. */
interface Axis {
  readonly at: readonly [x: number, y: number];
  readonly slope: readonly [x: number, y: number];
  readonly directionDeg: number;
}

function measureMortise(
  solids: Solids,
  boardId: string,
  tenon: Tenon,
  extent: Box,
  into: 1 | -1,
): { measure: MortiseMeasure; axis: Axis } {
  const board = solids.boards.get(boardId)!;
  const mortise = board.board.mortises.find((one) => one.tenon === tenon.id)!;
  const cavity = mortiseCavity(solids.kernel, board, mortise);
  const seen = cavity.transform(matrix(frameIn(tenon.place, board.place)));
  const room = box(seen);
  const axis = axisOf(seen, into);
  seen.delete();
  const bottomClearance = into < 0 ? extent.min[2] - room.min[2] : room.max[2] - extent.max[2];
  const own = boxIn(cavity, mortise.at);
  return {
    axis,
    measure: {
      board: boardId,
      mortise,
      width: own.max[1] - own.min[1],
      length: own.max[0] - own.min[0],
      depth: -own.min[2],
      bottomClearance,
      cheekClearance: flankClearance(solids, board, tenon, bottomClearance),
      wall: mortiseWall(solids.kernel, board, mortise, cavity).least,
      endWood: endWood(board, mortise.at, own),
      boardDepth: depthOf(board, mortise.at),
    },
  };
}

/** The gap round the flanks; the tenon's ends are trimmed when they come nearer than its flanks. */
function flankClearance(solids: Solids, board: BoardSolid, tenon: Tenon, bottom: number): number {
  const body = solids.tenons.get(tenon.id)!.body;
  const least = gap(body, board.body, CHEEK_REACH);
  if (least < bottom - 1e-6) return least;
  const { z, origin } = tenon.place;
  const trim = Math.min(tenon.intoA, tenon.intoB) / 4 + Math.max(0, -bottom);
  const along = z[0] * origin[0] + z[1] * origin[1] + z[2] * origin[2];
  const first = body.trimByPlane([...z], along - tenon.intoA + trim);
  const flanks = first.trimByPlane([-z[0], -z[1], -z[2]], -(along + tenon.intoB - trim));
  const found = gap(flanks, board.body, CHEEK_REACH);
  first.delete();
  flanks.delete();
  return found;
}

function axisOf(cavity: Body, into: 1 | -1): Axis {
  const room = box(cavity);
  const depth = room.max[2] - room.min[2];
  const at = (share: number): { z: number; moments: Moments } => {
    const z = into * depth * share;
    const plane: Frame = { origin: [0, 0, z], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
    return { z, moments: regionMoments(section(cavity, plane)) };
  };
  const near = at(0.1);
  const far = at(0.9);
  const [nx, ny] = near.moments.centre;
  const slope = [0, 1].map((i) => (far.moments.centre[i]! - near.moments.centre[i]!) / (far.z - near.z));
  const [sx, sy] = [slope[0]!, slope[1]!];
  return {
    at: [nx - sx * near.z, ny - sy * near.z],
    slope: [sx, sy],
    directionDeg: near.moments.directionDeg,
  };
}

function offLine(a: Axis, b: Axis): { offLine: number; offLineDeg: number } {
  const tilt = (Math.atan(Math.hypot(a.slope[0] - b.slope[0], a.slope[1] - b.slope[1])) * 180) / Math.PI;
  const turned = Math.abs(a.directionDeg - b.directionDeg) % 180;
  return {
    offLine: Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]),
    offLineDeg: Math.max(tilt, Math.min(turned, 180 - turned)),
  };
}

function endWood(board: BoardSolid, at: Frame, room: Box): number {
  const below = Math.max(room.min[2] / 2, -0.5);
  const across = (room.min[1] + room.max[1]) / 2;
  const past = (side: 1 | -1): number => {
    const end = side > 0 ? room.max[0] : room.min[0];
    const from: Vec3 = pointOut(at, [end + side * 0.01, across, below]);
    const to: Vec3 = pointOut(at, [end + side * END_REACH, across, below]);
    return (hit(board.own, from, to) ?? END_REACH) + 0.01;
  };
  return Math.min(past(1), past(-1));
}

function depthOf(board: BoardSolid, at: Frame): number {
  const whole = boxIn(board.stock, at);
  return whole.max[2] - whole.min[2];
}

import { type Mortise, mouthOf } from '../board/index.js';
import { add, dot, frameIn, pointOut, scale, subtract, unit, type Vec3 } from '../frame/index.js';
import type { Joint, Tenon } from '../joinery/index.js';
import { type Moments, outlineMoments } from '../profile/index.js';
import { PAST_WALL } from '../tolerances.js';
import { boardBody } from './board-body.js';
import { type Cavity, mortiseCavities } from './cavity.js';
import { clearancesByFacets, clearancesByKernel } from './clearances.js';
import { type Facets, facetsBox, facetsOut, facetsSection } from './facets.js';
import { type Box, box, boxIn, hit } from './measure.js';
import type { BoardSolid, Solids } from './solids.js';

/** How far the wood past a mortise's end is looked for, mm. */
const END_REACH = 60;

/** The figures of one mortise; mm. */
export interface MortiseFigures {
  readonly board: string;
  readonly mortise: Mortise;
  readonly width: number;
  readonly length: number;
  readonly depth: number;
  /** Air between the tenon's end and the mortise's bottom; negative when the tenon goes deeper. */
  readonly bottomClearance: number;
  /** Least air beside the tenon's flat cheeks; 0 when it touches or overlaps. */
  readonly cheekClearance: number;
  /** Least air all round the tenon but at its ends, its round edges included; 0 when it touches or overlaps. */
  readonly flankClearance: number;
  /** Thinnest wood round the cavity; 0 when it breaks through or meets another cavity. */
  readonly wall: number;
  /** Wood past the ends of the mortise to the nearest edge of the board, along its length, just below its mouth. */
  readonly endWood: number;
  /** Wood past the mortise's end to the next cavity before the edge, mm; infinite when none lies there. */
  readonly webWood: number;
  /** The board's extent along the mortise's axis. */
  readonly boardDepth: number;
}

/** What was found of one mortise, on the solids. */
export interface MortiseMeasure extends MortiseFigures {
  /** Its air, from just below the mouth down. */
  readonly cavity: Cavity;
}

/** The figures of one tenon and its two mortises. */
export interface TenonFigures {
  readonly joint: Joint;
  readonly tenon: Tenon;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly mortises: readonly [a: MortiseFigures, b: MortiseFigures];
  /** How far apart the two mortises' axes pass at the seat, mm, and their angle in tilt or turn, degrees. */
  readonly offLine: number;
  readonly offLineDeg: number;
}

/** Figures of a tenon and its two mortises, measured on the solids; mm. */
export interface TenonMeasure extends TenonFigures {
  readonly mortises: readonly [a: MortiseMeasure, b: MortiseMeasure];
}

/** Measures every joint on the solids, by ways that do not use the sizes the mortises were cut with. */
export function measureJoints(solids: Solids): readonly TenonMeasure[] {
  const cavities = new Map([...solids.boards.values()].map((board) => [board.id, cavitiesOf(solids, board)]));
  return solids.design.joints.flatMap((joint) =>
    joint.tenons.map((tenon) => {
      const extent = box(solids.tenons.get(tenon.id)!.own);
      const a = measureMortise(solids, joint.a, cavities.get(joint.a)!, tenon, extent, -1);
      const b = measureMortise(solids, joint.b, cavities.get(joint.b)!, tenon, extent, 1);
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

/**
 * The cavities of a board. Where mitred tenons meet, two cavities are meant to be one: each is looked at in the board as it
 * is before the other is cut.
 */
function cavitiesOf({ kernel, design }: Solids, solid: BoardSolid): ReadonlyMap<Mortise, Cavity> {
  const met = mitredIn(design.joints, solid.id);
  const cavities = new Map(mortiseCavities(kernel, solid));
  for (const [joint, mate] of met) {
    const alone = solid.board.mortises.filter((mortise) => mortise.joint !== mate);
    const board = { ...solid.board, mortises: alone };
    // its cavities may be asked for their bodies later
    const own = kernel.keep(boardBody(kernel, board, solid.stock));
    for (const [mortise, cavity] of mortiseCavities(kernel, { ...solid, board, own })) {
      if (mortise.joint === joint) cavities.set(mortise, cavity);
    }
  }
  return cavities;
}

/** For each joint whose tenons are mitred in a board, the joint they meet there. */
export const mitredIn = (joints: readonly Joint[], board: string): ReadonlyMap<string, string> =>
  new Map(
    joints.flatMap(({ id, a, b, tenons: [first] }) =>
      [a === board ? first?.mitreA : undefined, b === board ? first?.mitreB : undefined].flatMap((mitre) =>
        mitre ? [[id, mitre.meets] as const] : [],
      ),
    ),
  );

/** A cavity's axis: where it crosses the seat, its slope, and which way its length runs. */
interface Axis {
  readonly at: readonly [x: number, y: number];
  readonly slope: readonly [x: number, y: number];
  readonly directionDeg: number;
}

function measureMortise(
  solids: Solids,
  boardId: string,
  cavities: ReadonlyMap<Mortise, Cavity>,
  tenon: Tenon,
  extent: Box,
  into: 1 | -1,
): { measure: MortiseMeasure; axis: Axis } {
  const board = solids.boards.get(boardId)!;
  const mortise = board.board.mortises.find((one) => one.tenon === tenon.id)!;
  const cavity = cavities.get(mortise)!;
  const seen = facetsOut(cavity.facets, frameIn(tenon.place, board.place));
  const room = facetsBox(seen);
  const axis = axisOf(seen, room, into);
  const bottomClearance = into < 0 ? extent.min[2] - room.min[2] : room.max[2] - extent.max[2];
  const own = facetsBox(cavity.facets, mortise.at);
  const solid = solids.tenons.get(tenon.id)!;
  return {
    axis,
    measure: {
      board: boardId,
      mortise,
      width: own.max[1] - own.min[1],
      length: own.max[0] - own.min[0],
      depth: -own.min[2],
      bottomClearance,
      ...(clearancesByFacets(board, mortise, cavity, solid, bottomClearance) ??
        clearancesByKernel(solids.kernel, board, solid, bottomClearance)),
      wall: cavity.wall.least,
      ...woodPastEnds(board, mortise, own),
      boardDepth: depthOf(board, mortise),
      cavity,
    },
  };
}

function axisOf(cavity: Facets, room: Box, into: 1 | -1): Axis {
  const [reach, above] = into > 0 ? [room.max[2], -room.min[2]] : [-room.min[2], room.max[2]];
  // an oblique mouth stands above the seat on one side and as far below it on the other, that of a board moved off lies
  // beyond it: look below both
  const mouth = Math.abs(above);
  const at = (share: number): { z: number; moments: Moments } => {
    const z = into * (mouth + (reach - mouth) * share);
    return { z, moments: outlineMoments(facetsSection(cavity, z)) };
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

function woodPastEnds(board: BoardSolid, mortise: Mortise, room: Box): { endWood: number; webWood: number } {
  const { at } = mortise;
  const across = (room.min[1] + room.max[1]) / 2;
  const { normal } = mouthOf(mortise);
  // along the face, also when the mortise leans from it
  const along = subtract(at.x, scale(at.z, dot(at.x, normal) / dot(at.z, normal)));
  const past = (side: 1 | -1): { readonly wood: number; readonly to: 'edge' | 'cavity' } => {
    const end = side > 0 ? room.max[0] : room.min[0];
    const middle = pointOut(at, [0, across, 0]);
    const below = Math.max(room.min[2] / 2, -0.5);
    const start = add(add(middle, scale(along, end)), scale(at.z, below));
    const out = scale(unit(along), side);
    const [from, to] = [add(start, scale(out, PAST_WALL)), add(start, scale(out, END_REACH))];
    const [wood, stock] = [board.own, board.stock].map((body) => hit(body, from, to) ?? END_REACH);
    return { wood: wood! + PAST_WALL, to: wood! < stock! - PAST_WALL ? 'cavity' : 'edge' };
  };
  const found = [past(1), past(-1)];
  const least = (end: 'edge' | 'cavity') =>
    Math.min(...found.filter(({ to }) => to === end).map(({ wood }) => wood));
  return { endWood: least('edge'), webWood: least('cavity') };
}

/** How far the wood goes along the mortise's axis, from its mouth. */
function depthOf(board: BoardSolid, mortise: Mortise): number {
  if (mortise.faceNormal) {
    const reach = Math.hypot(board.board.blank.length, board.board.blank.width, board.board.blank.thickness);
    const along = (depth: number): Vec3 => pointOut(mortise.at, [0, 0, -depth]);
    return (hit(board.stock, along(0.01), along(reach)) ?? reach) + 0.01;
  }
  const whole = boxIn(board.stock, mortise.at);
  return whole.max[2] - whole.min[2];
}

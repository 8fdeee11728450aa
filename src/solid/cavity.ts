import { type Mortise, mouthOf } from '../board/index.js';
import { angleDeg, dot, pointOut, subtract } from '../frame/index.js';
import { COPLANAR, PARALLEL_DEG } from '../tolerances.js';
import { belowFace, mortiseCutter } from './board-body.js';
import type { Body, Kernel } from './kernel.js';
import { box, gap } from './measure.js';
import type { BoardSolid } from './solids.js';

/** How far round a cavity other wood and air are looked for, mm. */
export const WALL_REACH = 20;

/** Where a cavity is looked for: the cutter's path grown by this, so that the walls found are the board's own, mm. */
const LOOK = 1;

/** Measuring bodies stay this far off the board's own surfaces: coinciding faces leave slivers, mm. */
export const SKIN = 0.01;

/** The thinnest wood beside a cavity. */
export interface Wall {
  /** mm; 0 when the cavity breaks through or meets another; {@link WALL_REACH} when there is more. */
  readonly least: number;
}

/** The air a mortise's cutter left in the finished board. */
export interface Cavity {
  /** Board frame, from just below the mouth down; the kernel owns it. */
  readonly body: Body;
  /** To every outer face but the mouth's, and to every other cavity. */
  readonly wall: Wall;
}

/**
 * The cavities of a board's mortises, found on the solids.
 *
 * Below the plane of its mouth a sound cavity is a piece of air by itself: its wall is the gap to all other air in and round
 * the board. One that is in one piece with other air has no wall there.
 */
export function mortiseCavities(kernel: Kernel, board: BoardSolid): ReadonlyMap<Mortise, Cavity> {
  const air = airOf(kernel, board);
  const cavities = new Map<Mortise, Cavity>();
  for (const mortises of byMouth(board.board.mortises)) {
    const first = mortises[0]!;
    const below = belowFace(air, first.at.origin, mouthOf(first).normal, -SKIN);
    const parts = below.decompose();
    for (const mortise of mortises) {
      const own = partOf(kernel, parts, mortise);
      cavities.set(mortise, own ? soundCavity(kernel, parts, own) : brokenCavity(kernel, board, mortise));
    }
    for (const body of [below, ...parts]) body.delete();
  }
  air.delete();
  return cavities;
}

/** What is not wood, from inside every cavity to a little beyond the reach all round the blank. */
function airOf(kernel: Kernel, board: BoardSolid): Body {
  const { length, width, thickness } = board.board.blank;
  const beyond = WALL_REACH + LOOK;
  const cube = kernel.wasm.Manifold.cube([length + 2 * beyond, width + 2 * beyond, thickness + 2 * beyond]);
  const room = cube.translate([-beyond, -beyond, -beyond]);
  const air = room.subtract(board.own);
  cube.delete();
  room.delete();
  return air;
}

/** Mortises whose mouths lie in one plane. */
function byMouth(mortises: readonly Mortise[]): readonly (readonly Mortise[])[] {
  const groups: Mortise[][] = [];
  for (const mortise of mortises) {
    const group = groups.find(([first]) => inOnePlane(first!, mortise));
    if (group) group.push(mortise);
    else groups.push([mortise]);
  }
  return groups;
}

function inOnePlane(a: Mortise, b: Mortise): boolean {
  const between = subtract(b.at.origin, a.at.origin);
  const [one, other] = [mouthOf(a).normal, mouthOf(b).normal];
  const off = Math.max(Math.abs(dot(one, between)), Math.abs(dot(other, between)));
  return off < COPLANAR && angleDeg(one, other) < PARALLEL_DEG;
}

/** The piece of air that is this mortise's alone: about its middle, nowhere beyond its cutter's path. */
function partOf(kernel: Kernel, parts: readonly Body[], mortise: Mortise): Body | undefined {
  const around = mortiseCutter(kernel, mortise, LOOK);
  const path = box(around);
  around.delete();
  const middle = middleOf(mortise);
  const own = parts.filter((part) => {
    const { min, max } = box(part);
    return middle.every(
      (at, i) => min[i]! <= at && at <= max[i]! && path.min[i]! <= min[i]! && max[i]! <= path.max[i]!,
    );
  });
  return own.length === 1 ? own[0] : undefined;
}

const middleOf = (mortise: Mortise) => pointOut(mortise.at, [0, 0, -mortise.depth / 2]);

function soundCavity(kernel: Kernel, parts: readonly Body[], own: Body): Cavity {
  const others = parts.filter((part) => part !== own);
  const least = others.reduce((nearest, part) => gap(own, part, nearest), WALL_REACH);
  return { body: kernel.keep(own.translate([0, 0, 0])), wall: { least: least <= 2 * SKIN ? 0 : least } };
}

/** A cavity that is in one piece with other air: what lies near its cutter's path. */
function brokenCavity(kernel: Kernel, board: BoardSolid, mortise: Mortise): Cavity {
  const around = mortiseCutter(kernel, mortise, LOOK, -SKIN);
  const air = kernel.keep(around.subtract(board.own));
  around.delete();
  const middle = middleOf(mortise);
  const parts = air.decompose();
  const own = parts.find((part) => {
    const { min, max } = box(part);
    return middle.every((at, i) => min[i]! <= at && at <= max[i]!);
  });
  for (const part of parts) if (part !== own) part.delete();
  return { body: own ? kernel.keep(own) : air, wall: { least: 0 } };
}

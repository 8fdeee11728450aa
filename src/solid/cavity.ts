import { type Mortise, mouthOf } from '../board/index.js';
import { add, angleDeg, dot, pointOut, scale, subtract, type Vec3 } from '../frame/index.js';
import { once } from '../once.js';
import { COPLANAR, PARALLEL_DEG, SKIN } from '../tolerances.js';
import { belowFace, mortiseCutter } from './board-body.js';
import { type FacetTree, facetGap, facetTree } from './facet-tree.js';
import { doubleMesh, type Facets, facetsBox, facetsOf, facetsVolume, turnedRound } from './facets.js';
import type { Body, Kernel } from './kernel.js';
import { knownSolid, mortiseKey } from './known-solid.js';
import { type Box, box, boxGap, gap } from './measure.js';
import type { BoardSolid } from './solids.js';
import { surfaceParts } from './surface-parts.js';
import type { CavityFigures } from './told.js';

/** How far round a cavity other wood and air are looked for, mm. */
export const WALL_REACH = 20;

/** Where a cavity is looked for: the cutter's path grown by this, so that the walls found are the board's own, mm. */
const LOOK = 1;

/** The air a mortise's cutter left in the finished board. */
export interface Cavity extends CavityFigures {
  /** In one piece with no other air: its facets enclose nothing but air. */
  readonly alone: boolean;
  /** Board frame, from just below the mouth down; made when it is asked for; the kernel owns it. */
  readonly body: () => Body;
}

/**
 * The cavities of a board's mortises, found on the solids.
 *
 * Below the plane of its mouth a sound cavity is a piece of air by itself: its wall is the gap to all other air in and round
 * the board. The board's own facets tell so: cut off at that plane, those of a sound cavity are a piece of surface by itself,
 * nowhere beyond its cutter's path, with no other piece inside; and as the shortest way to other air runs through wood, it ends
 * on the nearest facet of another piece. Whatever is not so is looked at by the kernel ({@link cavitiesByKernel}).
 */
export function mortiseCavities(kernel: Kernel, board: BoardSolid): ReadonlyMap<Mortise, Cavity> {
  let looked: ReadonlyMap<Mortise, Cavity> | undefined;
  const byKernel = (mortise: Mortise): Cavity => {
    looked ??= cavitiesByKernel(kernel, board);
    return looked.get(mortise)!;
  };
  const { cavities } = knownSolid(board.own);
  for (const mortises of byMouth(board.board.mortises)) {
    const parts = once(() => partsBelow(board, mortises[0]!));
    for (const mortise of mortises) {
      const key = mortiseKey(mortise);
      if (!cavities.has(key))
        cavities.set(key, figuresAlone(parts(), mortise, pointBelowMouth(mortises[0]!)));
    }
  }
  return new Map(
    board.board.mortises.map((mortise) => {
      const figures = cavities.get(mortiseKey(mortise));
      return [
        mortise,
        figures ? { ...figures, alone: true, body: () => byKernel(mortise).body() } : byKernel(mortise),
      ];
    }),
  );
}

/** The pieces of a board's surface below the plane of a mouth. */
function partsBelow(board: BoardSolid, first: Mortise): readonly Part[] {
  const { normal } = mouthOf(first);
  return surfaceParts(doubleMesh(board.own), normal, dot(normal, pointBelowMouth(first))).map((facets) => ({
    facets,
    box: facetsBox(facets),
    tree: once(() => facetTree(facets)),
  }));
}

/** A piece of a board's surface below a mouth's plane. */
interface Part {
  readonly facets: Facets;
  readonly box: Box;
  readonly tree: () => FacetTree;
}

const pointBelowMouth = (mortise: Mortise) => add(mortise.at.origin, scale(mouthOf(mortise).normal, -SKIN));

/** The piece of surface that is this mortise's alone, if there is one. */
function partAlone(parts: readonly Part[], mortise: Mortise, onPlane: Vec3): Part | undefined {
  const middle = middleOf(mortise);
  const about = parts.filter(({ box: { min, max } }) =>
    middle.every((at, i) => min[i]! <= at && at <= max[i]!),
  );
  const own = about.filter(({ facets }) => withinPath(facets, mortise));
  const [only] = own;
  if (!only || own.length > 1) return undefined;
  // the wood of a peg that stands in it would be a piece inside its box; that of a peg alone has no air in it
  const inside = parts.filter(
    ({ box }) =>
      box !== only.box &&
      [0, 1, 2].every((i) => box.min[i]! >= only.box.min[i]! && box.max[i]! <= only.box.max[i]!),
  );
  return inside.length === 0 && facetsVolume(only.facets, onPlane) < 0 ? only : undefined;
}

/** Does a surface lie within a mortise's path, grown by {@link LOOK}? */
function withinPath(facets: Facets, { at, length, width, depth }: Mortise): boolean {
  const half = Math.max(0, (length - width) / 2);
  const most = (width / 2 + LOOK) ** 2;
  const { origin: o, x, y, z } = at;
  for (let i = 0; i < facets.length; i += 3) {
    const [a, b, c] = [facets[i]! - o[0], facets[i + 1]! - o[1], facets[i + 2]! - o[2]];
    if (a * z[0] + b * z[1] + c * z[2] < -depth - LOOK) return false;
    const along = Math.max(0, Math.abs(a * x[0] + b * x[1] + c * x[2]) - half);
    const across = a * y[0] + b * y[1] + c * y[2];
    if (along * along + across * across > most) return false;
  }
  return true;
}

/** What is told of a cavity that is a piece of air by itself; nothing of any other. */
function figuresAlone(parts: readonly Part[], mortise: Mortise, onPlane: Vec3): CavityFigures | undefined {
  const own = partAlone(parts, mortise, onPlane);
  if (!own) return undefined;
  const others = parts.filter((part) => part !== own);
  const least = others.reduce(
    (nearest, part) =>
      boxGap(own.box, part.box) < nearest ? facetGap(own.tree(), part.tree(), nearest) : nearest,
    WALL_REACH,
  );
  const facets = turnedRound(own.facets);
  return {
    facets,
    mouth: onPlane,
    volume: facetsVolume(facets, onPlane),
    wall: { least: least <= 2 * SKIN ? 0 : least },
  };
}

/** Every mortise's cavity by the kernel's own booleans: for those that are in one piece with other air, and to prove the others. */
export function cavitiesByKernel(kernel: Kernel, board: BoardSolid): ReadonlyMap<Mortise, Cavity> {
  const air = airOf(kernel, board);
  const cavities = new Map<Mortise, Cavity>();
  for (const mortises of byMouth(board.board.mortises)) {
    const first = mortises[0]!;
    const below = belowFace(air, first.at.origin, mouthOf(first).normal, -SKIN);
    const parts = below.decompose();
    for (const mortise of mortises) {
      const own = partOf(kernel, parts, mortise);
      const [body, least] = own
        ? [kernel.keep(own.translate([0, 0, 0])), gapToOthers(parts, own)]
        : [brokenCavity(kernel, board, mortise), 0];
      cavities.set(mortise, {
        facets: facetsOf(body),
        mouth: pointBelowMouth(mortise),
        volume: body.volume(),
        alone: false,
        wall: { least },
        body: () => body,
      });
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

function gapToOthers(parts: readonly Body[], own: Body): number {
  const others = parts.filter((part) => part !== own);
  const least = others.reduce((nearest, part) => gap(own, part, nearest), WALL_REACH);
  return least <= 2 * SKIN ? 0 : least;
}

/** A cavity that is in one piece with other air: what lies near its cutter's path. */
function brokenCavity(kernel: Kernel, board: BoardSolid, mortise: Mortise): Body {
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
  return own ? kernel.keep(own) : air;
}

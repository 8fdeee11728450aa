import { type Mortise, mouthOf } from '../board/index.js';
import { dot, type Frame, frameIn, pointOut, settled, settledLength, type Vec3 } from '../frame/index.js';
import { FACET_IN_PLANE, SAME_POINT, UNSEEN } from '../tolerances.js';
import type { Cavity } from './cavity.js';
import { cutConvex, isConvex } from './convex.js';
import { type FacetTree, facetGap, facetsNear, facetTree } from './facet-tree.js';
import { type Facets, facetsBox, facetsHold, facetsIn, facetsOf, facetsOut } from './facets.js';
import { type Body, type Kernel, matrix } from './kernel.js';
import { frameNumbers, knownSolid, mortiseKey } from './known-solid.js';
import { type Box, box, gap, grown, withinBox } from './measure.js';
import type { BoardSolid, TenonSolid } from './solids.js';
import type { Clearances } from './told.js';

/** How far a cheek clearance is looked for, mm. */
const CHEEK_REACH = 5;

/** The parts of a tenon that are looked at, in its own frame; the ends are left out when they come nearer than the flanks. */
interface Looked {
  readonly flanks: Box;
  readonly cheeks: Box;
}

/** How much of each end of a tenon is left out, mm. */
const endsLeftOut = ({ tenon }: TenonSolid, bottom: number): number =>
  Math.min(tenon.intoA, tenon.intoB) / 4 + Math.max(0, -bottom);

function looked(own: Body, trim: number): Looked {
  const extent = box(own);
  const { min, max } = grown(extent, 1);
  const [from, to] = [extent.min[2] + trim, extent.max[2] - trim];
  // the round edges are as wide as half the thickness; the facets beside them are kept out as well
  const edge = ((extent.max[1] - extent.min[1]) / 2) * 1.25;
  const middle = (extent.min[0] + extent.max[0]) / 2;
  const half = Math.max(extent.max[0] - middle - edge, edge / 4);
  return {
    flanks: { min: [min[0], min[1], from], max: [max[0], max[1], to] },
    cheeks: { min: [middle - half, min[1], from], max: [middle + half, max[1], to] },
  };
}

/** A tenon's facets and those of its parts. */
interface Facetted {
  readonly whole: FacetTree;
  readonly flanks: FacetTree;
  readonly cheeks: FacetTree;
}

/** Tenons of one size share a body, and most are looked at with the same ends left out. */
const facetted = new WeakMap<Body, Map<number, Facetted>>();

function facettedTenon(own: Body, trim: number): Facetted {
  const known = facetted.get(own) ?? new Map<number, Facetted>();
  facetted.set(own, known);
  const found = known.get(trim);
  if (found) return found;
  const boxes = looked(own, trim);
  // its ends closed anew, for the boxes of their facets
  const withEnds = grown(box(own), -UNSEEN);
  const between = (facets: Facets, axis: 0 | 2, { min, max }: Box): Facets =>
    cutConvex(cutConvex(facets, axis, min[axis], -1), axis, max[axis], 1);
  const whole = facetsOf(own);
  const flanks = between(whole, 2, boxes.flanks);
  const made = {
    whole: facetTree(between(whole, 2, withEnds)),
    flanks: facetTree(flanks),
    cheeks: facetTree(between(flanks, 0, boxes.cheeks)),
  };
  known.set(trim, made);
  return made;
}

/**
 * The clearances from the facets of tenon and board.
 *
 * Facets alone cannot tell air from wood, so a spot near the end of what is looked at must lie in the mortise's own air: when no facets
 * cross, all of it does.
 *
 * @returns undefined when that is not so, or the tenon is not convex: the kernel must look
 */
export function clearancesByFacets(
  board: BoardSolid,
  mortise: Mortise,
  cavity: Cavity,
  tenon: TenonSolid,
  bottom: number,
): Clearances | undefined {
  if (!cavity.alone) return undefined;
  const { clearances } = knownSolid(board.own);
  const { id: _, place: __, ...sizes } = tenon.tenon;
  const place = settled(frameIn(board.place, tenon.tenon.place));
  const left = settledLength(bottom);
  const asked = [mortiseKey(mortise), sizes, frameNumbers(place), tenon.joint.a === board.id, left];
  const key = JSON.stringify(asked);
  if (!clearances.has(key)) clearances.set(key, measuredByFacets(board, mortise, place, cavity, tenon, left));
  return clearances.get(key);
}

function measuredByFacets(
  board: BoardSolid,
  mortise: Mortise,
  place: Frame,
  cavity: Cavity,
  tenon: TenonSolid,
  bottom: number,
): Clearances | undefined {
  if (!isConvex(tenon.own)) return undefined;
  const { whole, flanks, cheeks } = facettedTenon(tenon.own, endsLeftOut(tenon, bottom));
  if (cheeks.facets.length === 0) return undefined;
  const { min, max } = facetsBox(flanks.facets);
  const inset = (max[2] - min[2]) / 16;
  const end = tenon.joint.a === board.id ? min[2] + inset : max[2] - inset;
  const deep = pointOut(place, [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, end]);
  if (!facetsHold(cavity.facets, cavity.mouth, deep)) return undefined;
  // along the tenon's axes: facets have flat boxes there
  const reached = grown(facetsBox(facetsOut(whole.facets, place)), CHEEK_REACH);
  const { normal } = mouthOf(mortise);
  const near = notInPlane(
    facetsNear(knownSolid(board.own).tree, reached),
    normal,
    dot(normal, mortise.at.origin),
  );
  const wood = facetTree(facetsIn(near, place));
  // each part holds the one before, so it is no farther off, and only what is nearer need be looked for
  const cheekClearance = facetGap(cheeks, wood, CHEEK_REACH);
  const flanksApart = facetGap(flanks, wood, cheekClearance);
  const apart = facetGap(whole, wood, flanksApart);
  return { cheekClearance, flankClearance: apart < bottom - SAME_POINT ? apart : flanksApart };
}

/**
 * Facets but those in a plane. The tenon passes through the mouth's plane within the mouth, and the nearer a spot of that plane
 * lies to where it does, the nearer it is to the tenon: so the nearest spot of the face round the mouth lies on an edge of it,
 * which other facets have as well. Left in, the many long facets of that face come into every box along the tenon.
 */
function notInPlane(facets: Facets, normal: Vec3, offset: number): Facets {
  const kept = new Float64Array(facets.length);
  let used = 0;
  const [x, y, z] = normal;
  const off = (k: number) => Math.abs(facets[k]! * x + facets[k + 1]! * y + facets[k + 2]! * z - offset);
  for (let i = 0; i < facets.length; i += 9) {
    if (Math.max(off(i), off(i + 3), off(i + 6)) <= FACET_IN_PLANE) continue;
    for (let k = 0; k < 9; k += 1) kept[used + k] = facets[i + k]!;
    used += 9;
  }
  return kept.subarray(0, used);
}

/** Clearances of a tenon in its mortises by the kernel's own booleans, mm: the oracle of the fast way. */
export function clearancesByKernel(
  kernel: Kernel,
  board: BoardSolid,
  tenon: TenonSolid,
  bottom: number,
): Clearances {
  // along the tenon's axes and near it only: facets have flat boxes there, and few come near each other
  const seen = board.own.transform(matrix(frameIn(tenon.tenon.place, board.place)));
  const wood = withinBox(kernel, seen, grown(box(tenon.own), CHEEK_REACH + 1));
  const whole = gap(tenon.own, wood, CHEEK_REACH);
  const boxes = looked(tenon.own, endsLeftOut(tenon, bottom));
  const flanks = withinBox(kernel, tenon.own, boxes.flanks);
  const flankClearance = whole < bottom - SAME_POINT ? whole : gap(flanks, wood, CHEEK_REACH);
  const cheeks = withinBox(kernel, tenon.own, boxes.cheeks);
  const cheekClearance = gap(cheeks, wood, CHEEK_REACH);
  for (const one of [seen, wood, flanks, cheeks]) one.delete();
  return { cheekClearance, flankClearance };
}

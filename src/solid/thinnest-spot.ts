import { mouthOf } from '../board/index.js';
import { dot, pointOut } from '../frame/index.js';
import { SKIN } from '../tolerances.js';
import { facetTree } from './facet-tree.js';
import { facetsBox, facetsOf } from './facets.js';
import type { MortiseMeasure } from './joint-measures.js';
import { grown } from './measure.js';
import { nearestSpots, type Spots } from './nearest-spots.js';
import type { BoardSolid } from './solids.js';

/**
 * Where the wood round a mortise is thinnest: from a spot of its wall to one of the board's other surface, assembly frame.
 *
 * @returns undefined when there is no wall: the mortise breaks through
 */
export function thinnestSpot(
  board: BoardSolid,
  { mortise, wall, cavity }: MortiseMeasure,
): Spots | undefined {
  if (wall === 0 || !cavity.alone) return undefined;
  const { normal } = mouthOf(mortise);
  const mouth = dot(normal, mortise.at.origin);
  const own = grown(facetsBox(cavity.facets), 2 * SKIN);
  // all of the board's surface but the mortise itself, and the face its mouth is in
  const others = facetsOf(board.own);
  const kept: number[] = [];
  for (let i = 0; i < others.length; i += 9) {
    const corners = [0, 3, 6].map((k) => [others[i + k]!, others[i + k + 1]!, others[i + k + 2]!] as const);
    const itself = corners.every((corner) =>
      corner.every((at, axis) => own.min[axis]! <= at && at <= own.max[axis]!),
    );
    const inMouth = corners.every((corner) => dot(normal, corner) >= mouth - 2 * SKIN);
    if (!itself && !inMouth) kept.push(...corners.flat());
  }
  const spots = nearestSpots(cavity.facets, facetTree(Float64Array.from(kept)), wall);
  return spots && { from: pointOut(board.place, spots.from), to: pointOut(board.place, spots.to) };
}

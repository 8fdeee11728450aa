import { directionIn, type Frame, frameIn, type Vec3 } from '../frame/index.js';
import { PATH_CLEAR } from '../tolerances.js';
import { isConvex } from './convex.js';
import { facetGap, facetTree } from './facet-tree.js';
import { type DoubleMesh, doubleMesh, type Facets, facetsBox, facetsOut } from './facets.js';
import type { Body } from './kernel.js';
import { knownSolid } from './known-solid.js';

/** A body and the frame it stands in. */
export interface Placed {
  readonly own: Body;
  readonly place: Frame;
}

/**
 * Does a convex body surely stay clear of another on a straight way to where it stands?
 *
 * Its path's surface must come no nearer than a hair to the other's, and each must have a corner outside the other's box: two
 * bodies whose surfaces do not meet are then apart. False proves nothing: the kernel must look.
 *
 * @param from where it starts, as a shift in the frame around, mm
 */
export function pathClear(moving: Placed, still: Placed, from: Vec3): boolean {
  if (!isConvex(moving.own)) return false;
  const path = sweptFacets(doubleMesh(moving.own), directionIn(moving.place, from));
  const seen = facetsOut(path, frameIn(still.place, moving.place));
  const { tree } = knownSolid(still.own);
  return (
    standsOut(seen, tree.facets) &&
    standsOut(tree.facets, seen) &&
    facetGap(facetTree(seen), tree, PATH_CLEAR) >= PATH_CLEAR
  );
}

/** Has one a corner outside the other's box? */
function standsOut(facets: Facets, of: Facets): boolean {
  const { min, max } = facetsBox(of);
  return facets.some((at, i) => at < min[(i % 3) as 0 | 1 | 2] || at > max[(i % 3) as 0 | 1 | 2]);
}

/**
 * The surface of all a convex body passes from a shift to where it is: the sides that lead stand where it ends, those that
 * trail where it starts, and each side between the two is drawn out.
 */
function sweptFacets({ corners, triangles }: DoubleMesh, from: Vec3): Facets {
  const count = corners.length / 3;
  const facets: number[] = [];
  const put = (corner: number, started: boolean): void => {
    for (let j = 0; j < 3; j += 1) facets.push(corners[3 * corner + j]! + (started ? from[j]! : 0));
  };
  const trails = new Map<number, boolean>();
  for (let t = 0; t < triangles.length; t += 3) {
    const three = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
    const trailing = against(corners, three, from);
    for (let k = 0; k < 3; k += 1) {
      put(three[k]!, trailing);
      trails.set(three[k]! * count + three[(k + 1) % 3]!, trailing);
    }
  }
  for (const [side, trailing] of trails) {
    const [a, b] = [Math.floor(side / count), side % count];
    if (!trailing || trails.get(b * count + a)) continue;
    for (const [corner, started] of [
      [b, true],
      [a, true],
      [a, false],
      [b, true],
      [a, false],
      [b, false],
    ] as const) {
      put(corner, started);
    }
  }
  return Float64Array.from(facets);
}

/** Does a triangle look back to where the way starts? */
function against(corners: Float64Array, [a, b, c]: readonly [number, number, number], from: Vec3): boolean {
  const side = (to: number, j: number) => corners[3 * to + j]! - corners[3 * a + j]!;
  const cross = (j: number, k: number) => side(b, j) * side(c, k) - side(b, k) * side(c, j);
  return cross(1, 2) * from[0] + cross(2, 0) * from[1] + cross(0, 1) * from[2] > 0;
}

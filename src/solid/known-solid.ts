import type { Mortise } from '../board/index.js';
import type { Frame } from '../frame/index.js';
import { remembered } from '../remembered.js';
import { type FacetTree, facetTree } from './facet-tree.js';
import { doubleMesh, facetsOf } from './facets.js';
import type { Body } from './kernel.js';
import type { CavityFigures, Clearances } from './told.js';

/** What was measured on bodies that are alike to the last bit of every corner. */
export interface KnownSolid {
  readonly tree: FacetTree;
  /** Cavities by where a mortise is said to be; nothing for one the kernel must look at. */
  readonly cavities: Map<string, CavityFigures | undefined>;
  /** By what is looked at: a tenon's sizes and place, and how deep it goes. */
  readonly clearances: Map<string, Clearances | undefined>;
}

/** So many are kept: more than the boards of a large piece of furniture. */
const KEPT = 100;

const solids = remembered<KnownSolid>(KEPT);

/** A body never changes. */
const known = new WeakMap<Body, KnownSolid>();

/**
 * What is known of bodies like this one, whichever design they were made for: equal boards are measured once, and so is a board
 * that stays as it was while another dimension is tried. The key is the body itself, not what it was made from.
 */
export function knownSolid(body: Body): KnownSolid {
  const solid =
    known.get(body) ??
    solids(printOf(body), () => ({
      tree: facetTree(facetsOf(body)),
      cavities: new Map(),
      clearances: new Map(),
    }));
  known.set(body, solid);
  return solid;
}

/** Where and how large a mortise is, in words: its names are left out. */
export const mortiseKey = ({ at, length, width, depth, faceNormal }: Mortise): string =>
  JSON.stringify([frameNumbers(at), length, width, depth, faceNormal]);

export const frameNumbers = ({ origin, x, y, z }: Frame): readonly number[] => [...origin, ...x, ...y, ...z];

/** Numbers of triangles and corners, and all their bits drawn together to 64 (Fowler, Noll and Vo, in two lanes). */
function printOf(body: Body): string {
  const { corners, triangles } = doubleMesh(body);
  let [one, other] = [0x811c9dc5, 0x9747b28c];
  for (const words of [new Uint32Array(corners.buffer, corners.byteOffset, 2 * corners.length), triangles]) {
    for (const word of words) {
      one = Math.imul(one ^ word, 0x01000193);
      other = Math.imul(other ^ (word + (other >>> 15)), 0x85ebca6b);
    }
  }
  return `${corners.length} ${triangles.length} ${one >>> 0} ${other >>> 0}`;
}

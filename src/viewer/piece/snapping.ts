import { Matrix3, Mesh, type Raycaster, Vector3 } from 'three';
import type { Point } from '../told/index.js';
import type { PiecesShown } from './pieces-shown.js';
import type { ShownPiece } from './shown-piece.js';

/** A spot of a piece that is measured from or to. */
export interface Spot {
  readonly on: 'corner' | 'edge' | 'face';
  readonly piece: string;
  /** Where it is with everything put together, mm. */
  readonly at: Point;
  /** Out of the wood, of a spot on a face. */
  readonly normal?: Point;
}

/** How the picture is seen. */
export interface Sight {
  readonly ray: (x: number, y: number) => Raycaster;
  readonly pixel: (at: Point) => readonly [x: number, y: number];
  /** What the section plane leaves. */
  readonly keeps: (point: Vector3) => boolean;
}

/** Something lies before a spot when it is nearer by more than this, mm: less is the spot's own face. */
const BEFORE = 0.5;

/** So many of the nearest corners and edges are looked at: most of the others are hidden. */
const LOOKED_AT = 6;

/**
 * The spot under a place of the picture: a corner when one is near, or the nearest spot of an edge, or of a face.
 *
 * @param reach how near is near, in pixels
 * @param through hidden corners and edges are found as well: boards are seen through
 */
export function spotUnder(
  shown: PiecesShown,
  { ray, pixel, keeps }: Sight,
  x: number,
  y: number,
  reach: number,
  through: boolean,
): Spot | undefined {
  const solids = [...shown.values()]
    .filter(({ group }) => group.visible)
    .flatMap(({ group }) => group.children)
    .filter((one): one is Mesh => one instanceof Mesh && one.userData.id !== undefined);
  const firstMet = (by: Raycaster) => by.intersectObjects(solids, false).find(({ point }) => keeps(point));
  const isSeen = (at: Vector3): boolean => {
    if (through) return true;
    const by = ray(...pixel([at.x, at.y, at.z]));
    const met = firstMet(by);
    return !met || met.distance > by.ray.origin.distanceTo(at) - BEFORE;
  };
  const away = ({ x: px, y: py, z: pz }: Vector3): number => {
    const [left, top] = pixel([px, py, pz]);
    return Math.hypot(left - x, top - y);
  };
  const { corners, edges } = near(shown, ray(x, y), away, reach, keeps);
  for (const found of [corners, edges]) {
    const seen = found
      .sort((a, b) => a.far - b.far)
      .slice(0, LOOKED_AT)
      .find(({ at }) => isSeen(at));
    if (seen) return spotOn(seen.piece, seen.at, found === corners ? 'corner' : 'edge');
  }
  const met = firstMet(ray(x, y));
  const piece = met && shown.get(met.object.userData.id);
  if (!met || !piece) return undefined;
  const normal = met.face?.normal.clone().applyMatrix3(new Matrix3().getNormalMatrix(met.object.matrixWorld));
  return { ...spotOn(piece, met.point, 'face'), ...(normal && { normal: pointOf(normal.normalize()) }) };
}

const pointOf = ({ x, y, z }: Vector3): Point => [x, y, z];

const spotOn = ({ piece, group }: ShownPiece, at: Vector3, on: Spot['on']): Spot => ({
  on,
  piece: piece.id,
  at: pointOf(at.clone().sub(group.position)),
});

interface Near {
  readonly piece: ShownPiece;
  readonly at: Vector3;
  /** From the place that is looked at, in pixels. */
  readonly far: number;
}

function near(
  shown: PiecesShown,
  { ray }: Raycaster,
  away: (at: Vector3) => number,
  reach: number,
  keeps: (point: Vector3) => boolean,
): { readonly corners: Near[]; readonly edges: Near[] } {
  const [corners, edges]: [Near[], Near[]] = [[], []];
  for (const piece of shown.values()) {
    if (!piece.group.visible) continue;
    for (const { from, to, fromCorner, toCorner } of piece.sharpEdges()) {
      const [a, b] = [from, to].map((end) => end.clone().add(piece.group.position)) as [Vector3, Vector3];
      const at = new Vector3();
      ray.distanceSqToSegment(a, b, undefined, at);
      const far = away(at);
      if (far > 2 * reach || !keeps(at)) continue;
      if (far <= reach) edges.push({ piece, at, far });
      if (fromCorner && away(a) <= reach && keeps(a)) corners.push({ piece, at: a, far: away(a) });
      if (toCorner && away(b) <= reach && keeps(b)) corners.push({ piece, at: b, far: away(b) });
    }
  }
  return { corners, edges };
}

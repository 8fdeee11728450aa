import { add, cross, dot, eachAxis, length, scale, subtract, unit, type Vec3 } from '../frame/index.js';
import { SAME_SINGLE } from '../tolerances.js';
import { type FacetTree, facetsNear } from './facet-tree.js';
import type { Facets } from './facets.js';
import { grown } from './measure.js';
import { triangleGapSq } from './triangle-gap.js';

/** A spot on each of two surfaces. */
export interface Spots {
  readonly from: Vec3;
  readonly to: Vec3;
}

/** Ways that point the same way to this much belong to the same two faces: cos 0.6°. */
const SAME_WAY = 0.99995;

/**
 * Where two surfaces come nearest. Faces that lie side by side are equally near all over: then in the middle of where they do.
 *
 * @param apart their least distance, as it was measured, mm
 * @returns undefined when nothing comes as near, or they touch
 */
export function nearestSpots(one: Facets, other: FacetTree, apart: number): Spots | undefined {
  const reach = apart + SAME_SINGLE;
  const ways: Spots[] = [];
  for (let i = 0; i < one.length; i += 9) {
    const own = triangle(one, i);
    const near = facetsNear(other, grown(boxRound(own), reach));
    for (let j = 0; j < near.length; j += 9) {
      if (triangleGapSq(one, i, near, j, reach * reach) >= reach * reach) continue;
      for (const way of waysBetween(own, triangle(near, j)))
        if (length(subtract(way.to, way.from)) <= reach) ways.push(way);
    }
  }
  const [first] = ways.toSorted((a, b) => long(a) - long(b));
  if (!first || long(first) < SAME_SINGLE) return undefined;
  const towards = unit(subtract(first.to, first.from));
  const same = ways.filter(({ from, to }) => dot(unit(subtract(to, from)), towards) > SAME_WAY);
  const mean = (pick: (way: Spots) => Vec3): Vec3 =>
    scale(
      same.map(pick).reduce((sum, at) => add(sum, at)),
      1 / same.length,
    );
  return { from: mean(({ from }) => from), to: mean(({ to }) => to) };
}

const long = ({ from, to }: Spots): number => length(subtract(to, from));

type Triangle = readonly [Vec3, Vec3, Vec3];

const triangle = (facets: Facets, i: number): Triangle => {
  const corner = (k: number): Vec3 => [facets[i + k]!, facets[i + k + 1]!, facets[i + k + 2]!];
  return [corner(0), corner(3), corner(6)];
};

function boxRound(corners: Triangle): { min: Vec3; max: Vec3 } {
  const end = (pick: (...all: number[]) => number): Vec3 =>
    eachAxis((axis) => pick(...corners.map((corner) => corner[axis])));
  return { min: end(Math.min), max: end(Math.max) };
}

/** Ways that may be the shortest: from each corner square to the other triangle, and between sides. */
function* waysBetween(a: Triangle, b: Triangle): Iterable<Spots> {
  for (const from of a) {
    const to = footOn(b, from);
    if (to) yield { from, to };
  }
  for (const to of b) {
    const from = footOn(a, to);
    if (from) yield { from, to };
  }
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) yield betweenSides(a[i]!, a[(i + 1) % 3]!, b[j]!, b[(j + 1) % 3]!);
}

/** The foot of a point on a triangle; undefined when it lies beside it. */
function footOn([a, b, c]: Triangle, point: Vec3): Vec3 | undefined {
  const normal = cross(subtract(b, a), subtract(c, a));
  if (length(normal) === 0) return undefined;
  const out = unit(normal);
  const foot = subtract(point, scale(out, dot(out, subtract(point, a))));
  const inside = [
    [a, b],
    [b, c],
    [c, a],
  ].every(([from, to]) => dot(out, cross(subtract(to!, from!), subtract(foot, from!))) >= 0);
  return inside ? foot : undefined;
}

/** The shortest way between two sides. */
function betweenSides(p: Vec3, p2: Vec3, q: Vec3, q2: Vec3): Spots {
  const [u, v, r] = [subtract(p2, p), subtract(q2, q), subtract(p, q)];
  const [uu, vv, uv, ur, vr] = [dot(u, u), dot(v, v), dot(u, v), dot(u, r), dot(v, r)];
  const across = uu * vv - uv * uv;
  const share = (part: number): number => Math.max(0, Math.min(part, 1));
  const first = across > 1e-12 * uu * vv ? share((uv * vr - ur * vv) / across) : 0;
  const t = vv > 0 ? share((uv * first + vr) / vv) : 0;
  const s = uu > 0 ? share((uv * t - ur) / uu) : 0;
  return { from: add(p, scale(u, s)), to: add(q, scale(v, t)) };
}

import type { Vec2 } from '../frame/index.js';
import { onceForEach } from '../once.js';
import { SAGITTA, SAME_POINT } from '../tolerances.js';
import type { Profile } from './profile.js';
import { type ArcSegment, arcs, pointAlong, segments, sweep } from './segment.js';

/**
 * Facets of a full circle: the least multiple of 4 whose facets stay within the sagitta r·(1 − cos(π/N)).
 *
 * @param radius mm
 * @param sagitta largest distance between a facet and its arc, mm
 */
export function facetsPerCircle(radius: number, sagitta: number = SAGITTA): number {
  if (radius <= sagitta) return 4;
  return 4 * Math.ceil(Math.PI / Math.acos(1 - sagitta / radius) / 4);
}

/**
 * An outline as a polygon: every vertex lies on the outline, arcs become equal facets.
 *
 * The number of facets depends on the arc's radius and included angle alone (its share of `facetsPerCircle`, rounded up), so
 * mating arcs get the same facets. The polygon is smaller than the outline by `polygonDeficit`, and a concave arc makes it larger.
 *
 * @returns points, mm, in the outline's order; the first is not repeated
 */
export const tessellate = (profile: Profile, sagitta: number = SAGITTA): readonly Vec2[] =>
  sagitta === SAGITTA ? finely(profile) : tessellated(profile, sagitta);

/** An outline never changes. */
const finely = onceForEach((profile: Profile) => tessellated(profile, SAGITTA));

function tessellated(profile: Profile, sagitta: number): readonly Vec2[] {
  const points: Vec2[] = [];
  for (const piece of segments(profile)) {
    points.push(piece.from);
    if (piece.kind === 'line') continue;
    const count = facets(piece, sagitta);
    for (let i = 1; i < count; i++) points.push(pointAlong(piece, i / count));
  }
  return points;
}

/**
 * What the tessellated outline lacks in area: Σ r²(θ − n·sin(θ/n))/2 over its arcs, clockwise ones counted negative, mm².
 *
 * @example polygonDeficit(obround({ length: 40, width: 10 })) // 0.0996… : 72 facets in a circle of 10 mm
 */
export const polygonDeficit = (profile: Profile, sagitta: number = SAGITTA): number =>
  arcs(profile).reduce((sum, arc) => {
    const count = facets(arc, sagitta);
    const turn = sweep(arc);
    return sum + (arc.radius ** 2 * (turn - count * Math.sin(turn / count))) / 2;
  }, 0);

/** An arc's share of its circle's facets, rounded up; a share that is whole but for rounding stays whole. */
const facets = (arc: ArcSegment, sagitta: number): number =>
  Math.max(1, Math.ceil((facetsPerCircle(arc.radius, sagitta) * arc.includedDeg) / 360 - SAME_POINT));

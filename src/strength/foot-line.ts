import { settledLength, spanOf, type Vec2, type Vec3 } from '../frame/index.js';
import type { Resting } from './resting.js';
import type { UsedSurface } from './used-surface.js';

export const SIDES = ['front', 'back', 'left', 'right'] as const;

export type Side = (typeof SIDES)[number];

/** A straight piece of the line round the feet, as the axis a piece tips about. */
export interface FootLine {
  readonly side: Side;
  /** How far a point of the floor plan lies inside, mm; negative outside. */
  readonly inside: (point: Vec2) => number;
  /** Unit, away from the feet: the way it tips over this line. */
  readonly out: Vec2;
}

/** The straight pieces of the line round the feet, each with the side it looks to; none where no area is stood on. */
export const footLines = ({ feet }: Pick<Resting, 'feet'>): readonly FootLine[] =>
  feet.length < 3
    ? []
    : feet.map(([ax, ay], i): FootLine => {
        const [bx, by] = feet[(i + 1) % feet.length]!;
        const run = spanOf(bx - ax, by - ay);
        const [nx, ny] = [(by - ay) / run, (ax - bx) / run];
        const across = Math.abs(nx) > Math.abs(ny);
        return {
          side: across ? (nx > 0 ? 'right' : 'left') : ny > 0 ? 'back' : 'front',
          inside: ([x, y]) => settledLength((ax - x) * nx + (ay - y) * ny),
          out: [nx, ny],
        };
      });

/** Where a surface comes nearest to a foot line, or reaches farthest beyond it. */
export interface Reach {
  readonly line: FootLine;
  /** Of the surface inside the line, mm. */
  readonly inside: number;
  /** Of the piece's own centre of mass inside the line, mm. */
  readonly ownInside: number;
  /** The point of the surface, assembly frame. */
  readonly at: Vec3;
}

/** For each side the foot line a surface is worst at. */
export function reaches({ region, height }: UsedSurface, resting: Resting): readonly Reach[] {
  const lines = footLines(resting).map((line): Reach => {
    let inside = Number.POSITIVE_INFINITY;
    let worst: Vec2 = [0, 0];
    for (const loop of region)
      for (const point of loop) {
        const here = line.inside(point);
        if (here >= inside) continue;
        inside = here;
        worst = point;
      }
    const at: Vec3 = [worst[0], worst[1], height];
    return { line, inside, ownInside: line.inside([resting.centre[0], resting.centre[1]]), at };
  });
  return SIDES.flatMap((side) =>
    lines
      .filter(({ line }) => line.side === side)
      .toSorted((a, b) => a.inside - b.inside)
      .slice(0, 1),
  );
}

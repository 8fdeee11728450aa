import { InputError } from '../errors.js';
import type { Vec2 } from '../frame/index.js';
import { leastSquares, type Points, type Triangle } from './hole-least-squares.js';
import type { Measured } from './hole-measurements.js';

/** Measured distances may miss the fitted pattern by this much, mm: what a careful hand reads off a rule on a router's base. */
export const HOLE_RESIDUAL = 0.5;

/**
 * The points that fit measured distances best, in some place and either hand.
 *
 * Starts with the largest measured triangle, adds every point that three distances fix, then fits all of them by least squares.
 *
 * @returns points in the order they are first named, mm
 * @throws InputError when a triangle cannot close, or a point is not fixed
 */
export function pointsFrom(measured: readonly Measured[]): ReadonlyMap<string, Vec2> {
  const names = [...new Set(measured.flatMap(({ from, to }) => [from, to]))];
  const between = new Map(
    measured.flatMap((m) => [
      [key(m.from, m.to), m.distance] as const,
      [key(m.to, m.from), m.distance] as const,
    ]),
  );
  const start = largestTriangle(names, between);
  const placed = trilaterated(start, between);
  for (let before = 0; before < placed.size && placed.size < names.length; ) {
    before = placed.size;
    for (const name of names) if (!placed.has(name)) place(name, placed, between);
  }
  const loose = names.find((name) => !placed.has(name));
  if (loose !== undefined)
    throw new InputError(
      'hole-not-fixed',
      `hole ${loose} is not fixed by the distances given: measure it from three points that do not lie in a line`,
    );
  const fitted = measured.length > 3 ? leastSquares(measured, placed, start) : placed;
  return new Map(names.map((name) => [name, fitted.get(name)!]));
}

const key = (a: string, b: string): string => `${a}-${b}`;

function largestTriangle(names: readonly string[], between: ReadonlyMap<string, number>): Triangle {
  let best: { corners: Triangle; area: number } | undefined;
  for (const [i, a] of names.entries())
    for (const [j, b] of names.entries())
      for (const c of names.slice(j + 1)) {
        const [ab, ac, bc] = [between.get(key(a, b)), between.get(key(a, c)), between.get(key(b, c))];
        if (j <= i || ab === undefined || ac === undefined || bc === undefined) continue;
        const longest = Math.max(ab, ac, bc);
        const excess = 2 * longest - (ab + ac + bc);
        // each of the three may be read off by the residual; what is left is judged once all points are fitted
        if (excess > 3 * HOLE_RESIDUAL || (excess >= 0 && names.length === 3))
          throw impossible([a, b, c], ab, ac, bc);
        const area = heron(ab, ac, bc);
        if (area > (best?.area ?? 0)) best = { corners: [a, b, c], area };
      }
  if (best !== undefined) return best.corners;
  throw new InputError(
    'hole-not-fixed',
    'the hole distances hold no three points with all three distances between them: measure a whole triangle, like 1-2, 1-3 and 2-3',
  );
}

const impossible = ([a, b, c]: Triangle, ab: number, ac: number, bc: number): InputError =>
  new InputError(
    'hole-triangle',
    (say) =>
      `hole distances ${a}-${b} ${say.fine(ab)}, ${a}-${c} ${say.fine(ac)} and ${b}-${c} ${say.fine(bc)} make no triangle: the longest must be shorter than the other two together; measure them again`,
  );

function heron(a: number, b: number, c: number): number {
  const s = (a + b + c) / 2;
  return Math.sqrt(Math.max(0, s * (s - a) * (s - b) * (s - c)));
}

/** The first point at the origin, the second on X, the third above it. */
function trilaterated([a, b, c]: Triangle, between: ReadonlyMap<string, number>): Points {
  const [ab, ac, bc] = [between.get(key(a, b))!, between.get(key(a, c))!, between.get(key(b, c))!];
  const x = (ab ** 2 + ac ** 2 - bc ** 2) / (2 * ab);
  return new Map<string, Vec2>([
    [a, [0, 0]],
    [b, [ab, 0]],
    [c, [x, Math.sqrt(ac ** 2 - x ** 2)]],
  ]);
}

/** Adds a point when distances to three points that are not in a line fix it: the differences of their circles are linear. */
function place(name: string, placed: Points, between: ReadonlyMap<string, number>): void {
  const anchors = [...placed].flatMap(([anchor, at]) => {
    const far = between.get(key(name, anchor));
    return far === undefined ? [] : [{ at, far }];
  });
  const [first, ...others] = anchors;
  if (first === undefined || others.length < 2) return;
  let [xx, xy, yy, xr, yr] = [0, 0, 0, 0, 0];
  for (const { at, far } of others) {
    const [dx, dy] = [at[0] - first.at[0], at[1] - first.at[1]];
    const right = (dx ** 2 + dy ** 2 - far ** 2 + first.far ** 2) / 2;
    [xx, xy, yy] = [xx + dx * dx, xy + dx * dy, yy + dy * dy];
    [xr, yr] = [xr + dx * right, yr + dy * right];
  }
  const det = xx * yy - xy * xy;
  // across the line the anchors spread less than they are measured to: either side would do
  if (!(det > HOLE_RESIDUAL ** 2 * (xx + yy))) return;
  placed.set(name, [first.at[0] + (xr * yy - yr * xy) / det, first.at[1] + (yr * xx - xr * xy) / det]);
}

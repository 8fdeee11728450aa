import { type ErrorText, InputError } from '../errors.js';
import type { Vec2 } from '../frame/index.js';
import { distance } from './hole-plane.js';
import { HOLE_RESIDUAL } from './hole-points.js';

/** What was taken for granted because nothing that was measured tells it. */
export interface Assumed {
  readonly what: ErrorText;
  readonly remedy: string;
  /** Distances that would settle it. */
  readonly missing: number;
}

/**
 * Where the cutter's centre is among measured holes: the measured one, or else the middle of the circle through them.
 *
 * @param measured the point `c`, when it is among the measured ones
 * @throws InputError when it was not measured and fewer than three holes, or holes off one circle, leave it open
 */
export function cutterCentre(
  holes: readonly (readonly [name: string, at: Vec2])[],
  measured: Vec2 | undefined,
): { readonly centre: Vec2; readonly assumed?: Assumed } {
  if (measured !== undefined) return { centre: measured };
  const points = holes.map(([, at]) => at);
  const centre = circleCentre(points);
  const radii = points.map((at) => distance(at, centre));
  const radius = radii.reduce((sum, each) => sum + each, 0) / radii.length;
  const off = Math.max(...radii.map((each) => Math.abs(each - radius)));
  if (off > HOLE_RESIDUAL)
    throw new InputError(
      'hole-centre-unknown',
      (say) =>
        `the holes lie up to ${say.fines(off, HOLE_RESIDUAL)[0]} off the circle that fits them best, more than ${say.fines(off, HOLE_RESIDUAL)[1]}, so the cutter's centre is not known: measure three holes from the cutter's centre too, as c-1, c-2 and c-3`,
    );
  const how =
    points.length === 3 ? 'the circle through the three holes' : 'the circle that fits the holes best';
  return {
    centre,
    assumed: {
      what: (say) =>
        `the centre of the cutter was not measured: it is taken as the centre of ${how}, of diameter ${say.length(2 * radius)}. ${points.length === 3 ? 'That cannot be checked, for a circle runs through any three holes' : 'Whether the cutter stands there cannot be checked'}; where it is off, every mortise is off by as much`,
      remedy: `measure each hole from the centre of a straight pin in the collet too, and add the distances to --hole-distances as ${holes.map(([name]) => `c-${name}`).join(', ')}`,
      missing: points.length,
    },
  };
}

/** Centre of the least-squares circle (least error of r², linear); through three points it is the circumcentre. */
function circleCentre(points: readonly Vec2[]): Vec2 {
  const n = points.length;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let [xx, xy, yy, xr, yr] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const [u, v] = [point[0] - mx, point[1] - my];
    const right = (u * u + v * v) / 2;
    [xx, xy, yy] = [xx + u * u, xy + u * v, yy + v * v];
    [xr, yr] = [xr + u * right, yr + v * right];
  }
  const det = xx * yy - xy * xy;
  if (n < 3 || !(det > HOLE_RESIDUAL ** 2 * (xx + yy)))
    throw new InputError(
      'hole-centre-unknown',
      `${n} holes that lie in a line have no circle through them, so the cutter's centre is not known: measure the holes from it too, as c-1 and so on`,
    );
  return [mx + (xr * yy - yr * xy) / det, my + (yr * xx - xr * xy) / det];
}

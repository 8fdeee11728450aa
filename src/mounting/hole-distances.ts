import { InputError } from '../errors.js';
import type { Vec2 } from '../frame/index.js';
import type { Units } from '../length/index.js';
import { cutterCentre } from './hole-centre.js';
import { type Measured, readDistances } from './hole-measurements.js';
import type { HolePattern } from './hole-pattern.js';
import { distance, signedArea } from './hole-plane.js';
import { HOLE_RESIDUAL, pointsFrom } from './hole-points.js';

/** Distances alone fit a pattern and its mirror image; this says which is meant. */
export type Mirror = 'as-seen-from-above' | 'mirrored';

const UNCHECKED =
  'the distances are just enough to place the holes, so a mistake in one cannot be found: measure one more, or lay a paper print of the plate under the router before you drill';

/** The name of the cutter's centre among the measured points. */
const CENTRE = 'c';

/**
 * Holes from the distances between their centres, as they are measured on the router's base.
 *
 * @param text `1-2 98.5; 1-3 112; 2-3 87.25`: two names, then the distance; `c` is the cutter's centre. Three points take
 *   three distances; each further one takes three more at least
 * @param options `as-seen-from-above`: the first three holes run counter-clockwise seen from above the plate, `mirrored`:
 *   clockwise. `turnDeg`: direction of the first hole from X. `units`: what bare numbers are in
 * @returns the pattern that fits all distances best
 * @throws InputError for distances that cannot be read, do not fix the pattern, or contradict each other by more than 0.5 mm
 * @example fromDistances('1-2 98.5; 1-3 112; 2-3 87.25', { mirror: 'as-seen-from-above' }).holes.length // 3
 */
export function fromDistances(
  text: string,
  options: { mirror: Mirror; turnDeg?: number; units?: Units },
): HolePattern {
  const { mirror, turnDeg = 0, units = 'mm' } = options;
  const measured = readDistances(text, units);
  const points = pointsFrom(measured);
  const [worst, residual] = worstOf(measured, points);
  if (residual > HOLE_RESIDUAL)
    throw new InputError(
      'hole-distances-disagree',
      (say) =>
        `hole distances contradict each other: ${worst.from}-${worst.to} is ${say.fine(worst.distance)}, the pattern that fits best has ${say.fine(distance(points.get(worst.from)!, points.get(worst.to)!))} there; they may differ by ${say.fine(HOLE_RESIDUAL)}: measure ${worst.from}-${worst.to} again, then its neighbours`,
    );
  const named = [...points].filter(([name]) => name !== CENTRE);
  const { centre, assumed } = cutterCentre(named, points.get(CENTRE));
  const [order, area] = firstTriangle(named, points.get(CENTRE));
  // three distances fix three points and two each further one: any more check the others
  const checked = measured.length > 2 * points.size - 3;
  const flip = area > 0 === (mirror === 'as-seen-from-above') ? 1 : -1;
  const about = named.map(([name, [x, y]]) => ({
    name,
    at: [x - centre[0], flip * (y - centre[1])] as const,
  }));
  const sense = mirror === 'as-seen-from-above' ? 'counter-clockwise' : 'clockwise';
  return {
    holes: turned(about, turnDeg),
    ...(checked && { residual }),
    ...(assumed && { assumed }),
    notes: [
      ...(assumed ? [] : ['the centre of the cutter is the measured point c']),
      ...(checked ? [] : [UNCHECKED]),
      `${order.join(', ')} run ${sense} seen from above the plate; if they run the other way, choose the other mirror option`,
    ],
  };
}

function worstOf(measured: readonly Measured[], points: ReadonlyMap<string, Vec2>): [Measured, number] {
  const error = (each: Measured) =>
    Math.abs(each.distance - distance(points.get(each.from)!, points.get(each.to)!));
  const worst = measured.reduce((a, b) => (error(b) > error(a) ? b : a));
  return [worst, error(worst)];
}

/** The first three points, in the order they were named, that do not lie in a line; the cutter's centre comes last. */
function firstTriangle(
  holes: readonly (readonly [string, Vec2])[],
  centre: Vec2 | undefined,
): [names: readonly string[], area: number] {
  const all = centre === undefined ? holes : [...holes, ['the cutter', centre] as const];
  for (let k = 2; k < all.length; k++)
    for (let j = 1; j < k; j++)
      for (let i = 0; i < j; i++) {
        const area = signedArea(all[i]![1], all[j]![1], all[k]![1]);
        if (Math.abs(area) > HOLE_RESIDUAL * distance(all[i]![1], all[j]![1]))
          return [[all[i]![0], all[j]![0], all[k]![0]], area];
      }
  throw new InputError('holes-in-line', 'the measured holes all lie in one line: measure one beside it');
}

function turned(holes: HolePattern['holes'], deg: number): HolePattern['holes'] {
  const [x0, y0] = holes[0]!.at;
  const turn = (deg * Math.PI) / 180 - Math.atan2(y0, x0);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return holes.map(({ name, at: [x, y] }) => ({ name, at: [x * c - y * s, x * s + y * c] as const }));
}

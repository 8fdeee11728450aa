import type { Vec2 } from '../frame/index.js';
import type { Region } from '../profile/index.js';
import { SAME_POINT } from '../tolerances.js';

/** An interval, mm. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * How far a band of wood runs unbroken, seen from a point in it.
 *
 * The band is `band.from..band.to` across; the answer is the longest interval along, round `seed`, over which the whole
 * band lies in the region. Exact for polygons: every border that enters the band cuts it off.
 *
 * @param region loops, mm
 * @param along 'x': the band runs along x and is measured in y; 'y': the other way round
 * @param seed a place along the band that should lie in the wood
 * @returns undefined when the band at the seed is not all wood
 */
export function clearSpan(region: Region, along: 'x' | 'y', band: Span, seed: number): Span | undefined {
  const turn = (p: Vec2): Vec2 => (along === 'x' ? p : [p[1], p[0]]);
  const middle = (band.from + band.to) / 2;
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  let crossings = 0;
  for (const loop of region) {
    loop.forEach((point, i) => {
      const p = turn(point);
      const q = turn(loop[(i + 1) % loop.length]!);
      if (p[1] > middle !== q[1] > middle) {
        const at = p[0] + ((q[0] - p[0]) * (middle - p[1])) / (q[1] - p[1]);
        if (at > seed) crossings += 1;
      }
      const [under, over] = [Math.min(p[1], q[1]), Math.max(p[1], q[1])];
      // a border that only touches the band's side does not break it
      if (over <= band.from + SAME_POINT || under >= band.to - SAME_POINT) return;
      const low = Math.max(under, band.from);
      const high = Math.min(over, band.to);
      const at = (y: number) =>
        p[1] === q[1] ? undefined : p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]);
      const ends = [at(low) ?? p[0], at(high) ?? q[0]];
      const least = Math.min(...ends);
      const most = Math.max(...ends);
      if (most <= seed) from = Math.max(from, most);
      else if (least >= seed) to = Math.min(to, least);
      else {
        from = seed;
        to = seed;
      }
    });
  }
  if (crossings % 2 === 0 || !(to > from) || !Number.isFinite(from) || !Number.isFinite(to)) return undefined;
  return { from, to };
}

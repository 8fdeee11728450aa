import type { Vec2 } from '../../frame/index.js';
import { stroke } from './draw.js';
import type { Hatch } from './sheet.js';

/**
 * A cut surface filled with parallel lines (ISO 128-50).
 *
 * @param loops outer loops and holes, mm on the sheet; even-odd
 * @param spacing of the lines, mm
 */
export function hatchOf(
  part: string,
  loops: readonly (readonly Vec2[])[],
  angleDeg: number,
  spacing: number,
): Hatch {
  const turn = (angleDeg * Math.PI) / 180;
  const along: Vec2 = [Math.cos(turn), Math.sin(turn)];
  const beside = (p: Vec2) => p[1] * along[0] - p[0] * along[1];
  const points = loops.flat().map(beside);
  const first = Math.ceil(Math.min(...points) / spacing);
  const last = Math.floor(Math.max(...points) / spacing);
  const parts = Array.from(
    { length: Math.max(0, last - first + 1) },
    (_, i) => (first + i) * spacing,
  ).flatMap((level) => {
    const at = (s: number): Vec2 => [along[0] * s - along[1] * level, along[1] * s + along[0] * level];
    const cuts = crossings(loops, along, beside, level);
    return Array.from({ length: Math.floor(cuts.length / 2) }, (_, k) =>
      stroke('hatching', at(cuts[2 * k]!), at(cuts[2 * k + 1]!)),
    );
  });
  return { kind: 'hatch', part, loops, angleDeg, parts };
}

/** Where a line crosses the loops, as distances along it, in order. */
function crossings(
  loops: readonly (readonly Vec2[])[],
  along: Vec2,
  beside: (p: Vec2) => number,
  level: number,
): readonly number[] {
  const found: number[] = [];
  for (const loop of loops) {
    loop.forEach((p, i) => {
      const q = loop[(i + 1) % loop.length]!;
      const [a, b] = [beside(p) - level, beside(q) - level];
      if (a > 0 === b > 0) return;
      const t = a / (a - b);
      const [x, y] = [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t];
      found.push(x * along[0] + y * along[1]);
    });
  }
  return found.sort((a, b) => a - b);
}

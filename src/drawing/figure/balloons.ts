import type { Vec2 } from '../../frame/index.js';
import { BODY, type Box, bestPlace, disc, letters, type Room, type Stroke, stroke } from '../sheet/index.js';

const RADIUS = 4.5;
const TURNS = 24;
const REACHES: readonly number[] = [9, 13, 18, 24, 31, 39, 48, 58, 70];

/** A mark in a ring, led to a dot on the part (ISO 6433); rings stand clear of lines and of each other. */
export function balloons(
  room: Room,
  parts: readonly { readonly mark: string; readonly at: Vec2 }[],
  within: Box,
): readonly Stroke[] {
  const rings: Vec2[] = [];
  return parts.flatMap(({ mark, at }): readonly Stroke[] => {
    const places = REACHES.flatMap((reach) =>
      Array.from({ length: TURNS }, (_, i): Vec2 => {
        const turn = (i * 2 * Math.PI) / TURNS + Math.PI / 2;
        return [at[0] + reach * Math.cos(turn), at[1] + reach * Math.sin(turn)];
      }),
    ).filter(
      ([x, y]) =>
        x - RADIUS > within.minX &&
        x + RADIUS < within.maxX &&
        y - RADIUS > within.minY &&
        y + RADIUS < within.maxY,
    );
    const clear = places.filter((place) => rings.every((ring) => distanceTo(ring, at, place) > RADIUS + 1));
    const best = bestPlace(room, clear, boxAt);
    if (!best) return [];
    rings.push(best);
    room.claim(boxAt(best));
    const run = Math.hypot(best[0] - at[0], best[1] - at[1]);
    const rim: Vec2 = [
      best[0] + ((at[0] - best[0]) * RADIUS) / run,
      best[1] + ((at[1] - best[1]) * RADIUS) / run,
    ];
    room.avoid([at, rim]);
    const height = mark.length > 2 ? BODY : 3.5;
    return [
      stroke('dimension', at, rim),
      { ...disc('dimension', at, 0.5), fill: 'ink' },
      { ...disc('hidden', best, RADIUS), line: 'dimension', fill: 'paper' },
      letters([best[0], best[1] - height / 2], mark, { height, anchor: 'middle', bold: true }),
    ];
  });
}

const boxAt = ([x, y]: Vec2): Box => ({
  minX: x - RADIUS,
  minY: y - RADIUS,
  maxX: x + RADIUS,
  maxY: y + RADIUS,
});

function distanceTo(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p[0] - a[0] - dx * t, p[1] - a[1] - dy * t);
}

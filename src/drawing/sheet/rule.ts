import type { Vec2 } from '../../frame/index.js';
import { letters, stroke } from './draw.js';
import type { Stroke } from './sheet.js';

/**
 * A rule to measure a print with: a line with a tick every tenth, longer at the ends and in the middle.
 *
 * @param from its zero end, mm on the sheet
 * @param length mm
 * @param axis `x` ticks upwards, `y` ticks to the right
 * @param words beside its far end; none when left out
 */
export function rule(from: Vec2, length: number, axis: 'x' | 'y', words?: string): readonly Stroke[] {
  const at = (along: number, aside: number): Vec2 =>
    axis === 'x' ? [from[0] + along, from[1] + aside] : [from[0] + aside, from[1] + along];
  return [
    stroke('template', at(0, 0), at(length, 0)),
    ...Array.from({ length: 11 }, (_, i) =>
      stroke('template', at((i * length) / 10, 0), at((i * length) / 10, i % 5 === 0 ? 2.4 : 1.4)),
    ),
    ...(words === undefined
      ? []
      : [
          axis === 'x'
            ? letters(at(length + 1.5, 0), words)
            : letters(at(length + 1.5, 2.4), words, { rotationDeg: 90 }),
        ]),
  ];
}

import type { Vec2 } from '../../frame/index.js';
import { disc, path, stroke } from './draw.js';
import type { Stroke } from './sheet.js';

/** Which side of the main view the other views stand on. */
export type Projection = 'first-angle' | 'third-angle';

/**
 * The sign of the projection (ISO 5456-2): a truncated cone and its view from the narrow end. In first angle that view
 * stands beyond the wide end, in third angle before the narrow one.
 *
 * @param at middle of the sign, which is 13 mm wide and 6 mm high
 */
export function projectionSymbol(projection: Projection, [x, y]: Vec2): readonly Stroke[] {
  const turn = projection === 'first-angle' ? 1 : -1;
  const cone = x - turn * 3;
  const rings = x + turn * 3.5;
  return [
    path(
      'visible',
      [
        [cone - 2.5, y - 1.25],
        [cone + 2.5, y - 2.5],
        [cone + 2.5, y + 2.5],
        [cone - 2.5, y + 1.25],
      ],
      true,
    ),
    disc('visible', [rings, y], 2.5),
    disc('visible', [rings, y], 1.25),
    stroke('centre', [x - 6.5, y], [x + 6.5, y]),
    stroke('centre', [rings, y - 3.2], [rings, y + 3.2]),
  ];
}

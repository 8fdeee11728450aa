import type { Vec2 } from '../../frame/index.js';
import { type SheetEntity, strokesOf, textBox } from '../sheet/index.js';
import type { Entity, Layer } from './template.js';

/** A drawing of a sheet as lines and letters of a template, so many times as large. @param at where the sheet's corner comes to lie, mm */
export function scaledEntities(
  drawn: readonly SheetEntity[],
  factor: number,
  at: Vec2,
  layer: Layer,
): readonly Entity[] {
  const place = ([x, y]: Vec2): Vec2 => [at[0] + x * factor, at[1] + y * factor];
  return strokesOf(drawn).flatMap((one): readonly Entity[] => {
    const dashing = 'line' in one && one.line === 'hidden' ? ({ dashing: 'far' } as const) : {};
    switch (one.kind) {
      case 'line':
        return [{ layer, kind: 'line', from: place(one.from), to: place(one.to), ...dashing }];
      case 'circle':
        // a DXF line has no weight: a heavy ring is drawn twice
        return (one.line === 'visible' ? [1, 0.88] : [1]).map((share) => ({
          layer,
          kind: 'circle',
          centre: place(one.centre),
          radius: one.radius * factor * share,
        }));
      case 'polyline':
        return one.closed
          ? [
              {
                layer,
                kind: 'profile',
                profile: one.points.map(place).map(([x, y]) => ({ x, y, bulge: 0 })),
                ...dashing,
              },
            ]
          : one.points
              .slice(1)
              .map((to, i) => ({ layer, kind: 'line', from: place(one.points[i]!), to: place(to) }));
      case 'text': {
        const left = one.anchor === 'start' ? one.at[0] : textBox(one).minX;
        return [
          {
            layer,
            kind: 'text',
            at: place([left, one.at[1]]),
            height: one.height * factor,
            text: one.text,
            rotationDeg: one.rotationDeg,
          },
        ];
      }
      default:
        throw new RangeError(`a template takes no ${one.kind}`);
    }
  });
}

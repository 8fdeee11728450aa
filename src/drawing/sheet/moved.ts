import type { Vec2 } from '../../frame/index.js';
import type { SheetEntity, Stroke } from './sheet.js';

/** Strokes set down elsewhere on a sheet, smaller or larger when a factor is given; letters keep their height. */
export const moved = <One extends Stroke>(
  strokes: readonly One[],
  [dx, dy]: Vec2,
  factor = 1,
): readonly One[] =>
  strokes.map((stroke) => {
    const to = ([x, y]: Vec2): Vec2 => [x * factor + dx, y * factor + dy];
    switch (stroke.kind) {
      case 'text':
        return { ...stroke, at: to(stroke.at) };
      case 'line':
        return { ...stroke, from: to(stroke.from), to: to(stroke.to) };
      case 'polyline':
        return { ...stroke, points: stroke.points.map(to) };
      case 'tone':
        return {
          ...stroke,
          loops: stroke.loops.map((loop) => loop.map(to)),
          marks: stroke.marks.map((mark) => mark.map(to)),
        };
      default:
        return { ...stroke, centre: to(stroke.centre), radius: stroke.radius * factor };
    }
  });

/** Everything a sheet can hold, moved by a vector, mm. */
export const movedEntities = (entities: readonly SheetEntity[], by: Vec2): readonly SheetEntity[] =>
  entities.map((entity): SheetEntity => {
    switch (entity.kind) {
      case 'hatch':
        return {
          ...entity,
          loops: entity.loops.map((loop) => loop.map(([x, y]): Vec2 => [x + by[0], y + by[1]])),
          parts: moved(entity.parts, by),
        };
      case 'dimension':
        return { ...entity, parts: moved(entity.parts, by) };
      case 'table':
        return {
          ...entity,
          at: [entity.at[0] + by[0], entity.at[1] + by[1]],
          parts: moved(entity.parts, by),
        };
      default:
        return moved([entity], by)[0]!;
    }
  });

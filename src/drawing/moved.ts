import type { Vec2 } from '../frame/index.js';
import type { Stroke } from './sheet.js';

/** Strokes set down elsewhere on a sheet: full-size drawings are laid out where their board is, then moved onto the paper. */
export const moved = (strokes: readonly Stroke[], [dx, dy]: Vec2): readonly Stroke[] =>
  strokes.map((stroke) => {
    const to = ([x, y]: Vec2): Vec2 => [x + dx, y + dy];
    switch (stroke.kind) {
      case 'text':
        return { ...stroke, at: to(stroke.at) };
      case 'line':
        return { ...stroke, from: to(stroke.from), to: to(stroke.to) };
      case 'polyline':
        return { ...stroke, points: stroke.points.map(to) };
      default:
        return { ...stroke, centre: to(stroke.centre) };
    }
  });

import { boundsOf } from '../../profile/index.js';
import { type SheetEntity, type Stroke, strokesOf } from './sheet.js';
import { type Box, textBox } from './text-width.js';

/** The box round everything drawn, mm on the sheet; arcs count with their whole circle. */
export function entitiesBox(entities: readonly SheetEntity[]): Box {
  const boxes = strokesOf(entities).map(strokeBox);
  return boundsOf(boxes.flatMap((box) => [[box.minX, box.minY] as const, [box.maxX, box.maxY] as const]));
}

function strokeBox(stroke: Stroke): Box {
  switch (stroke.kind) {
    case 'text':
      return textBox(stroke);
    case 'line':
      return boundsOf([stroke.from, stroke.to]);
    case 'polyline':
      return boundsOf(stroke.points);
    case 'tone':
      return boundsOf(stroke.loops.flat());
    default: {
      const { centre, radius } = stroke;
      return {
        minX: centre[0] - radius,
        minY: centre[1] - radius,
        maxX: centre[0] + radius,
        maxY: centre[1] + radius,
      };
    }
  }
}

import type { Vec2 } from '../../frame/index.js';
import { boundsOf } from '../../profile/index.js';
import { type SheetEntity, type Stroke, strokesOf } from './sheet.js';
import { type Box, textBox } from './text-width.js';

/** The box round everything drawn, mm on the sheet. */
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
    case 'circle':
      return boundsOf([0, 90, 180, 270].map((deg) => onCircle(stroke, deg)));
    case 'arc': {
      const { startDeg, sweepDeg } = stroke;
      const turns = [0, 90, 180, 270].map((deg) => startDeg + ((((deg - startDeg) % 360) + 360) % 360));
      const passed = turns.filter((deg) => deg < startDeg + sweepDeg);
      return boundsOf([startDeg, ...passed, startDeg + sweepDeg].map((deg) => onCircle(stroke, deg)));
    }
    default:
      return stroke satisfies never;
  }
}

const onCircle = (
  { centre, radius }: { readonly centre: Vec2; readonly radius: number },
  deg: number,
): Vec2 => [
  centre[0] + radius * Math.cos((deg * Math.PI) / 180),
  centre[1] + radius * Math.sin((deg * Math.PI) / 180),
];

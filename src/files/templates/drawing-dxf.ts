import { type DxfWriter, point2d, point3d } from '@tarikjabiri/dxf';
import { type Entity, LAYERS } from '../../drawing/index.js';
import type { Vec2 } from '../../frame/index.js';
import {
  COLOURS,
  type DxfScale,
  dxfBytes,
  emptyDrawing,
  inFile,
  LINE_TYPES,
  oneRow,
  rounded,
} from '../dxf/index.js';

/**
 * Flat drawings as a DXF file, full size, the same bytes for the same entities.
 *
 * Every layer is declared, used or not. Closed lines are LWPOLYLINE, closed once, with bulges for arcs; circles are CIRCLE;
 * marks LINE; words TEXT.
 */
export function drawingDxf(entities: readonly Entity[], scale: DxfScale): Uint8Array {
  const drawing = emptyDrawing(
    scale,
    LAYERS.map((name) => ({ name, colour: COLOURS[name] })),
  );
  for (const { name, shows, dashes } of Object.values(LINE_TYPES))
    drawing.addLType(
      name,
      shows,
      dashes.map((dash) => rounded(dash * scale.perMm, 6)),
    );
  for (const entity of entities) add(drawing, entity, scale.perMm);
  return dxfBytes(drawing);
}

function add(drawing: DxfWriter, entity: Entity, perMm: number): void {
  const at = ([x, y]: Vec2) => point3d(inFile(x, perMm), inFile(y, perMm), 0);
  const dashing = entity.kind === 'text' ? undefined : entity.dashing;
  const onLayer = {
    layerName: entity.layer,
    ...(dashing && { lineType: LINE_TYPES[dashing].name }),
  };
  switch (entity.kind) {
    case 'profile':
      drawing.addLWPolyline(
        entity.profile.map(({ x, y, bulge }) => ({
          point: point2d(inFile(x, perMm), inFile(y, perMm)),
          bulge: rounded(bulge, 9),
        })),
        { ...onLayer, flags: CLOSED },
      );
      break;
    case 'circle':
      drawing.addCircle(at(entity.centre), inFile(entity.radius, perMm), onLayer);
      break;
    case 'line':
      drawing.addLine(at(entity.from), at(entity.to), onLayer);
      break;
    case 'text':
      drawing.addText(at(entity.at), inFile(entity.height, perMm), oneRow(entity.text), {
        ...onLayer,
        rotation: rounded(entity.rotationDeg, 6),
      });
      break;
  }
}

/** LWPOLYLINE group 70, bit 1 (DXF Reference). */
const CLOSED = 1;

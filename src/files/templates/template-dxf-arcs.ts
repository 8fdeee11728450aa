import { Units as DxfUnits, DxfWriter, point2d, point3d } from '@tarikjabiri/dxf';
import { type Entity, LAYERS, type Template } from '../../drawing/index.js';
import type { Vec2 } from '../../frame/index.js';
import { COLOURS, type DxfScale, inFile, LINE_TYPES, oneRow, rounded } from '../dxf/index.js';

/** A template with true arcs (AC1021, which is UTF-8). */
export function arcsTemplate(template: Template, scale: DxfScale): string {
  const drawing = new DxfWriter();
  drawing.setUnits(scale.insunits === 4 ? DxfUnits.Millimeters : DxfUnits.Inches);
  drawing.setVariable('$MEASUREMENT', { 70: scale.measurement });
  // without a code page some readers do not see that AC1021 is UTF-8, and spoil the degree sign
  drawing.setVariable('$DWGCODEPAGE', { 3: 'ANSI_1252' });
  for (const { name, shows, dashes } of Object.values(LINE_TYPES))
    drawing.addLType(
      name,
      shows,
      dashes.map((dash) => rounded(dash * scale.perMm, 6)),
    );
  for (const layer of LAYERS) drawing.addLayer(layer, COLOURS[layer], 'Continuous');
  for (const entity of template.entities) add(drawing, entity, scale.perMm);
  return `${drawing.stringify()}\n`;
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

import { Units as DxfUnits, DxfWriter } from '@tarikjabiri/dxf';
import type { DxfScale } from './dxf-scale.js';

/** A layer and the index of its colour; 7 is black on white and white on black. */
export interface DeclaredLayer {
  readonly name: string;
  readonly colour: number;
}

/** A drawing without anything in it (AC1021, which is UTF-8) that tells its unit and declares its layers. */
export function emptyDrawing(
  { insunits, measurement }: DxfScale,
  layers: readonly DeclaredLayer[],
): DxfWriter {
  const drawing = new DxfWriter();
  drawing.setUnits(insunits === 4 ? DxfUnits.Millimeters : DxfUnits.Inches);
  drawing.setVariable('$MEASUREMENT', { 70: measurement });
  // without a code page some readers do not see that AC1021 is UTF-8, and spoil the degree sign
  drawing.setVariable('$DWGCODEPAGE', { 3: 'ANSI_1252' });
  for (const { name, colour } of layers) drawing.addLayer(name, colour, 'Continuous');
  return drawing;
}

/** What is drawn, as the bytes of a DXF file. */
export const dxfBytes = (drawing: DxfWriter): Uint8Array =>
  new TextEncoder().encode(`${drawing.stringify()}\n`);

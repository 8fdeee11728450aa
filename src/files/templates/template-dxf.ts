import type { Template } from '../../drawing/index.js';
import { INCH, type Units } from '../../length/index.js';
import { bounds } from '../../profile/index.js';
import type { DxfScale } from '../dxf/index.js';
import { arcsTemplate } from './template-dxf-arcs.js';
import { segmentsTemplate } from './template-dxf-segments.js';

/** How a template is written. */
export interface TemplateDxfOptions {
  /** Unit of the coordinates, told by `$INSUNITS` and the file's name. */
  readonly units: Units;
  /** True arcs, or straight pieces within 0.005 mm of them for machines that know no bulge. */
  readonly curves: 'arcs' | 'segments';
  /** The design has error findings and the person asked for the file all the same: it then says so. */
  readonly failed: boolean;
}

/** `left-side.mm.dxf`: the unit stands in the name, as DXF coordinates carry none. */
export const templateFileName = (template: Template, units: Units): string =>
  `${template.board}.${units}.dxf`;

/**
 * A template as a DXF file, full size, the same bytes for the same template.
 *
 * Every layer is declared, used or not. Closed lines are LWPOLYLINE, closed once, with bulges for arcs (or straight pieces);
 * circles are CIRCLE (closed polylines when straight pieces are asked for); marks LINE; words TEXT.
 */
export function templateDxf(template: Template, options: TemplateDxfOptions): Uint8Array {
  const scale: DxfScale =
    options.units === 'mm'
      ? { perMm: 1, insunits: 4, measurement: 1 }
      : { perMm: 1 / INCH, insunits: 1, measurement: 0 };
  const told = options.failed ? withWarning(template) : template;
  const text = options.curves === 'arcs' ? arcsTemplate(told, scale) : segmentsTemplate(told, scale);
  return new TextEncoder().encode(text);
}

/** The words every cutting file of a design with error findings carries. */
export const FAILED = 'FAILED CHECKS';

const withWarning = (template: Template): Template => ({
  ...template,
  entities: [
    ...template.entities,
    { layer: 'NOTE', kind: 'text', at: [0, topOf(template) + 12], height: 12, text: FAILED, rotationDeg: 0 },
  ],
});

/** Height of the highest closed line, mm. */
const topOf = (template: Template): number =>
  template.entities.reduce(
    (top, entity) => (entity.kind === 'profile' ? Math.max(top, bounds(entity.profile).maxY) : top),
    0,
  );

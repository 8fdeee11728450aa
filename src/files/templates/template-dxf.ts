import { type Entity, loopOf, type Template } from '../../drawing/index.js';
import type { Units } from '../../length/index.js';
import { bounds, tessellate } from '../../profile/index.js';
import { dxfScale } from '../dxf/index.js';
import { drawingDxf } from './drawing-dxf.js';

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

/** A template as a DXF file, full size; with straight pieces only where no curves are asked for. */
export function templateDxf(template: Template, { units, curves, failed }: TemplateDxfOptions): Uint8Array {
  const entities = failed ? withWarning(template) : template.entities;
  return drawingDxf(curves === 'arcs' ? entities : entities.map(straightened), dxfScale(units));
}

/** A closed line or circle as a closed line of straight pieces; anything else as it is. */
function straightened(one: Entity): Entity {
  const loop = loopOf(one);
  if (!loop || one.kind === 'text') return one;
  const { layer, dashing } = one;
  return {
    kind: 'profile',
    layer,
    ...(dashing && { dashing }),
    profile: tessellate(loop).map(([x, y]) => ({ x, y, bulge: 0 })),
  };
}

/** The words every cutting file of a design with error findings carries. */
export const FAILED = 'FAILED CHECKS';

const withWarning = ({ entities }: Template): readonly Entity[] => [
  ...entities,
  { layer: 'NOTE', kind: 'text', at: [0, topOf(entities) + 12], height: 12, text: FAILED, rotationDeg: 0 },
];

/** Height of the highest closed line, mm. */
const topOf = (entities: readonly Entity[]): number =>
  entities.reduce(
    (top, entity) => (entity.kind === 'profile' ? Math.max(top, bounds(entity.profile).maxY) : top),
    0,
  );

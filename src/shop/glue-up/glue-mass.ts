import type { Design } from '../../assembly/index.js';
import { meanLength, type Tenon } from '../../joinery/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';

/** Glue of one joint, and of all. Areas in mm², masses in grams. */
export interface GlueMass {
  readonly joints: readonly { readonly joint: string; readonly areaMm2: number; readonly grams: number }[];
  readonly areaMm2: number;
  readonly grams: number;
  /** At the thinnest and the thickest usual spread. */
  readonly leastGrams: number;
  readonly mostGrams: number;
}

/** Both cheeks of a tenon, flat part only, in both boards: 2 · (width − thickness) · its mean length, mm². */
export const cheekArea = (tenon: Tenon): number =>
  2 * Math.max(tenon.width - tenon.thickness, 0) * meanLength(tenon);

/** How much glue the cheeks of all tenons take; what is squeezed out and left in the pot comes on top. */
export function glueMass(design: Design): GlueMass {
  const { usual, least, most } = PRACTICE.spread;
  const joints = design.joints.map(({ id, tenons }) => {
    const areaMm2 = tenons.reduce((sum, tenon) => sum + cheekArea(tenon), 0);
    return { joint: id, areaMm2, grams: (areaMm2 * usual) / 1e6 };
  });
  const areaMm2 = joints.reduce((sum, joint) => sum + joint.areaMm2, 0);
  return {
    joints,
    areaMm2,
    grams: (areaMm2 * usual) / 1e6,
    leastGrams: (areaMm2 * least) / 1e6,
    mostGrams: (areaMm2 * most) / 1e6,
  };
}

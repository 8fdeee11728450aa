/** A rectangular section: breadth across the load, height along it, mm. */
export interface Section {
  readonly breadth: number;
  readonly height: number;
}

export const areaOf = ({ breadth, height }: Section): number => breadth * height;

/** mm³ */
export const modulusOf = ({ breadth, height }: Section): number => (breadth * height ** 2) / 6;

/** mm⁴ */
export const inertiaOf = ({ breadth, height }: Section): number => (breadth * height ** 3) / 12;

/** Bending and shear factors, deflection at the place named: Wood Handbook, FPL-GTR-190 (2010), Table 9–1. */
export const LOAD_CASES = {
  'uniform, simple ends': { bending: 5 / 384, shear: 1 / 8 },
  'uniform, clamped ends': { bending: 1 / 384, shear: 1 / 8 },
  'point in the middle, simple ends': { bending: 1 / 48, shear: 1 / 4 },
  'point in the middle, clamped ends': { bending: 1 / 192, shear: 1 / 4 },
  'uniform, free end': { bending: 1 / 8, shear: 1 / 2 },
  'point at the free end': { bending: 1 / 3, shear: 1 },
} as const;

export type LoadCase = keyof typeof LOAD_CASES;

/** Shear area of a rectangle over its area, from memory. */
const SHEAR_AREA = 5 / 6;

/** Elasticity over shear modulus where no shear modulus is published: Wood Handbook, FPL-GTR-190 (2010), eq. 9–9. */
export const SHEAR_MODULUS_SHARE = 1 / 16;

/**
 * Deflection of a beam, mm: `kb·W·L³/(E·I) + ks·W·L/(G·A′)`. Wood Handbook, FPL-GTR-190 (2010), eq. 9–2.
 *
 * The published elasticity holds the shear of a slender test piece: give 1.1 times it with a shear modulus, or it alone with
 * none.
 *
 * @param load whole load, N
 * @param span mm
 * @param elasticity MPa
 * @param shearModulus MPa; without it the shear term is left out
 */
export function deflection(
  load: number,
  span: number,
  section: Section,
  of: LoadCase,
  elasticity: number,
  shearModulus?: number,
): { readonly bending: number; readonly shear: number; readonly total: number } {
  const { bending: kb, shear: ks } = LOAD_CASES[of];
  const bending = (kb * load * span ** 3) / (elasticity * inertiaOf(section));
  const shear =
    shearModulus === undefined ? 0 : (ks * load * span) / (shearModulus * SHEAR_AREA * areaOf(section));
  return { bending, shear, total: bending + shear };
}

/** Greatest shear stress of a rectangle, MPa, from a force in N. */
export const shearStress = (force: number, section: Section): number => (1.5 * force) / areaOf(section);

/** A force on an overhang beyond one of two supports. mm, N */
export interface Overhung {
  /** N·mm over the near support. */
  readonly moment: number;
  /** MPa */
  readonly stress: number;
  /** Of the tip, mm. */
  readonly deflection: number;
  /** Pull at the far support, N. */
  readonly uplift: number;
}

/** A point load at the end of an overhang, the back span on simple supports (elementary statics). */
export const overhung = (
  load: number,
  overhang: number,
  span: number,
  section: Section,
  elasticity: number,
): Overhung => ({
  moment: load * overhang,
  stress: (load * overhang) / modulusOf(section),
  deflection: (load * overhang ** 2 * (span + overhang)) / (3 * elasticity * inertiaOf(section)),
  uplift: (load * overhang) / span,
});

/** Patch over which a foot's load is spread, mm: EN 14183, as quoted by test laboratories. */
export const FOOT_PATCH = 100;

/**
 * Breadth of a wide board that works under a patch: the patch at a free edge, the patch and 60 mm within the board. From our
 * own finite elements of one tread (flat-sawn red oak 300 × 200 × 20).
 */
export const workingBreadth = (board: number, place: 'edge' | 'middle', patch = FOOT_PATCH): number =>
  Math.min(board, place === 'edge' ? patch : patch + 60);

/** Longest span of a shelf at which it sags no more than a share of the span, mm; load in N/mm of length. */
export const longestShelf = (load: number, section: Section, elasticity: number, share = 1 / 144): number =>
  ((384 * elasticity * inertiaOf(section) * share) / (5 * load)) ** (1 / 3);

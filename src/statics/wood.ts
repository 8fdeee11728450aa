/**
 * A property at another moisture content: `P12 · (P12 / Pg)^((12 − M) / (Mp − 12))`.
 * Wood Handbook, FPL-GTR-282 (2021), eq. 5–3 and Table 5–13; not for tension across the grain.
 *
 * @param at12 at 12 % moisture content; `green` of green wood, the same unit
 * @param moisture % at which it is wanted
 * @param meeting % at which green and dry lines meet: 24 white ash and Douglas-fir, 27 yellow birch, 21 loblolly and longleaf, else 25
 */
export const atMoisture = (at12: number, green: number, moisture: number, meeting: number): number =>
  at12 * (at12 / green) ** ((12 - moisture) / (meeting - 12));

/**
 * Strength at an angle to the grain, as a share of that along it: Hankinson's formula,
 * Wood Handbook, FPL-GTR-282 (2021), eq. 5–2.
 *
 * @param slope rise over run of the grain: 0.1 for 1 in 10
 * @param across strength across the grain as a share of that along it; 0.04 to 0.10 in bending
 * @param power 1.5 to 2 in bending
 */
export function slopeShare(slope: number, across = 0.1, power = 1.5): number {
  const angle = Math.atan(slope);
  return across / (Math.sin(angle) ** power + across * Math.cos(angle) ** power);
}

/** The slope of two slopes seen on two faces of a board. Wood Handbook, FPL-GTR-282 (2021), p. 5–31. */
export const combinedSlope = (a: number, b: number): number => Math.hypot(a, b);

/** Properties of a wood that is not in the tables, MPa, from its specific gravity at 12 %: Table 5–11a. Estimates. */
export function fromGravity(gravity: number, wood: 'hardwood' | 'softwood') {
  const p = (factor: number, power: number): number => factor * gravity ** power;
  return wood === 'hardwood'
    ? {
        rupture: p(171.2, 1.13),
        elasticity: p(16_500, 0.7),
        compressionAcross: p(21.5, 2.08),
        shear: p(21.9, 1.13),
        tensionAcross: p(10.1, 1.3),
      }
    : {
        rupture: p(168.7, 1),
        elasticity: p(20_300, 0.83),
        compressionAcross: p(16.4, 1.56),
        shear: p(16.5, 0.84),
        tensionAcross: p(6, 1.11),
      };
}

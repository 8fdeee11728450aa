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

/**
 * Moisture content wood comes to in air, %: Hailwood–Horrobin as printed in the Wood Handbook, FPL-GTR-190 (2010), eq. 4–5.
 *
 * @param celsius temperature; @param humidity relative, as a share from 0 to 1
 * @example equilibrium(20, 0.65) // 12.0
 */
export function equilibrium(celsius: number, humidity: number): number {
  const t = celsius;
  const h = humidity;
  const w = 349 + 1.29 * t + 0.0135 * t ** 2;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t ** 2;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t ** 2;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t ** 2;
  const kh = k * h;
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2));
}

/** What a size is when nothing that was given asks for another, mm. */
export const USUAL = {
  /** By the number of treads. */
  height: { 1: 230, 2: 420 },
  treadDepth: 240,
  /** So that every edge stands well inside the feet. */
  overhang: 25,
  setback: 8,
  rake: 10,
  taper: 5,
  treadThickness: 28,
  sideThickness: 28,
  archHeight: 45,
  archRadius: 25,
  footLength: 55,
  stretcherWidth: 70,
  stretcherThickness: 24,
  stretcherHeight: 85,
} as const;

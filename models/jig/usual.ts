/** What a size is when nothing that was given asks for another, mm. */
export const USUAL = {
  baseDiameter: 150,
  holeCircle: 110,
  bitOpening: 32,
  cutter: 10,
  workMin: 20,
  workMax: 85,
  railWidth: 40,
  railHeight: 45,
  knobHeight: 28,
  knobThread: 20,
} as const;

/** Cutter to the flat towards the person, of a round base with flats none of which is given, mm. */
export const BASE_FLAT = 60;

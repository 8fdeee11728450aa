/** What a margin may be about, and what its figure and its limits rest on. A new code is added here and in `src/checks/strength-kinds.ts`. */
export const STRENGTH_BASES = {
  'edge-outside-feet':
    'statics; that a step bears wherever a foot may stand, and 10 mm kept: common practice, no source',
  'tips-sideways':
    'statics; 20 N sideways, and on a seat 600 N at 60 mm from its edge: EN 1022, as quoted by trade pages',
  'tips-under-load': 'statics; 300 N on the edge of a table: our own, a person rests on both arms',
} as const;

export type StrengthCode = keyof typeof STRENGTH_BASES;

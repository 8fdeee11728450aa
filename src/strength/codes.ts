const WOOD =
  'elementary statics; 5 % values: Wood Handbook, FPL-GTR-282 (2021), Tables 5–3a and 5–6; warned of past what a person may use: 5 % value / 2.3 (2.1 in softwood) × 1.6, ASTM D245 and NDS, both from memory';

const BENDING = `${WOOD}; less for the slope of the grain (Wood Handbook eq. 5–2); the breadth that works under a patch: our own finite elements`;

const JOINTS =
  'our own estimate, compared with 355 published tests of one joint: glue and rolling shear at 0.18 of 5 % shear (Wood Handbook, FPL-GTR-282 (2021), p. 5–15, Tables 5–3a and 5–6), no more than 10 MPa of glue (EN 204, from memory); warned of past 0.565, what chairs bore in cycles';

/** What a margin may be about, and what its figure and its limits rest on. A new code is added here and in `src/checks/finding/strength-kinds.ts`. */
export const STRENGTH_BASES = {
  'edge-outside-feet':
    'statics; that a step bears wherever a foot may stand, and 10 mm kept: common practice, no source',
  'tips-sideways':
    'statics; 20 N sideways, and on a seat 600 N at 60 mm from its edge: EN 1022, as quoted by trade pages',
  'tips-under-load': 'statics; 300 N on the edge of a table: our own, a person rests on both arms',
  'board-breaks': BENDING,
  'board-shears': WOOD,
  'board-crushed': WOOD,
  'board-gives': 'beam formula of the Wood Handbook, FPL-GTR-190 (2010), eq. 9–2; 1/200 of the span: our own',
  'finger-opening': '5 and 12 mm: CEN/TR 13387 (2004), as quoted in a consumers’ report',
  'head-opening': '89 mm: from memory; 230 mm: 16 CFR 1513, for bunk beds',
  'shelf-sags':
    'beam formula as above; 1/144: Architectural Woodwork Standards (2009), 1.2.21; 1/600 when new: a trade magazine (2007); twice that after years: Wood Handbook, FPL-GTR-282 (2021), p. 5–39',
  'joint-pulled': `frame by direct stiffness, its feet held by a fifth of what stands on them; ${JOINTS}`,
  'joint-racked': `frame by direct stiffness on hinges at the floor, its joints as stiff as told, or between 2 and 20 kN·m/rad, from memory; ${JOINTS}`,
  'tenons-sheared':
    'elementary statics; 5 % shear and bearing across the grain: Wood Handbook, FPL-GTR-282 (2021), Tables 5–3a and 5–6',
  'piece-sways': 'frame by direct stiffness; the stiffness of joints as told, or a guess from memory',
  'held-across-grain':
    'movement: Wood Handbook, FPL-GTR-190 (2010), eq. 13–2 and Table 13–5; 80 and 150 mm: common practice, no source',
  'held-cracks':
    'stiffness across the grain and mean tension across it: Wood Handbook, FPL-GTR-282 (2021), Tables 5–1 and 5–3a; 0.65 of the stress is left after months: p. 5–39',
  'tenon-swells':
    'movement: Wood Handbook, FPL-GTR-190 (2010), eq. 13–2 and Table 13–5; 0.5 mm to spare: common practice, no source',
  'tenon-meets-bottom':
    'movement: Wood Handbook, FPL-GTR-190 (2010), eq. 13–2 and Table 13–5; 0.5 mm of air: common practice, no source',
  'shoulder-opens': 'movement: Wood Handbook, FPL-GTR-190 (2010), eq. 13–2 and Table 13–5; 0.5 mm: our own',
  'no-room-to-move':
    'movement: Wood Handbook, FPL-GTR-190 (2010), eq. 13–2 and Table 13–5, over the climate of the place',
  'glued-out-of-place': 'the moistures of the climate of the place',
} as const;

export type StrengthCode = keyof typeof STRENGTH_BASES;

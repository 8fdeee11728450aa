/** Rules of thumb of the glue-up. Common practice, no source, unless a source is named. */
export const GLUE_UP_PRACTICE = {
  /** Spreading glue on both sides of one joint and entering it, s. From memory: 45 to 60 s. */
  secondsPerJoint: 60,
  /** A board may be sprung aside by this much to let a tenon in, mm. */
  mostSpring: 0.5,
  /** Largest push of a hand that springs a rail into place, N. */
  mostSpringForce: 100,
  /** A tenon that leans more than this from the travel is not entered at all, degrees. */
  mostLeanDeg: 45,
  /** Air between a tenon and its mouth before a move starts, mm. */
  startAir: 2,
  /** Spread of one glue line, g/m²: usual, and its range. From memory: 120 to 200, 150 typical. */
  spread: { usual: 150, least: 120, most: 200 },
  /** A rail wider than this takes two clamps, mm. From memory. */
  oneClampUpTo: 100,
  /** A clamp pad along the slope and across it, mm: a clamp's jaw and some more. */
  padLength: 50,
  padBreadth: 40,
  /** Thin end of a wedge-shaped pad, made or sawn from an offcut, and a flat pad's thickness, mm: a thinner one crumbles under the jaw. */
  padThickness: 8,
  /** The least offcut that serves as a pad: along its slope without its sharp end, and across it, mm. */
  offcutLength: 40,
  offcutBreadth: 20,
  /** Clamps farther off the joint's middle swing the boards, mm. From memory. */
  clampOffset: 2,
  /** Above this slope a pad slides: friction of wood on wood about 0.2, from memory: atan 0.2, degrees. */
  slidesAboveDeg: 11,
  /** Diagonals may differ from what is printed by this, mm. From memory. */
  diagonalTolerance: 1,
  /** Both sides of a diagonal's rectangle are at least this long, mm, or it shows nothing. */
  leastDiagonalSide: 60,
} as const;

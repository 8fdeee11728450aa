/** Every tolerance of the program, each with its reason. Lengths in mm, volumes in mm³, angles in degrees. */

/** Largest distance between an arc and its polygon. Mating arcs share it, or a true clearance is lost (measured: 0.025 mm reads 0.0097 with coarse arcs). */
export const SAGITTA = 0.005;

/** Two faces count as in one plane within this distance: far above double-precision noise at 3 m, far below the finest fit. */
export const COPLANAR = 0.001;

/** Two faces count as parallel within this angle: 0.001 mm over 60 mm. */
export const PARALLEL_DEG = 0.001;

/** A plane that leans out of square to a board's faces by less than this (rise over run) is taken as square: 0.001 mm through 50 mm. */
export const SQUARE = 2e-5;

/** Two unit vectors run one way when their dot product falls short of 1 by less than this: 1.4e-6 rad, noise of arithmetic. */
export const SAME_DIRECTION = 1e-12;

/** Points nearer than this are one point of an outline. */
export const SAME_POINT = 1e-6;

/** Two bodies overlap when they share more than this; an exact contact leaves rounding noise below it. */
export const OVERLAP_MM3 = 0.01;

/** A measured clearance may fall short of the asked one by this much: it is the facet allowance of two mating arcs. */
export const CLEARANCE_SLACK = 0.011;

/** A cutter starts this far outside the face it enters: exactly coplanar faces leave slivers. */
export const CUTTER_LEAD = 1;

/** A joint's patch smaller than this is a line or a point, not a seat. */
export const PATCH_MM2 = 1;

/** Axes of one joint's two mortises agree within these. */
export const IN_LINE_MM = 0.01;
export const IN_LINE_DEG = 0.01;

/** Shoulders farther apart than this are open, mm: far above double-precision noise at 3 m, half of what the thinnest feeler shows. */
export const SHOULDER_OPEN = 0.01;

/** Relative volume difference allowed between a body and the polygonised outline it was made from. */
export const VOLUME_RELATIVE = 1e-6;

/** In a view, a line this far behind a surface is hidden: less, and edges of boards that touch would vanish in each other's faces; more, and a tenon in its mortise would shine through. */
export const BEHIND = 0.01;

/** In a view, triangles reach this far beyond their sides, so that no line leaks between two of one face. */
export const CLOSED_SIDE = 1e-5;

/** In a view, lines nearer than this are one line, and ends nearer than this meet. */
export const SAME_LINE = 0.01;

/** Hardware nearer to a board than this bears on it and holds it: its stacks are drawn to the exact size, mm. */
export const BEARS_ON = 0.1;

/** The last of a way to a seat that is not proved by itself: within it lies the seat, where the overlap check looks. */
export const PATH_END = 0.01;

/** In a dry run, a rail bears when it comes this near: a fifth of the air a tenon gets on its cheek. */
export const BEARING_GAP = 0.02;

/** In a dry run, what the cutter sweeps may differ from the mortise by this share of it: facets, and nothing more. */
export const CUT_RELATIVE = 1e-3;

/** A section is taken this far below the plane a plate slides on: in the plane itself it is not defined. */
export const SECTION_BELOW = 0.01;

/** What holds a plate may fall short by this much in such a section, where an edge leans. */
export const HOLD_SLACK = 0.02;

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

/** A side of a patch that leans from an axis by less than this (rise over run) runs along it: 1e-7 mm, what rounding leaves, over 20 mm. */
export const ALONG_AXIS = 5e-9;

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

/** A distance is settled when another step would bring it nearer by less than this, mm. */
export const GAP_SETTLED = 1e-5;

/** Below this slope a function over the board counts as level: noise of arithmetic. */
export const LEVEL_SLOPE = 1e-9;

/** Planes whose unit normals make less than this with each other meet nowhere near the board. */
export const PARALLEL_SINE = 1e-9;

/** Rounding of corners that lie in one plane, mm. */
export const FLAT_CORNERS = 1e-9;

/** From this gap on two bodies count as touching on their way, mm. */
export const PATH_TOUCH = 1e-4;

/** Measuring bodies stay this far off the board's own surfaces: coinciding faces leave slivers, mm. */
export const SKIN = 0.01;

/** A look past a mortise's end starts this far inside the wood, mm. */
export const PAST_WALL = 0.01;

/** Facets this near to a plane lie in it, mm: rounding of the kernel's cuts. */
export const FACET_IN_PLANE = 1e-7;

/** Less than any figure shows, mm. */
export const UNSEEN = 1e-10;

/** A path that comes no nearer than this to a piece is clear of it, mm: far above rounding, far below any clearance. */
export const PATH_CLEAR = 1e-4;

/** A wall may fall short of what is kept by this, mm: depths and lengths are rounded to steps a hundred times coarser. */
export const WALL_ROUNDING = 0.01;

/** A cavity's corners may stand so far out of the sweep in this proof: rounding of frames seen from each other, mm. */
export const SWEEP_ROUNDING = 1e-5;

/** Rounding of a fit that was asked for at its limit, mm. */
export const FIT_ROUNDING = 0.002;

/** Rounding of a figure that was sized to its limit, mm. */
export const SIZED_TO_LIMIT = 0.02;

/** A cutter is known by the hundredth of a millimetre that is written on it: 12.7, 9.53. */
export const SAME_CUTTER = 0.01;

/** Rounding of places worked out by different ways, mm. */
export const SAME_PLACE_MM = 1e-3;

/** Boxes that overlap by less only touch, mm. */
export const BOXES_TOUCH = 1e-6;

/** Nearer than single precision can tell corners apart, mm. */
export const SAME_SINGLE = 1e-5;

/** Marks nearer than a knife line is wide share their line and words, mm. */
export const SAME_WORDS = 0.01;

/** Sides of the outline this near to the grain or square to it are neither slanted nor told. */
export const STRAIGHT_DEG = 0.01;

/** Stops nearer than this are one: half of the finest step printed, mm. */
export const SAME_STOP = 0.05;

/** A face turned less than this toward the viewer is seen as a line and hides nothing. */
export const EDGE_ON = 1e-4;

/** Middle points nearer to the line than this are left out, mm. */
export const CHAIN_STRAIGHT = 0.002;

/** A mark that runs this near beside a line to cut lies on top of it, mm: a machine would go there twice. */
export const ON_TOP = 0.1;

/** Lines that meet at less than this run side by side (about half a degree), as a sine. */
export const ON_TOP_SINE = 0.01;

/** A length this near to a 1/64 line stands on it: the fourth decimal of an inch, halved. */
export const ON_LINE_INCH = 0.00005;

/** Figures nearer than this are one: noise of arithmetic, in whatever unit. */
export const NOISE = 1e-9;

/** Lengths nearer than this are one length: noise of arithmetic, mm. */
export const SAME_LENGTH = 1e-6;

/** Below this a face counts as square to the clamp: outer faces of two pads stay within 0.1° of parallel, degrees. */
export const SQUARE_TO_CLAMP_DEG = 0.05;

/** Positions nearer than this are one mark, mm: finer than a knife. */
export const SAME_MARK = 0.005;

/** A fence runs true along an edge this near to upright and parallel, as what its cosine lacks of 1. */
export const UPRIGHT = 1e-9;

/** A shank fits a collet of its own diameter; measured ones differ by this much, mm. */
export const SAME_SHANK = 0.05;

/** Slack of a limit against rounding: the last bit of a sum must not refuse a set-up. */
export const LIMIT_ROUNDING = 1e-6;

/** Settings nearer than this are one setting, mm: finer than any rail can be set. */
export const SAME_SETTING = 0.01;

/** Corners this near to the lowest point of a piece stand on the floor, mm: what a level floor itself is out by. */
export const ON_FLOOR = 0.05;

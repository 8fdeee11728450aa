import { INCH, type Units } from '../../src/length/index.js';

/** What the jig keeps where nothing is published. Common practice, no source; mm. */

/** A bolt's corner to the wall of its counterbore. */
export const HEAD_SIDE_AIR = 1;

/** A bolt's head below the rail's underside, so that the jig can be set down. */
export const HEAD_BELOW = 2;

/** Wood a counterbore leaves above the bolt's head. */
export const RAIL_FLOOR = 10;

/** Travel beyond the thinnest and thickest work at each end of a slot. */
export const SLOT_PLAY = 1;

/** How far a rail reaches beyond the plate, to start and end a cut. */
export const RAIL_BEYOND: Readonly<Record<Units, number>> = { mm: 50, in: 2 * INCH };

/** Thread of a bolt in its knob, and of a screw in the router's base, as a multiple of the diameter. */
export const THREAD_DIAMETERS = 1;

/** Air beyond a bolt's tip in its knob. */
export const TIP_AIR = 1;

/** Between two knobs that share a slot. */
export const KNOB_GAP = 2;

/** A turning cutter to the rails, and to the wall of its opening. */
export const CUTTER_AIR = 2;
export const OPENING_AIR = 1;

/** Least air round a bolt that is to slide in its slot. */
export const SLIDE_AIR = 0.1;

/** Least depth of a screw's head below a sliding face. */
export const LEAST_HEAD_BELOW = 0.2;

/** Wood between a mounting hole's countersink and the cutter's opening. */
export const OPENING_WALL = 3;

/** A countersink is this much wider than the head all round: a head drawn to touch its cone overlaps it in facets. */
export const SEAT_AIR = 0.05;

/** What holding the work keeps where nothing is published. Common practice, no source; mm and degrees. */

/** Wood under the plate beyond the cutter's centre, or the router rocks. */
export const HOLD = 25;

/** How far down a face a rail must bear. */
export const BEARING_DOWN = 12;

/** The steepest face a wedge is made for: a steeper one slides. */
export const STEEPEST_WEDGE_DEG = 25;

/** A wedge's thin end: thinner ones break when they are sawn. */
export const WEDGE_THIN = 4;

/** Between what moves and wood it must not meet: a rail over a wedge and the wood beyond it, a plate and a riser. */
export const WOOD_AIR = 1;

/** How far a wedge reaches beyond the mortise at each end. */
export const WEDGE_BEYOND = 25;

/** What a stop needs to stand on. */
export const STOP_FOOT = 20;

/** Room for a clamp below the rails, on a support block. */
export const CLAMP_ROOM = 40;

/** Width of a support block that no rail measures, and of wood that will take a clamped guide. */
export const SUPPORT_WIDTH = 60;
export const GUIDE_WOOD = 30;

/** A guide board, and how far it reaches beyond the router's base at each end. */
export const GUIDE = { width: 80, thickness: 18, beyond: 50 } as const;

/** Marks a guide is laid on stand at least this far apart: nearer ones turn it by more than a pencil line shows. */
export const MARKS_APART = 80;

/** Wood round the opening of a template, beyond the router's base. */
export const TEMPLATE_BEYOND = 30;

/** A template is thicker than the bush's collar is long, by this much. */
export const COLLAR_AIR = 0.5;

/** A bush's bore is wider than the cutter by this, so that chips come out: 1/16 in on each side. */
export const CHIP_AIR = 3.2;

/** The longest horn that is left on a blank: about two inches. Longer overruns take a support block. */
export const LONGEST_HORN = 50;

/** Horns are left in steps of this. */
export const HORN_STEP = 5;

/** A depth block: its thickness is the depth. */
export const DEPTH_BLOCK = { length: 80, width: 40 } as const;

/** Air a turning cutter keeps to a rail when the jig's design does not say. */
export const CUTTER_AIR = 2;

/** Shank in the collet, as a multiple of its diameter. From memory: no source. */
export const COLLET_GRIP_DIAMETERS = 2;

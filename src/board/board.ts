import type { Frame, Vec3 } from '../frame/index.js';
import type { Profile } from '../profile/index.js';

/**
 * A board as data, in its own frame: the origin is the corner of the milled blank where reference end, reference edge and
 * reference face meet; X along the grain, Y across, Z through the thickness. All lengths mm.
 */
export interface Board {
  /** Unique in the design, letters, digits and hyphens: `left-side`. */
  readonly id: string;
  /** What the person calls it: `left side`. */
  readonly name: string;
  readonly material: string;
  /** The milled rectangular piece: it fills 0..length × 0..width × 0..thickness. */
  readonly blank: Blank;
  /** Outline in the XY plane, cut square through the thickness; lies within the blank. */
  readonly outline: Profile;
  readonly bevels: readonly Bevel[];
  readonly openings: readonly Opening[];
  readonly mortises: readonly Mortise[];
  readonly holes: readonly Hole[];
  readonly slots: readonly Slot[];
  readonly grooves: readonly Groove[];
}

export interface Blank {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/**
 * `reference-face` (z = 0), `opposite-face`, `reference-edge` (y = 0), `opposite-edge`, `reference-end` (x = 0),
 * `opposite-end`; `edge-N` for the Nth outline segment that lies on none of these; the id of a bevel.
 */
export type FaceId = string;

/** A plane cut: the wood on the side the normal points to is removed. */
export interface Bevel {
  readonly id: FaceId;
  /** A point of the plane, board frame. */
  readonly point: Vec3;
  /** Unit normal out of the wood that stays, board frame. */
  readonly normal: Vec3;
  /** The cut is made only in the column over this outline (board XY); everywhere when absent. */
  readonly within?: Profile;
}

/** A hole of any outline, square through the thickness; board XY. */
export interface Opening {
  readonly id: string;
  readonly outline: Profile;
}

/** What a feature stands on: `at` has its origin on the face and its z out of the wood, in the board frame. */
interface OnFace {
  readonly id: string;
  readonly face: FaceId;
  readonly at: Frame;
}

/**
 * An obround pocket: width = cutter diameter across, length along `at.x` over the round ends, both square to the axis `at.z`.
 *
 * `depth` runs along -`at.z` from `at.origin`, the middle of the mouth on the face, to the flat bottom. When the axis leans
 * from the face the mouth is an oblique section: it is shallowest at its short point, see `mouthOf`.
 */
export interface Mortise extends OnFace {
  readonly width: number;
  readonly length: number;
  readonly depth: number;
  /** The joint and the tenon it was cut for. */
  readonly joint: string;
  readonly tenon: string;
  /** Unit normal of the face out of the wood, board frame, when the axis leans from it; absent when the axis is square to it. */
  readonly faceNormal?: Vec3;
}

export interface Hole extends OnFace {
  readonly diameter: number;
  readonly depth: number | 'through';
  readonly counterbore?: { readonly diameter: number; readonly depth: number };
  /** `diameter` at the face; the cone narrows to the hole's diameter. */
  readonly countersink?: { readonly diameter: number; readonly angleDeg: number };
}

/** An obround slot along `at.x`; with `openAt` it runs out of the wood past that end of its length. */
export interface Slot extends OnFace {
  readonly width: number;
  readonly length: number;
  readonly depth: number | 'through';
  readonly openAt?: 'start' | 'end';
}

/**
 * A groove: a square channel along a face, its floor flat, cut in one go along a fence. It runs along `at.x`, `length` from end
 * to end; `at.origin` is the middle of its mouth.
 */
export interface Groove extends OnFace {
  readonly width: number;
  readonly length: number;
  readonly depth: number;
  /** The face the fence follows; the groove runs along it. */
  readonly from: FaceId;
  /** Ends that stop in the wood, round as the cutter leaves them; the others run out of the board. */
  readonly stopped: readonly ('start' | 'end')[];
  /** A groove without a wall on one side, towards `at.y` (1) or away from it (-1): a rebate. */
  readonly rebate?: 1 | -1;
}

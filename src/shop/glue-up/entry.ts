import type { PlacedBoard } from '../../assembly/index.js';
import type { Frame, Vec3 } from '../../frame/index.js';
import type { Joint } from '../../joinery/index.js';

/** A joint as it is closed: its tenons stand glued in one board, the owner, and enter the other. */
export interface Entry {
  readonly joint: Joint;
  /** Its mortise is in end grain or in an edge; the tenon is glued in here first. */
  readonly owner: string;
  readonly receiver: string;
  /** The tenons' axis, assembly frame, out of the owner. */
  readonly axis: Vec3;
  /** How long a tenon is in the wood of the receiver, from the first touch of its mouth, along the axis, mm. */
  readonly engaged: number;
  /** For each of the two boards: how it bends when it is pushed aside. */
  readonly springs: readonly Spring[];
  /** Of a panel in a groove, which has no tenons and no glue. */
  readonly inGroove?: InGroove;
}

/** A board as a cantilever, fixed at its nearest other joint. */
export interface Spring {
  readonly board: string;
  readonly placed: PlacedBoard;
  /** Free length, mm. */
  readonly reach: number;
}

export type Freedom = 'free' | 'sprung' | 'locked';

/** How a joint goes together along a travel. mm, degrees. */
export interface JointFreedom {
  readonly joint: string;
  readonly freedom: Freedom;
  /** Between the tenon's axis and the travel. */
  readonly leanDeg: number;
  /** How far the tenon stands beside its mortise when it first touches: engaged length · tan lean. */
  readonly shift: number;
  /** What of it the clearances do not take, as a vector the owner is pushed by against the receiver, assembly frame. */
  readonly push: Vec3;
  readonly excess: number;
  /** About how hard the softer board must be pushed; 0 when free, undefined when it does not bend that way. */
  readonly forceN: number | undefined;
}

/** A panel's edge in a groove: it goes in deeper, or slides along, and nothing else. */
export interface InGroove {
  /** Assembly frame; x along the groove, z out of the wood. */
  readonly groove: Frame;
  /** How much of the panel's edge stands in the groove, along it, mm. */
  readonly run: number;
  /** Air beside the panel, each face. */
  readonly air: number;
}

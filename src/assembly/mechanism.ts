import type { ErrorText } from '../errors.js';
import type { Vec3 } from '../frame/index.js';

/** Another position of the moving pieces: how far each is shifted from where it is placed, mm, assembly frame. */
export interface Pose {
  readonly name: string;
  readonly shift: Readonly<Record<string, Vec3>>;
}

/** Stable names of the gaps that models ask to be kept. */
export type GapCode =
  | 'knob-near-base'
  | 'knobs-touch'
  | 'cutter-near-rail'
  | 'cutter-near-plate'
  | 'bolt-binds-in-slot'
  | 'screw-head-proud';

/** A gap that must be kept between two pieces in every pose. */
export interface KeepApart {
  readonly code: GapCode;
  readonly a: string;
  readonly b: string;
  readonly least: number;
  readonly why: string;
  readonly remedy: string;
}

/** A screw thread that must enter its nut or knob far enough, and not bottom. */
export interface Engagement {
  readonly screw: string;
  readonly nut: string;
  readonly least: number;
  /** Air that must stay between the screw's tip and the bottom of its hole; 0 for a through thread. */
  readonly tipAir: number;
}

/** Two pieces whose gap in a named pose must reach a stated value. */
export interface Reach {
  readonly a: string;
  readonly b: string;
  readonly pose: string;
  readonly wanted: number;
  readonly sense: 'at most' | 'at least';
  readonly what: string;
  readonly remedy: string;
}

/** Where a piece stands, taken for granted because nothing that was given tells it. */
export interface Assumption {
  readonly subjects: readonly string[];
  readonly what: ErrorText;
  readonly remedy: string;
  /** Measurements that would settle it. */
  readonly missing: number;
}

/** What moves in a design, how far it must go, and what must stay clear and hold on the way. */
export interface Mechanism {
  readonly poses: readonly Pose[];
  readonly keepApart: readonly KeepApart[];
  readonly engagements: readonly Engagement[];
  readonly reaches: readonly Reach[];
  readonly assumptions?: readonly Assumption[];
}

/** What moves nothing: the mechanism of a design without one. */
export const STILL: Mechanism = { poses: [], keepApart: [], engagements: [], reaches: [] };

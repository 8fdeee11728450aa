import type { Vec3 } from '../../frame/index.js';
import type { Verdict } from '../at-hand/index.js';
import type { ClampBearing } from './clamp-bearing.js';
import type { PadUse } from './clamp-pad.js';
import type { ClampChoice } from './clamps-chosen.js';

/** One clamp of a stage. mm, degrees, assembly frame. */
export interface Clamp {
  /** `C1`, `C2` … */
  readonly id: string;
  readonly stage: number;
  /** The board it squeezes along, and the joints it closes. */
  readonly rail: string;
  readonly joints: readonly string[];
  /** A point of its line, in the plane of the first joint, and its direction. */
  readonly through: Vec3;
  readonly direction: Vec3;
  readonly ends: readonly [ClampEnd, ClampEnd];
  /** Jaw to jaw: the outside size and both pads. */
  readonly opening: number;
  /** From its bar to the line it squeezes along, at least. */
  readonly throat: number;
  /** Whether a clamp at hand does that, none used twice in a stage, and what is wanting when none does. */
  readonly verdict: Verdict;
  readonly wants?: ClampChoice['wants'];
}

export interface ClampEnd extends ClampBearing {
  readonly pad: PadUse;
  /** Share of the force that pushes along the face without the pad: sin of the angle. */
  readonly slideShare: number;
  /** Steeper than friction holds: without the pad the clamp walks off. */
  readonly slides: boolean;
}

import type { GlueAtHand, Verdict } from '../at-hand/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';

/** Steps glued in one go, then left in the clamps. */
export interface GlueStage {
  readonly number: number;
  /** Ids of its steps. */
  readonly steps: readonly string[];
  /** Joints closed, and how long that takes. */
  readonly joints: number;
  readonly minutes: number;
  /** Of the glue at hand; undefined when the shop file does not say. */
  readonly openMinutes: number | undefined;
  /** Whether it is closed before the glue skins over. */
  readonly verdict: Verdict;
}

/**
 * Splits an order into the fewest stages that each fit the open time: as many steps as go into it, one after the other.
 *
 * A step that alone takes longer is a stage by itself and fails.
 *
 * @returns for each step the number of its stage, from 1
 */
export function stagesByTime(joints: readonly number[], glue: GlueAtHand | undefined): readonly number[] {
  const open = glue?.openMinutes;
  let [stage, together] = [1, 0];
  return joints.map((now, i) => {
    together += now;
    if (i > 0 && open !== undefined && minutesOf(together) > open) [stage, together] = [stage + 1, now];
    return stage;
  });
}

const minutesOf = (joints: number): number => (joints * PRACTICE.secondsPerJoint) / 60;

/** The stages that steps with a number of joints each make. */
export function gluedStages(
  steps: readonly { readonly id: string; readonly stage: number; readonly joints: readonly unknown[] }[],
  glue: GlueAtHand | undefined,
): readonly GlueStage[] {
  const open = glue?.openMinutes;
  return Array.from({ length: steps.at(-1)?.stage ?? 0 }, (_, i) => {
    const own = steps.filter(({ stage }) => stage === i + 1);
    const joints = own.reduce((sum, step) => sum + step.joints.length, 0);
    const minutes = minutesOf(joints);
    return {
      number: i + 1,
      steps: own.map(({ id }) => id),
      joints,
      minutes,
      openMinutes: open,
      verdict: open === undefined ? 'not verified' : minutes <= open ? 'passed' : 'failed',
    };
  });
}

import type { GlueAtHand, Verdict } from '../at-hand/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';
import type { OrderStep } from './glue-up-move.js';

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
 */
export function glueStages(order: readonly OrderStep[], glue: GlueAtHand | undefined): readonly GlueStage[] {
  const minutes = (joints: number) => (joints * PRACTICE.secondsPerJoint) / 60;
  const open = glue?.openMinutes;
  const stages: { steps: string[]; joints: number }[] = [];
  order.forEach(({ move }, i) => {
    const id = `G${i + 1}`;
    const last = stages.at(-1);
    const together = (last?.joints ?? 0) + move.entries.length;
    if (last && (open === undefined || minutes(together) <= open)) {
      last.steps.push(id);
      last.joints = together;
    } else {
      stages.push({ steps: [id], joints: move.entries.length });
    }
  });
  return stages.map(({ steps, joints }, i) => ({
    number: i + 1,
    steps,
    joints,
    minutes: minutes(joints),
    openMinutes: open,
    verdict: open === undefined ? 'not verified' : minutes(joints) <= open ? 'passed' : 'failed',
  }));
}

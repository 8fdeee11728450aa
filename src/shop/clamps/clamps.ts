import type { Design } from '../../assembly/index.js';
import { add, angleDeg, dot, length, scale, subtract, type Vec3 } from '../../frame/index.js';
import type { Joint } from '../../joinery/index.js';
import type { ClampAtHand, Shop, Verdict } from '../at-hand/index.js';
import { type GlueStep, type GlueUp, gluedStages } from '../glue-up/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';
import { markOf } from '../words/index.js';
import type { Clamp } from './clamp.js';
import { middleOf } from './clamp-lines.js';
import { type ClampPad, padsOf } from './clamp-pads.js';
import { clampsChosen } from './clamps-chosen.js';
import { type ClampDraft, type GluedSoFar, gluedAfter, stageClamps, ungluedYet } from './stage-clamps.js';

/** How far the resultant of a joint's clamps passes from its middle. */
export interface ClampOffset {
  readonly stage: number;
  readonly joint: string;
  readonly offset: number;
  readonly verdict: Verdict;
}

export interface ClampPlan {
  readonly clamps: readonly Clamp[];
  readonly pads: readonly ClampPad[];
  readonly offsets: readonly ClampOffset[];
  /** Joints no clamp can bear on with two flat faces: to be held by hand, tape or a strap. */
  readonly unclamped: readonly { readonly stage: number; readonly joint: string }[];
}

/**
 * The clamps of every stage: along each board that carries tenons, from joint to joint where it has one at either end, else
 * along its grain; one where it is narrow, two where it is wide, evenly about the joint's middle.
 *
 * @param atHand the shop's clamps; none makes every verdict `not verified`
 */
export function clampPlan(design: Design, up: GlueUp, atHand: readonly ClampAtHand[] = []): ClampPlan {
  const clamps: Clamp[] = [];
  const offsets: ClampOffset[] = [];
  const unclamped: { stage: number; joint: string }[] = [];
  let soFar = ungluedYet(design);
  for (const { number: stage } of up.stages) {
    const steps = up.steps.filter((step) => step.stage === stage);
    const lines = stageClamps(soFar, steps);
    for (const { line, clamps: set } of lines) {
      if (set.length === 0) unclamped.push(...line.joints.map(({ id }) => ({ stage, joint: id })));
      else offsets.push(...line.joints.map((joint) => offsetOf(joint, set, stage)));
    }
    const drafts = lines.flatMap(({ clamps: set }) => set);
    const chosen = clampsChosen(drafts, atHand);
    drafts.forEach((clamp, i) => {
      clamps.push({ id: markOf('clamp', clamps.length), stage, ...clamp, ...chosen[i]! });
    });
    soFar = gluedAfter(soFar, steps);
  }
  return { clamps, pads: padsOf(design, clamps), offsets, unclamped };
}

/**
 * A glue-up in more stages, where that lets the clamps at hand go round: those of an earlier stage are free again.
 *
 * A stage ends before a step that more clamps would be wanting for than if it were glued on its own.
 */
export function stagedByClamps(
  design: Design,
  up: GlueUp,
  { clamps, glue }: Pick<Shop, 'clamps' | 'glue'>,
): GlueUp {
  let soFar = ungluedYet(design);
  const wanting = (before: GluedSoFar, steps: readonly GlueStep[]) =>
    clampsChosen(
      stageClamps(before, steps).flatMap(({ clamps: set }) => set),
      clamps,
    ).filter(({ wants }) => wants === 'count').length;
  const staged: GlueStep[] = [];
  const end = (steps: readonly GlueStep[]) => {
    const stage = (staged.at(-1)?.stage ?? 0) + 1;
    staged.push(...steps.map((step) => ({ ...step, stage })));
    soFar = gluedAfter(soFar, steps);
  };
  for (const { number } of up.stages) {
    const steps = up.steps.filter((step) => step.stage === number);
    let stage: readonly GlueStep[] = [];
    if (wanting(soFar, steps) === 0) stage = steps;
    else
      for (const step of steps) {
        const apart = () => wanting(soFar, stage) + wanting(gluedAfter(soFar, stage), [step]);
        if (stage.length > 0 && wanting(soFar, [...stage, step]) > apart()) {
          end(stage);
          stage = [];
        }
        stage = [...stage, step];
      }
    end(stage);
  }
  return { ...up, steps: staged, stages: gluedStages(staged, glue) };
}

/** The clamps of one joint pull like one on the mean of their lines: how far does it pass from the joint's middle? */
function offsetOf(joint: Joint, set: readonly ClampDraft[], stage: number): ClampOffset {
  const middle = middleOf(joint);
  const misses = set.map(({ through, direction }) => {
    const from = subtract(through, middle);
    return subtract(from, scale(direction, dot(from, direction)));
  });
  const offset = length(
    scale(
      misses.reduce<Vec3>((sum, miss) => add(sum, miss), [0, 0, 0]),
      1 / set.length,
    ),
  );
  return { stage, joint: joint.id, offset, verdict: offset <= PRACTICE.clampOffset ? 'passed' : 'failed' };
}

/** The angle between the outer faces of a clamp's two pads, 0 when parallel, degrees. */
export function jawsOutOfParallel({ ends }: Clamp): number {
  const [one, other] = ends.map(({ pad: { angleDeg: lean, place } }): Vec3 => {
    const angle = (lean * Math.PI) / 180;
    return add(scale(place.x, -Math.sin(angle)), scale(place.z, Math.cos(angle)));
  });
  return angleDeg(one!, scale(other!, -1));
}

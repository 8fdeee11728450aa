import type { Design } from '../../assembly/index.js';
import { add, angleDeg, dot, length, scale, subtract, type Vec3 } from '../../frame/index.js';
import type { Joint } from '../../joinery/index.js';
import type { ClampAtHand, Verdict } from '../at-hand/index.js';
import { entriesOf, type GlueUp } from '../glue-up/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';
import type { Clamp, ClampEnd } from './clamp.js';
import { bearingOn, type StandingFaces, standingFaces } from './clamp-bearing.js';
import { type ClampLine, clampLines, middleOf } from './clamp-lines.js';
import { padId, padUse } from './clamp-pad.js';
import { type ClampPad, padsOf } from './clamp-pads.js';
import { throatOf } from './clamp-throat.js';
import { clampsChosen } from './clamps-chosen.js';

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
  const standing = standingFaces(design.boards);
  const entries = entriesOf(design);
  const clamps: Clamp[] = [];
  const offsets: ClampOffset[] = [];
  const unclamped: { stage: number; joint: string }[] = [];
  const glued = new Set<string>();
  // each board's group as it stands so far
  const together = new Map(
    design.boards.map(({ board }): [string, readonly string[]] => [board.id, [board.id]]),
  );
  for (const { number: stage } of up.stages) {
    const steps = up.steps.filter((step) => step.stage === stage);
    for (const { moving, still } of steps) {
      const group = [...moving, ...still];
      for (const id of group) together.set(id, group);
    }
    const closed = steps.flatMap(({ joints }) => joints);
    const now = entries.filter(({ joint }) => closed.some((one) => one.joint === joint.id));
    const drafts: Draft[] = [];
    for (const lines of clampLines(design, entries, now, glued)) {
      const set = clampsOf(standing, lines, stage, together.get(lines.rail)!);
      if (set.length === 0) unclamped.push(...lines.joints.map(({ id }) => ({ stage, joint: id })));
      else offsets.push(...lines.joints.map((joint) => offsetOf(joint, set, stage)));
      drafts.push(...set);
    }
    for (const { joint } of closed) glued.add(joint);
    const chosen = clampsChosen(drafts, atHand);
    drafts.forEach((clamp, i) => {
      clamps.push({ id: `C${clamps.length + 1}`, ...clamp, ...chosen[i]! });
    });
  }
  return { clamps, pads: padsOf(design, clamps), offsets, unclamped };
}

type Draft = Omit<Clamp, 'id' | 'verdict' | 'wants'>;

/** One or two clamps on a line, moved evenly apart until both jaws bear on flat wood. */
function clampsOf(
  standing: StandingFaces,
  line: ClampLine,
  stage: number,
  boards: readonly string[],
): readonly Draft[] {
  const along = line.joints[0]!.seat.x;
  const spread = line.width <= PRACTICE.oneClampUpTo ? [0] : apart(line.width);
  let best: { set: Draft[]; under: number } | undefined;
  for (const off of spread) {
    const places = off === 0 ? [0] : [-off, off];
    const set = places.flatMap((shift) => {
      const clamp = clampAt(standing, line, add(line.through, scale(along, shift)), stage, boards);
      return clamp ? [clamp] : [];
    });
    if (set.length < places.length) continue;
    const under = Math.min(...set.flatMap(({ ends }) => ends.map((end) => end.under)));
    if (!best || under > best.under + 0.001) best = { set, under };
    if (under > 0.95) break;
  }
  return best?.set ?? [];
}

/** Half distances between two clamps: a quarter of the width first, then farther out, then nearer. */
function apart(width: number): readonly number[] {
  const quarter = width / 4;
  const steps = Array.from({ length: Math.floor(width / 20) }, (_, i) => 5 * (i + 1));
  const outer = steps
    .map((step) => quarter + step)
    .filter((off) => off <= width / 2 - PRACTICE.padBreadth / 2);
  const inner = steps.map((step) => quarter - step).filter((off) => off >= PRACTICE.padBreadth / 2);
  return [quarter, ...outer, ...inner];
}

function clampAt(
  standing: StandingFaces,
  { rail, joints, direction, bears }: ClampLine,
  through: Vec3,
  stage: number,
  boards: readonly string[],
): Draft | undefined {
  const ends = [direction, scale(direction, -1)].map((outwards, i): ClampEnd | undefined => {
    const bearing = bearingOn(standing, bears[i]!, through, outwards);
    if (!bearing) return undefined;
    const pad = padUse(padId(bearing.angleDeg), bearing.at, bearing.normal, outwards);
    return {
      ...bearing,
      pad,
      slideShare: Math.sin((bearing.angleDeg * Math.PI) / 180),
      slides: bearing.angleDeg > PRACTICE.slidesAboveDeg,
    };
  });
  const [one, other] = ends;
  if (!one || !other) return undefined;
  const opening = length(subtract(one.at, other.at)) + one.pad.thickness + other.pad.thickness;
  return {
    stage,
    rail,
    joints: joints.map(({ id }) => id),
    through,
    direction,
    ends: [one, other],
    opening,
    throat: throatOf(standing, boards, through, direction, [one, other]),
  };
}

/** The clamps of one joint pull like one on the mean of their lines: how far does it pass from the joint's middle? */
function offsetOf(joint: Joint, set: readonly Draft[], stage: number): ClampOffset {
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

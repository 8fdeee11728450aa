import type { Design } from '../../assembly/index.js';
import { add, length, scale, subtract, type Vec3 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { type Entry, entriesOf, type GlueStep } from '../glue-up/index.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';
import type { Clamp, ClampEnd } from './clamp.js';
import { bearingOn, type StandingFaces, standingFaces } from './clamp-bearing.js';
import { type ClampLine, clampLines } from './clamp-lines.js';
import { padId, padUse } from './clamp-pad.js';
import { throatOf } from './clamp-throat.js';

/** A clamp before the clamps at hand are shared out. */
export type ClampDraft = Omit<Clamp, 'id' | 'stage' | 'verdict' | 'wants'>;

type Tried = Omit<ClampDraft, 'throat'>;

/** How far a design is glued up. */
export interface GluedSoFar {
  readonly design: Design;
  readonly standing: StandingFaces;
  /** Clamps that were worked out, by their line and the boards that stand together: stages are tried again and again. */
  readonly known: Map<string, readonly ClampDraft[]>;
  readonly entries: readonly Entry[];
  /** Joints that are closed. */
  readonly glued: ReadonlySet<string>;
  /** Each board's group as it stands so far. */
  readonly together: ReadonlyMap<string, readonly string[]>;
}

/** Nothing is glued yet. */
export const ungluedYet = onceForEach(
  (design: Design): GluedSoFar => ({
    design,
    standing: standingFaces(design.boards),
    known: new Map(),
    entries: entriesOf(design),
    glued: new Set(),
    together: new Map(design.boards.map(({ board: { id } }) => [id, [id]])),
  }),
);

/** What is glued once some more steps are done. */
export const gluedAfter = (before: GluedSoFar, steps: readonly GlueStep[]): GluedSoFar => ({
  ...before,
  glued: new Set([...before.glued, ...steps.flatMap(({ joints }) => joints.map(({ joint }) => joint))]),
  together: new Map([
    ...before.together,
    ...steps.flatMap(({ moving, still }) => {
      const group = [...moving, ...still];
      return group.map((id) => [id, group] as const);
    }),
  ]),
});

/** A line of force, and the clamps that squeeze along it; none where no two flat faces bear them. */
export interface LineClamped {
  readonly line: ClampLine;
  readonly clamps: readonly ClampDraft[];
}

/** The clamps of steps that are glued in one go. */
export function stageClamps(before: GluedSoFar, steps: readonly GlueStep[]): readonly LineClamped[] {
  const { design, standing, entries, known } = before;
  const { together } = gluedAfter(before, steps);
  const closed = new Set(steps.flatMap(({ joints }) => joints.map(({ joint }) => joint)));
  const now = entries.filter(({ joint }) => closed.has(joint.id));
  return clampLines(design, entries, now, before.glued).map((line) => {
    const boards = together.get(line.rail)!;
    const { joints, ...where } = line;
    const key = JSON.stringify([where, joints.map(({ id }) => id), boards]);
    const clamps = known.get(key) ?? clampsOf(standing, line, boards);
    known.set(key, clamps);
    return { line, clamps };
  });
}

/** One or two clamps on a line, moved evenly apart until both jaws bear on flat wood. */
function clampsOf(
  standing: StandingFaces,
  line: ClampLine,
  boards: readonly string[],
): readonly ClampDraft[] {
  const along = line.joints[0]!.seat.x;
  const spread = line.width <= PRACTICE.oneClampUpTo ? [0] : apart(line.width);
  let best: { set: Tried[]; under: number } | undefined;
  for (const off of spread) {
    const places = off === 0 ? [0] : [-off, off];
    const set = places.flatMap((shift) => {
      const clamp = clampAt(standing, line, add(line.through, scale(along, shift)));
      return clamp ? [clamp] : [];
    });
    if (set.length < places.length) continue;
    const under = Math.min(...set.flatMap(({ ends }) => ends.map((end) => end.under)));
    if (!best || under > best.under + 0.001) best = { set, under };
    if (under > 0.95) break;
  }
  return (best?.set ?? []).map((clamp) => ({
    ...clamp,
    throat: throatOf(standing, boards, clamp.through, clamp.direction, clamp.ends),
  }));
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
): Tried | undefined {
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
    rail,
    joints: joints.map(({ id }) => id),
    through,
    direction,
    ends: [one, other],
    opening,
  };
}

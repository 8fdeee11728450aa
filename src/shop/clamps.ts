import type { Design } from '../assembly/index.js';
import { add, angleDeg, dot, length, scale, subtract, unit, type Vec3 } from '../frame/index.js';
import type { Joint } from '../joinery/index.js';
import { bearingOn, type ClampBearing, type StandingFaces, standingFaces } from './clamp-bearing.js';
import { type PadUse, padBoard, padId, padUse } from './clamp-pad.js';
import type { GlueUp } from './glue-up.js';
import { type Entry, entriesOf } from './glue-up-entry.js';
import { GLUE_UP_PRACTICE as PRACTICE } from './glue-up-practice.js';
import type { Aid } from './holding.js';
import { type OffcutWedge, offcutWedges } from './offcut-wedges.js';
import type { ClampAtHand, Verdict } from './shop.js';

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
  /** Whether a clamp at hand opens that far, none used twice in a stage. */
  readonly verdict: Verdict;
}

export interface ClampEnd extends ClampBearing {
  readonly pad: PadUse;
  /** Share of the force that pushes along the face without the pad: sin of the angle. */
  readonly slideShare: number;
  /** Steeper than friction holds: without the pad the clamp walks off. */
  readonly slides: boolean;
}

/** How far the resultant of a joint's clamps passes from its middle. */
export interface ClampOffset {
  readonly stage: number;
  readonly joint: string;
  readonly offset: number;
  readonly verdict: Verdict;
}

/** A pad to be made or kept. */
export interface ClampPad extends Aid {
  readonly kind: 'clamp pad';
  readonly angleDeg: number;
  /** Offcuts with this angle, those large enough first; empty for a flat pad. */
  readonly offcuts: readonly OffcutWedge[];
}

export interface ClampPlan {
  readonly clamps: readonly Clamp[];
  readonly pads: readonly ClampPad[];
  readonly offsets: readonly ClampOffset[];
  /** Joints no clamp can bear on with two flat faces: to be held by hand, tape or a strap. */
  readonly unclamped: readonly { readonly stage: number; readonly joint: string }[];
}

/** A line of force before its ends are known. */
interface Line {
  readonly rail: string;
  readonly joints: readonly Joint[];
  readonly through: Vec3;
  readonly direction: Vec3;
  /** Boards the two jaws bear on: along the direction, and against it. */
  readonly bears: readonly [string, string];
}

/**
 * The clamps of every stage: along each board that carries tenons, from joint to joint where it has one at either end, else
 * along its grain; one where it is narrow, two where it is wide, evenly about the joint's middle.
 *
 * @param atHand the shop's clamps; none makes every opening `not verified`
 */
export function clampPlan(design: Design, up: GlueUp, atHand: readonly ClampAtHand[] = []): ClampPlan {
  const standing = standingFaces(design.boards);
  const entries = entriesOf(design);
  const clamps: Clamp[] = [];
  const offsets: ClampOffset[] = [];
  const unclamped: { stage: number; joint: string }[] = [];
  const glued = new Set<string>();
  for (const { number: stage } of up.stages) {
    const closed = up.steps.filter((step) => step.stage === stage).flatMap(({ joints }) => joints);
    const now = entries.filter(({ joint }) => closed.some((one) => one.joint === joint.id));
    const drafts: Omit<Clamp, 'id' | 'verdict'>[] = [];
    for (const lines of rails(design, entries, now, glued)) {
      const set = clampsOf(standing, lines, stage);
      if (set.length === 0) unclamped.push(...lines.joints.map(({ id }) => ({ stage, joint: id })));
      else offsets.push(...lines.joints.map((joint) => offsetOf(joint, set, stage)));
      drafts.push(...set);
    }
    for (const { joint } of closed) glued.add(joint);
    const verdicts = openingVerdicts(
      drafts.map(({ opening }) => opening),
      atHand,
    );
    drafts.forEach((clamp, i) => {
      clamps.push({ id: `C${clamps.length + 1}`, ...clamp, verdict: verdicts[i]! });
    });
  }
  return { clamps, pads: padsOf(design, clamps), offsets, unclamped };
}

/** Each rail whose joints close now, with the line through the middle of its joints. */
function rails(
  design: Design,
  all: readonly Entry[],
  now: readonly Entry[],
  glued: ReadonlySet<string>,
): readonly (Line & { width: number })[] {
  const done = new Set<string>();
  return now.flatMap((entry) => {
    if (done.has(entry.joint.id)) return [];
    const board = design.boards.find((one) => one.board.id === entry.owner)!;
    const opposite = all.find(
      (other) => other.owner === entry.owner && other !== entry && angleDeg(other.axis, entry.axis) > 135,
    );
    const middle = middleOf(entry.joint);
    done.add(entry.joint.id);
    const width = seatRun(entry.joint, board.place.y, board.board.blank);
    if (opposite) {
      const closesToo = now.includes(opposite);
      const there = closesToo || glued.has(opposite.joint.id);
      if (closesToo) done.add(opposite.joint.id);
      return [
        {
          rail: entry.owner,
          joints: closesToo ? [entry.joint, opposite.joint] : [entry.joint],
          through: middle,
          direction: unit(subtract(middle, middleOf(opposite.joint))),
          bears: [entry.receiver, there ? opposite.receiver : entry.owner] as const,
          width,
        },
      ];
    }
    const grain = dot(board.place.x, entry.axis) > 0 ? board.place.x : scale(board.place.x, -1);
    const direction = angleDeg(grain, entry.axis) < 45 ? grain : entry.axis;
    return [
      {
        rail: entry.owner,
        joints: [entry.joint],
        through: middle,
        direction,
        bears: [entry.receiver, entry.owner] as const,
        width,
      },
    ];
  });
}

/** Middle of a joint's glue: that of its tenons where they cross the seat. */
const middleOf = ({ tenons }: Joint): Vec3 =>
  scale(
    tenons.reduce<Vec3>((sum, { place }) => add(sum, place.origin), [0, 0, 0]),
    1 / tenons.length,
  );

/** How wide the rail is along its joint's row of mortises. */
function seatRun(joint: Joint, across: Vec3, blank: { width: number; thickness: number }): number {
  return Math.abs(dot(joint.seat.x, across)) > Math.SQRT1_2 ? blank.width : blank.thickness;
}

/** One or two clamps on a line, moved evenly apart until both jaws bear on flat wood. */
function clampsOf(
  standing: StandingFaces,
  line: Line & { width: number },
  stage: number,
): readonly Omit<Clamp, 'id' | 'verdict'>[] {
  const along = line.joints[0]!.seat.x;
  const spread = line.width <= PRACTICE.oneClampUpTo ? [0] : apart(line.width);
  let best: { set: Omit<Clamp, 'id' | 'verdict'>[]; under: number } | undefined;
  for (const off of spread) {
    const places = off === 0 ? [0] : [-off, off];
    const set = places.flatMap((shift) => {
      const clamp = clampAt(standing, line, add(line.through, scale(along, shift)), stage);
      return clamp ? [clamp] : [];
    });
    if (set.length < places.length) continue;
    const under = Math.min(...set.flatMap(({ ends }) => ends.map((end) => end.under)));
    if (!best || under > best.under + 0.05) best = { set, under };
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
  { rail, joints, direction, bears }: Line,
  through: Vec3,
  stage: number,
): Omit<Clamp, 'id' | 'verdict'> | undefined {
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
  };
}

/** The clamps of one joint pull like one on the mean of their lines: how far does it pass from the joint's middle? */
function offsetOf(joint: Joint, set: readonly Omit<Clamp, 'id' | 'verdict'>[], stage: number): ClampOffset {
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

/** The longest opening takes the shortest clamp that still opens so far; each clamp serves once in a stage. */
function openingVerdicts(openings: readonly number[], atHand: readonly ClampAtHand[]): readonly Verdict[] {
  if (atHand.length === 0) return openings.map(() => 'not verified');
  const left = atHand
    .flatMap(({ opening, count }) => Array.from({ length: count }, () => opening))
    .toSorted((a, b) => a - b);
  const verdicts: Verdict[] = openings.map(() => 'failed');
  const order = openings.map((opening, i) => ({ opening, i })).toSorted((a, b) => b.opening - a.opening);
  for (const { opening, i } of order) {
    const at = left.findIndex((most) => most >= opening);
    if (at < 0) continue;
    left.splice(at, 1);
    verdicts[i] = 'passed';
  }
  return verdicts;
}

/** Every pad once, counted for the stage that needs most of it. */
function padsOf(design: Design, clamps: readonly Clamp[]): readonly ClampPad[] {
  const uses = clamps.flatMap((clamp) => clamp.ends.map((end) => ({ clamp, end })));
  const wedges = design.boards.flatMap(({ board }) => offcutWedges(board));
  return [...new Set(uses.map(({ end }) => end.pad.aid))].map((aid) => {
    const mine = uses.filter(({ end }) => end.pad.aid === aid);
    const { angleDeg: angle } = mine[0]!.end.pad;
    const perStage = new Map<number, number>();
    for (const { clamp } of mine) perStage.set(clamp.stage, (perStage.get(clamp.stage) ?? 0) + 1);
    const offcuts = angle === 0 ? [] : wedges.filter((wedge) => Math.abs(wedge.angleDeg - angle) <= 0.05);
    const under = [...new Set(mine.map(({ end }) => end.board))].join(', ');
    const material = design.boards.find(({ board }) => board.id === mine[0]!.end.board)!.board.material;
    return {
      board: padBoard(angle, material),
      kind: 'clamp pad' as const,
      purpose:
        angle === 0
          ? `flat pad under the clamps, on ${under}`
          : `${angle.toFixed(2).replace(/\.?0+$/, '')}° wedge under the clamps, on ${under}`,
      count: Math.max(...perStage.values()),
      handed: false,
      angleDeg: angle,
      offcuts: offcuts.toSorted((a, b) => Number(b.serves) - Number(a.serves) || b.slope - a.slope),
    };
  });
}

/** The angle between the outer faces of a clamp's two pads, 0 when parallel, degrees. */
export function jawsOutOfParallel({ ends }: Clamp): number {
  const [one, other] = ends.map(({ pad: { angleDeg: lean, place } }): Vec3 => {
    const angle = (lean * Math.PI) / 180;
    return add(scale(place.x, -Math.sin(angle)), scale(place.z, Math.cos(angle)));
  });
  return angleDeg(one!, scale(other!, -1));
}

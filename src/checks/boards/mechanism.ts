import { type Mechanism, type Pose, STILL } from '../../assembly/index.js';
import { type Frame, pointOut, subtract, type Vec3 } from '../../frame/index.js';
import { type Body, box, boxIn, gap, grown, hit, type Solids, withinBox } from '../../solid/index.js';
import { CLEARANCE_SLACK } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

const UNMOVED: Vec3 = [0, 0, 0];

const mechanismOf = ({ design }: Solids): Mechanism => design.mechanism ?? STILL;

const bodyOf = (solids: Solids, id: string): Body =>
  (solids.boards.get(id) ?? solids.hardware.get(id) ?? solids.tenons.get(id))!.body;

/** The gap between two pieces in a pose, looked for up to `reach`. */
function gapIn(solids: Solids, a: string, b: string, pose: Pose | undefined, reach: number): number {
  const by = subtract(pose?.shift[b] ?? UNMOVED, pose?.shift[a] ?? UNMOVED);
  const one = bodyOf(solids, a);
  const moved = bodyOf(solids, b).translate([...by]);
  // a plate full of slots has thousands of facets, few of them near a bolt
  const near = withinBox(solids.kernel, moved, grown(box(one), reach + 1));
  const found = gap(one, near, reach);
  moved.delete();
  near.delete();
  return found;
}

/** Pieces that must keep clear of each other do, as placed and in every pose. */
export const keepApart = (bench: Bench): readonly Finding[] => {
  const { solids, say } = bench;
  const mechanism = mechanismOf(solids);
  const poses: readonly (Pose | undefined)[] = [undefined, ...mechanism.poses];
  return mechanism.keepApart.flatMap((rule): Finding[] => {
    const worst = poses
      .map((pose) => ({ pose, gap: gapIn(solids, rule.a, rule.b, pose, rule.least + 1) }))
      .reduce((least, one) => (one.gap < least.gap ? one : least));
    if (worst.gap >= rule.least - CLEARANCE_SLACK) return [];
    const [near, least] = say.lengths(worst.gap, rule.least);
    const when = worst.pose ? ` at the ${worst.pose.name}` : '';
    return [
      {
        code: rule.code,
        level: 'error',
        subjects: [rule.a, rule.b],
        measured: worst.gap,
        limit: rule.least,
        unit: 'mm',
        message: `${rule.a} and ${rule.b} come within ${near} of each other${when}; they need ${least}, because ${rule.why}`,
        remedy: rule.remedy,
        basis: COMMON_PRACTICE,
      },
    ];
  });
};

/** Moving pieces reach the gaps that were asked for. */
export const reaches = (bench: Bench): readonly Finding[] => {
  const { solids, say } = bench;
  const mechanism = mechanismOf(solids);
  return mechanism.reaches.flatMap((reach): Finding[] => {
    const pose = mechanism.poses.find((one) => one.name === reach.pose);
    const found = gapIn(solids, reach.a, reach.b, pose, 2 * reach.wanted + 100);
    const short = reach.sense === 'at most' ? found - reach.wanted : reach.wanted - found;
    if (short <= CLEARANCE_SLACK) return [];
    const [apart, wanted] = say.lengths(found, reach.wanted);
    return [
      {
        code: 'range-not-reached',
        level: 'error',
        subjects: [reach.a, reach.b],
        measured: found,
        limit: reach.wanted,
        unit: 'mm',
        message: `${reach.what}: ${reach.a} and ${reach.b} are ${apart} apart at the ${reach.pose}; you asked for ${reach.sense} ${wanted}`,
        remedy: reach.remedy,
        basis: MEASURED,
      },
    ];
  });
};

/** Screws are long enough to hold and short enough not to bottom. */
export const engagements = (bench: Bench): readonly Finding[] => {
  const { solids, say } = bench;
  return mechanismOf(solids).engagements.flatMap((rule): Finding[] => {
    const screw = solids.hardware.get(rule.screw)!;
    const nut = solids.hardware.get(rule.nut)!;
    const axis = screw.hardware.place;
    const thread = boxIn(screw.body, axis);
    const inside = boxIn(nut.body, axis);
    const room = inside.max[2] - inside.min[2];
    const engaged = Math.min(thread.max[2], inside.max[2]) - inside.min[2];
    const shared = { subjects: [rule.screw, rule.nut], unit: 'mm' as const, basis: COMMON_PRACTICE };
    const found: Finding[] = [];
    if (engaged < rule.least - CLEARANCE_SLACK) {
      const [enters, least, thread] = say.lengths(Math.max(engaged, 0), rule.least, room);
      found.push({
        ...shared,
        code: 'bolt-too-short',
        level: 'error',
        measured: engaged,
        limit: rule.least,
        message: `${rule.screw} goes ${enters} into ${rule.nut}; it needs at least ${least} to hold`,
        remedy:
          room < rule.least
            ? `use a thinner screw: ${rule.nut} has only ${thread} to screw into`
            : 'use the next longer one, or sink its head deeper',
      });
    }
    const air = bottom(nut.body, axis, inside.min[2]) - thread.max[2];
    if (rule.tipAir > 0 && air < rule.tipAir - CLEARANCE_SLACK) {
      const [off, needed] = say.lengths(Math.abs(air), rule.tipAir);
      found.push({
        ...shared,
        code: 'bolt-too-long',
        level: 'error',
        measured: air,
        limit: rule.tipAir,
        message: `${rule.screw} ends ${off} ${air < 0 ? 'beyond' : 'short of'} the bottom of its hole in ${rule.nut}; it must stop ${needed} short, or it bottoms before it clamps`,
        remedy: 'use the next shorter bolt or a thicker washer, or tap the hole deeper',
      });
    }
    return found;
  });
};

/** Nothing stands where it was only taken to stand. */
export const assumptions = ({ solids, say }: Bench): readonly Finding[] =>
  (mechanismOf(solids).assumptions ?? []).map(
    ({ subjects, what, remedy, missing }): Finding => ({
      code: 'cutter-centre-assumed',
      level: 'warning',
      subjects,
      measured: 0,
      limit: missing,
      unit: '',
      message: typeof what === 'string' ? what : what(say),
      remedy,
      basis: MEASURED,
    }),
  );

/** Where a screw's hole ends along its axis, seen from the side it enters; without end when it goes through. */
function bottom(nut: Body, axis: Frame, entrance: number): number {
  const from = entrance - 1;
  const to = entrance + 1000;
  const met = hit(nut, pointOut(axis, [0, 0, from]), pointOut(axis, [0, 0, to]));
  return met === undefined ? Number.POSITIVE_INFINITY : from + met;
}

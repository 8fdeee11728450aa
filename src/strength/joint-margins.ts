import { scale } from '../frame/index.js';
import type { Joint } from '../joinery/index.js';
import { CYCLIC_SHARE, type Passed } from '../statics/index.js';
import type { JointHold } from './joint-holds.js';
import type { Load } from './load.js';
import type { Margin } from './margin.js';

const REMEDY =
  'make the mortises deeper or the rail and its tenons wider, add a stretcher, or choose a stronger wood';

/** What a joint passes on under one load. */
export interface Under {
  readonly load: Load;
  readonly passed: Passed;
}

/** What a joint passes on when joints are stiff, and when they are soft; or by the one stiffness that was measured. */
export type Band = readonly (readonly Under[])[];

/** Pull on the tenons of all that a joint passes on, as force and couples of tenons and shoulder, N; and the lever that counts. */
function demand(
  hold: JointHold,
  { force, moment }: Passed,
): { readonly pull: number; readonly lever: number } {
  const [x, y] = hold.middle;
  const about = [moment[0] - y * force[2], moment[1] + x * force[2]];
  const couples = about.map((m, i) => (hold.levers[i]! > 0 ? Math.abs(m) / hold.levers[i]! : 0));
  const [first, second] = couples as [number, number];
  // pressed together, the shoulder takes that much off
  return { pull: Math.max(first + second - force[2], 0), lever: hold.levers[first >= second ? 0 : 1]! };
}

const about = ({ id, a, b, seat }: Joint) => ({
  subjects: [id, a, b],
  better: 'less' as const,
  remedy: REMEDY,
  at: seat.origin,
});

/**
 * The worst pull under what stands on the surfaces. How a frame with a stretcher shares a load turns on how stiff its joints
 * are: it is warned of when it may be too much in daily use, or when the test load tears it however stiff they are; our estimate is not
 * good enough to refuse a piece by.
 */
export function pulled(joint: Joint, hold: JointHold, band: Band): readonly Margin[] {
  const worst = (kinds: readonly Load['kind'][]) =>
    band.map((under) =>
      Math.max(
        0,
        ...under
          .filter(({ load }) => kinds.includes(load.kind))
          .map(({ passed }) => demand(hold, passed).pull),
      ),
    );
  const [daily, once] = [Math.max(...worst(['person', 'spread'])), Math.min(...worst(['proof', 'edge']))];
  const shared = {
    ...about(joint),
    code: 'joint-pulled' as const,
    unit: 'N' as const,
    governs: hold.governs,
  };
  return [
    ...(daily > 0
      ? [
          {
            ...shared,
            what: `pull on the tenons of ${joint.id} in daily use`,
            figure: daily,
            warning: CYCLIC_SHARE * hold.pull,
          },
        ]
      : []),
    ...(once > 0
      ? [
          {
            ...shared,
            what: `pull on the tenons of ${joint.id} under the test load`,
            figure: once,
            warning: hold.pull,
          },
        ]
      : []),
  ];
}

/** The worst moment when a surface is pushed sideways, to and fro, by the stiffness that spares the joint most. */
export function racked(joint: Joint, hold: JointHold, band: Band): readonly Margin[] {
  const [worst] = band
    .map((under) =>
      under
        .filter(({ load }) => load.kind === 'sideways')
        .flatMap(({ passed: { force, moment } }) =>
          // the push may come from either side
          [1, -1].map((way) => demand(hold, { force: scale(force, way), moment: scale(moment, way) })),
        )
        .reduce((most, one) => (one.pull > most.pull ? one : most), { pull: 0, lever: 0 }),
    )
    .toSorted((a, b) => a.pull - b.pull);
  if (!worst || worst.lever === 0) return [];
  const moment = (force: number) => (force * worst.lever) / 1000;
  return [
    {
      ...about(joint),
      code: 'joint-racked',
      what: `moment in ${joint.id} when the piece is pushed sideways`,
      figure: moment(worst.pull),
      unit: 'N·m',
      error: moment(hold.pull),
      warning: CYCLIC_SHARE * moment(hold.pull),
      governs: hold.governs,
    },
  ];
}

/** The worst force across the tenons; what the shoulders hold by friction is left out. */
export function sheared(joint: Joint, hold: JointHold, band: Band): readonly Margin[] {
  const [worst] = band
    .map((under) =>
      under.reduce(
        (most, { passed: { force } }) => {
          const share = Math.abs(force[0]) / hold.shear[0] + Math.abs(force[1]) / hold.shear[1];
          return share > most.share ? { share, force: Math.hypot(force[0], force[1]) } : most;
        },
        { share: 0, force: 0 },
      ),
    )
    .toSorted((a, b) => a.share - b.share);
  if (!worst || worst.share === 0) return [];
  return [
    {
      ...about(joint),
      code: 'tenons-sheared',
      what: `force across the tenons of ${joint.id}`,
      figure: worst.force,
      unit: 'N',
      error: worst.force / worst.share,
      governs: hold.shearGoverns,
    },
  ];
}

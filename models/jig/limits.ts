import type { Assumption, Engagement, Hardware, KeepApart } from '../../src/assembly/index.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';
import {
  CUTTER_AIR,
  KNOB_GAP,
  LEAST_HEAD_BELOW,
  OPENING_AIR,
  SLIDE_AIR,
  THREAD_DIAMETERS,
  TIP_AIR,
} from './practice.js';
import { SIDES } from './rails.js';

/** Gaps that must stay open in every position of the rails. */
export function keepApart(v: JigValues, fixings: readonly (readonly Hardware[])[]): readonly KeepApart[] {
  const of = (kind: Hardware['kind']) => fixings.flat().filter((piece) => piece.kind === kind);
  const [near, far] = fixings.map((pieces) => pieces.filter((piece) => piece.kind === 'knob'));
  const rails = SIDES.map((side) => `${side}-rail`);
  return [
    ...of('knob').map(
      ({ id }): KeepApart => ({
        code: 'knob-near-base',
        a: id,
        b: 'router-base',
        least: v.knobClearance,
        why: 'fingers turn the knob beside the router',
        remedy: 'move the slots outwards, or use smaller knobs',
      }),
    ),
    ...near!.flatMap((one) =>
      far!.map(
        (other): KeepApart => ({
          code: 'knobs-touch',
          a: one.id,
          b: other.id,
          least: KNOB_GAP,
          why: 'both knobs must turn when the rails are close',
          remedy: 'use smaller knobs or wider rails',
        }),
      ),
    ),
    ...rails.map(
      (id): KeepApart => ({
        code: 'cutter-near-rail',
        a: 'cutter',
        b: id,
        least: CUTTER_AIR,
        why: 'the turning cutter must not reach a rail',
        remedy: 'use a thinner cutter, or thicker work',
      }),
    ),
    {
      code: 'cutter-near-plate',
      a: 'cutter',
      b: 'plate',
      least: OPENING_AIR,
      why: 'the turning cutter must clear the wall of its opening, and chips need a way out',
      remedy: 'make the opening larger',
    },
    ...of('bolt').map(
      ({ id }): KeepApart => ({
        code: 'bolt-binds-in-slot',
        a: id,
        b: 'plate',
        least: SLIDE_AIR,
        why: 'the bolt must slide along its slot',
        remedy: 'lengthen the slots',
      }),
    ),
  ];
}

/** The plate's opening and its slots stand about the cutter, wherever it was taken to be. */
export const assumptions = ({ mounting: { pattern } }: Layout): readonly Assumption[] =>
  pattern.assumed ? [{ subjects: ['plate', 'cutter'], ...pattern.assumed }] : [];

/** The screws' heads must not reach the work or the rails that slide under them. */
export const headsBelow = (screws: readonly Hardware[]): readonly KeepApart[] =>
  screws.flatMap(({ id }) =>
    SIDES.map(
      (side): KeepApart => ({
        code: 'screw-head-proud',
        a: id,
        b: `${side}-rail`,
        least: LEAST_HEAD_BELOW,
        why: "the screws' heads must lie below the sliding face",
        remedy: 'countersink deeper',
      }),
    ),
  );

/** Every bolt in its knob, every screw in the router's base. */
export const engagements = (
  l: Layout,
  fixings: readonly (readonly Hardware[])[],
  screws: readonly Hardware[],
): readonly Engagement[] => [
  ...fixings
    .flat()
    .filter((piece) => piece.kind === 'bolt')
    .map(({ id }) => ({
      screw: id,
      nut: id.replace('-bolt-', '-knob-'),
      least: THREAD_DIAMETERS * l.stack.bolt.diameter,
      tipAir: TIP_AIR,
    })),
  ...screws.map(({ id }) => ({
    screw: id,
    nut: 'router-base',
    least: THREAD_DIAMETERS * l.mounting.screw.diameter,
    tipAir: 0,
  })),
];

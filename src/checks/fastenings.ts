import { type Fastening, LEAST_TONGUE } from '../assembly/index.js';
import { type FasteningMeasure, measureFastening } from '../solid/index.js';
import { type Bench, COMMON_PRACTICE, MEASURED } from './bench.js';
import type { Finding } from './finding.js';

/** Wood under the tip of a screw, or it bulges the show face, mm. Common practice, no source. */
const UNDER_TIP = 3;

/** Of a screw in the wood it holds, in diameters. Common practice, no source. */
const BITE = 2.5;

/** Rounding of a figure that was sized to its limit, mm. */
const ROUNDING = 0.02;

/** What is fastened without glue holds, does not show, and lets the board move as far as was asked. */
export const fastenings = (bench: Bench): readonly Finding[] =>
  (bench.solids.design.fastenings ?? []).flatMap((fastening) => {
    const found = measureFastening(bench.solids, fastening);
    return [...screw(bench, fastening, found), ...moves(bench, fastening, found)];
  });

function screw({ say }: Bench, { id, held, screw: of }: Fastening, { bite, underTip }: FasteningMeasure) {
  const findings: Finding[] = [];
  const shared = { level: 'error' as const, unit: 'mm' as const, basis: COMMON_PRACTICE };
  if (underTip < UNDER_TIP - ROUNDING) {
    const most = of.length - (UNDER_TIP - underTip);
    findings.push({
      ...shared,
      code: 'screw-shows',
      subjects: [of.id, held],
      measured: underTip,
      limit: UNDER_TIP,
      message: `screw ${id} in ${held} ${underTip < 0 ? `comes through by ${say.fine(-underTip)}` : `leaves ${say.fine(underTip)} of wood under its tip`}; at least ${say.fine(UNDER_TIP)} is needed`,
      remedy: `take a screw no longer than ${say.fine(Math.floor(most))} (screwLength)`,
    });
  }
  const least = BITE * of.diameter;
  if (bite < least - ROUNDING) {
    findings.push({
      ...shared,
      code: 'screw-short',
      subjects: [of.id, held],
      measured: bite,
      limit: least,
      message: `screw ${id} bites ${say.fine(bite)} into ${held}; at least ${say.fine(least)}, ${BITE} times its thickness, is needed to hold`,
      remedy: `take a screw at least ${say.fine(Math.ceil(of.length + least - bite))} long (screwLength), or make ${held} thicker`,
    });
  }
  return findings;
}

function moves(
  { say }: Bench,
  { id, held, to, by, travel, tongue }: Fastening,
  { room, tongueLeft }: FasteningMeasure,
): Finding[] {
  const subjects = [id, held, to];
  const findings: Finding[] = [];
  if (room < travel / 2 - ROUNDING) {
    const short = travel / 2 - room;
    findings.push({
      code: 'fastening-stuck',
      level: 'error',
      subjects,
      measured: 2 * room,
      limit: travel,
      unit: 'mm',
      message: `${by} ${id} lets ${held} move ${say.fine(2 * room)}; ${say.fine(travel)} was asked for, or the wood splits`,
      remedy: tongue
        ? `make its tongue ${say.fine(Math.max(tongue.reach - short - ROUNDING, 0))} long at most (tongue), or the slot deeper`
        : 'make its slot longer: leave travel to be worked out, or ask for less',
      basis: MEASURED,
    });
  }
  if (tongueLeft !== undefined && tongueLeft < LEAST_TONGUE - ROUNDING) {
    const longer = LEAST_TONGUE - tongueLeft;
    findings.push({
      code: 'button-slips-out',
      level: 'error',
      subjects,
      measured: tongueLeft,
      limit: LEAST_TONGUE,
      unit: 'mm',
      message: `the tongue of button ${id} keeps ${say.fine(tongueLeft)} in its slot when ${held} has moved away; at least ${say.fine(LEAST_TONGUE)} is needed`,
      remedy: `make the slot ${say.fine(longer)} deeper (slotDepth, or the depth of the groove)`,
      basis: COMMON_PRACTICE,
    });
  }
  return findings;
}

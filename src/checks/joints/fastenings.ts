import { type Fastening, LEAST_TONGUE } from '../../assembly/index.js';
import { type FasteningMeasure, measureFastening } from '../../solid/index.js';
import { SIZED_TO_LIMIT } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

/** Wood under the tip of a screw, or it bulges the show face, mm. Common practice, no source. */
const UNDER_TIP = 3;

/** Of a screw in the wood it holds, in diameters. Common practice, no source. */
const BITE = 2.5;

/** What is fastened without glue holds, does not show, and lets the board move as far as was asked. */
export const fastenings = (bench: Bench): readonly Finding[] =>
  (bench.solids.design.fastenings ?? []).flatMap((fastening) => {
    const found = measureFastening(bench.solids, fastening);
    return [...screw(bench, fastening, found), ...moves(bench, fastening, found)];
  });

function screw({ say }: Bench, { id, held, screw: of }: Fastening, { bite, underTip }: FasteningMeasure) {
  const findings: Finding[] = [];
  const shared = { level: 'error' as const, unit: 'mm' as const, basis: COMMON_PRACTICE };
  if (underTip < UNDER_TIP - SIZED_TO_LIMIT) {
    const most = of.length - (UNDER_TIP - underTip);
    const [wood, least] = say.fines(Math.abs(underTip), UNDER_TIP);
    findings.push({
      ...shared,
      code: 'screw-shows',
      subjects: [of.id, held],
      measured: underTip,
      limit: UNDER_TIP,
      message: `screw ${id} in ${held} ${underTip < 0 ? `comes through by ${wood}` : `leaves ${wood} of wood under its tip`}; it must leave at least ${least}`,
      remedy: `use a screw no longer than ${say.fine(Math.floor(most))} (screwLength)`,
    });
  }
  const least = BITE * of.diameter;
  if (bite < least - SIZED_TO_LIMIT) {
    const [bites, needed] = say.fines(bite, least);
    findings.push({
      ...shared,
      code: 'screw-short',
      subjects: [of.id, held],
      measured: bite,
      limit: least,
      message: `screw ${id} bites ${bites} into ${held}; to hold it needs at least ${needed}, ${BITE} times its diameter`,
      remedy: `use a screw at least ${say.fine(Math.ceil(of.length + least - bite))} long (screwLength), or make ${held} thicker`,
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
  if (room < travel / 2 - SIZED_TO_LIMIT) {
    const short = travel / 2 - room;
    const [moved, asked] = say.fines(2 * room, travel);
    findings.push({
      code: 'fastening-stuck',
      level: 'error',
      subjects,
      measured: 2 * room,
      limit: travel,
      unit: 'mm',
      message: `${by} ${id} lets ${held} move ${moved}; it must move ${asked}, or the wood splits`,
      remedy: tongue
        ? `make its tongue ${say.fine(Math.max(tongue.reach - short - SIZED_TO_LIMIT, 0))} long at most (tongue), or the slot deeper`
        : 'make its slot longer: leave travel out to have it worked out, or ask for less travel',
      basis: MEASURED,
    });
  }
  if (tongueLeft !== undefined && tongueLeft < LEAST_TONGUE - SIZED_TO_LIMIT) {
    const [left, least, deeper] = say.fines(tongueLeft, LEAST_TONGUE, LEAST_TONGUE - tongueLeft);
    findings.push({
      code: 'button-slips-out',
      level: 'error',
      subjects,
      measured: tongueLeft,
      limit: LEAST_TONGUE,
      unit: 'mm',
      message: `the tongue of button ${id} is still ${left} in its slot when ${held} has moved away; it must keep at least ${least}`,
      remedy: `make the slot ${deeper} deeper, or the groove that serves as one`,
      basis: COMMON_PRACTICE,
    });
  }
  return findings;
}

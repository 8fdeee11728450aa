import type { Captive } from '../../assembly/index.js';
import { type CaptiveMeasure, measureCaptive } from '../../solid/index.js';
import { CLEARANCE_SLACK, SIZED_TO_LIMIT } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

/** What of a panel stays in a groove when it is pushed all the way into the one across, mm. Common practice, no source. */
const LEAST_HELD = 2;

/** More air than this beside a panel lets it rattle, mm. Common practice, no source. */
const RATTLES = 1;

/** A panel held in grooves has room to move, stays in them when it shrinks, and goes between their walls. */
export const captives = (bench: Bench): readonly Finding[] =>
  (bench.solids.design.captives ?? []).flatMap((captive) => {
    const measured = measureCaptive(bench.solids, captive);
    return [
      ...slack(bench, captive, measured, 'across'),
      ...slack(bench, captive, measured, 'along'),
      ...held(bench, captive, measured),
      ...measured.flatMap((one) => between(bench, captive, one)),
    ];
  });

function slack(
  { say }: Bench,
  { panel, slack: across, endSlack }: Captive,
  measured: readonly CaptiveMeasure[],
  way: CaptiveMeasure['way'],
): Finding[] {
  const both = measured.filter((one) => one.way === way);
  if (both.length === 0) return [];
  const sides = ([1, -1] as const).map((side) => both.filter((one) => one.side === side));
  const least = (of: readonly CaptiveMeasure[]) =>
    of.length === 0 ? 0 : Math.min(...of.map(({ room }) => room));
  const room = least(sides[0]!) + least(sides[1]!);
  const limit = way === 'across' ? across : endSlack;
  if (room >= limit - SIZED_TO_LIMIT) return [];
  const [what, shorter] =
    way === 'across' ? ['across its grain', 'narrower'] : ['along its grain', 'shorter'];
  const short = limit - room;
  const [has, needs] = say.fines(room, limit);
  const deeper = sides.filter((side) => side.length > 0).length === 2 ? short / 2 : short;
  return [
    {
      code: way === 'across' ? 'panel-no-slack' : 'panel-no-end-slack',
      level: 'error',
      subjects: [panel, ...both.map(({ board }) => board)],
      measured: room,
      limit,
      unit: 'mm',
      message: `panel ${panel} has ${has} of room ${what} in its grooves; it needs at least ${needs}, or it ${way === 'across' ? 'bursts its frame when it swells' : 'keeps the joints from closing'}`,
      remedy: `make the panel ${say.fine(short)} ${shorter}, or ${deeper === short ? 'the groove' : 'each groove'} ${say.fine(deeper)} deeper`,
      basis: MEASURED,
    },
  ];
}

function held({ say }: Bench, { panel }: Captive, measured: readonly CaptiveMeasure[]): Finding[] {
  return measured.flatMap((one): Finding[] => {
    const facing = measured.filter(({ way, side }) => way === one.way && side !== one.side);
    if (facing.length === 0) return [];
    const left = one.engaged - Math.min(...facing.map(({ room }) => room));
    if (left >= LEAST_HELD - SIZED_TO_LIMIT) return [];
    const [keeps, least] = say.fines(left, LEAST_HELD);
    return [
      {
        code: 'panel-drops-out',
        level: 'error',
        subjects: [panel, one.board],
        measured: left,
        limit: LEAST_HELD,
        unit: 'mm',
        message: `pushed to the far side, panel ${panel} keeps ${keeps} in its groove in ${one.board}; it must keep at least ${least}`,
        remedy: `make the panel larger and the groove deeper, both by ${say.fine(LEAST_HELD - left)}`,
        basis: COMMON_PRACTICE,
      },
    ];
  });
}

function between({ say }: Bench, { panel, fit: asked }: Captive, { board, air }: CaptiveMeasure): Finding[] {
  const shared = { subjects: [panel, board], measured: air, unit: 'mm' as const, basis: MEASURED };
  if (air < asked - CLEARANCE_SLACK) {
    const [has, wanted] = say.fines(air, asked);
    return [
      {
        ...shared,
        code: 'panel-tight',
        level: 'error',
        limit: asked,
        message: `panel ${panel} has ${has} of clearance between the walls of its groove in ${board}; you asked for ${wanted}`,
        remedy: `make its tongue ${say.fine(asked - air)} thinner or the groove as much wider`,
      },
    ];
  }
  if (air <= RATTLES + SIZED_TO_LIMIT) return [];
  const [has, most] = say.fines(air, RATTLES);
  return [
    {
      ...shared,
      code: 'panel-loose',
      level: 'warning',
      limit: RATTLES,
      message: `panel ${panel} has ${has} of clearance between the walls of its groove in ${board}; above ${most} it rattles`,
      remedy: `make its tongue ${say.fine(air - asked)} thicker or the groove as much narrower`,
      basis: COMMON_PRACTICE,
    },
  ];
}

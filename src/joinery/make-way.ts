import type { Pocket } from '../board/index.js';
import type { Joinable } from './contact.js';
import type { GaveWay } from './joint.js';
import type { Laid, Mitre } from './layout.js';
import { cutBefore, type InBoard, isJoint, jointsOfBoards, type Meeting, meetingsOf } from './meetings.js';
import { mitred } from './mitre.js';
import { bestWay, relaid, type Way } from './ways.js';

/** Making way for one can bring a joint near another; where that goes on, the checks tell what is left. */
const ROUNDS = 8;

/** Joints that keep clear of each other, and what each gave up for it. */
export interface MadeWay {
  readonly laid: readonly Laid[];
  /** For each joint, in the same order. */
  readonly gaveWay: readonly (readonly GaveWay[])[];
}

/**
 * Lets joints that come too near each other in a board make way.
 *
 * Every pair decides on the same state, and all that was decided is done at once: the order the joints were asked for in
 * changes nothing. What no way clears is left as it is, for the checks to tell.
 */
export function makeWay(first: readonly Laid[], standing: ReadonlyMap<string, Joinable>): MadeWay {
  const joints = jointsOfBoards(first);
  const before = new Map(
    [...standing].map(([id, board]): [string, readonly Pocket[]] => [id, cutBefore(board)]),
  );
  const told = new Map<string, { readonly meeting: Meeting; readonly way: Way }>();
  let laid = first;
  for (let round = 0; round < ROUNDS; round += 1) {
    const met = meetingsOf(laid, joints, before);
    if (met.length === 0) break;
    const decided = decide(laid, met);
    const next = carriedOut(laid, decided);
    if (next === laid) break;
    laid = next;
    for (const one of decided) told.set(nameOf(laid, one.meeting), one);
  }
  return { laid, gaveWay: laid.map((_, index) => gaveWayOf(index, first, laid, [...told.values()])) };
}

interface Decided {
  readonly meeting: Meeting;
  readonly way: Way;
}

const nameOf = (laid: readonly Laid[], { board, one, other }: Meeting): string =>
  [board, laid[one.index]!.draft.id, isJoint(other) ? laid[other.index]!.draft.id : other.id].join('\n');

/** The way of every meeting; a mitre fixes the depths of its two, so what would change them waits for the next round. */
function decide(laid: readonly Laid[], met: readonly Meeting[]): readonly Decided[] {
  const mitres = new Map<string, number>();
  const key = ({ index, which }: InBoard) => `${index} ${which}`;
  const couldMitre = ({ one, other }: Meeting) =>
    isJoint(other) &&
    !laid[one.index]!.give.mitres[one.which] &&
    !laid[other.index]!.give.mitres[other.which] &&
    mitred(laid[one.index]!, one.which, laid[other.index]!, other.which) !== undefined;
  for (const meeting of met.filter(couldMitre)) {
    for (const joint of [meeting.one, meeting.other as InBoard]) {
      mitres.set(key(joint), (mitres.get(key(joint)) ?? 0) + 1);
    }
  }
  const alone = ({ one, other }: Meeting) =>
    isJoint(other) && mitres.get(key(one)) === 1 && mitres.get(key(other)) === 1;
  const decided = met.flatMap((meeting): Decided[] => {
    const way = bestWay(laid, meeting, couldMitre(meeting) && alone(meeting));
    return way ? [{ meeting, way }] : [];
  });
  const fixed = new Set(
    decided
      .filter(({ way }) => way.way === 'mitre')
      .flatMap(({ meeting }) => [key(meeting.one), key(meeting.other as InBoard)]),
  );
  const waits = ({ meeting, way }: Decided) =>
    (way.way === 'shorten' || way.way === 'butt') &&
    [meeting.one, meeting.other].some((joint) => 'index' in joint && fixed.has(key(joint)));
  return decided.filter((one) => !waits(one));
}

/** All that was decided, done at once; the same list when nothing could be done. */
function carriedOut(laid: readonly Laid[], decided: readonly Decided[]): readonly Laid[] {
  const next = [...laid];
  let changed = false;
  for (const { way } of decided) {
    for (const [index, give] of way.change) {
      const before = next[index]!;
      // two that push the same way need the farther push, not both
      const across =
        give.across === undefined
          ? undefined
          : pushed(before.give.across - laid[index]!.give.across, give.across);
      const after = relaid(before, across === undefined ? give : { ...give, across });
      if (!after) continue;
      next[index] = after;
      changed = true;
    }
  }
  return changed ? mitredAgain(next) : laid;
}

const pushed = (already: number, more: number): number =>
  already * more <= 0 ? more : Math.sign(more) * Math.max(0, Math.abs(more) - Math.abs(already));

/** A joint that moved takes its mitres with it. */
function mitredAgain(laid: readonly Laid[]): readonly Laid[] {
  const at = new Map(laid.map(({ draft }, index) => [draft.id, index]));
  return laid.map((one) => {
    const again = (which: 0 | 1): Mitre | undefined => {
      const mitre = one.give.mitres[which];
      if (!mitre) return undefined;
      const mate = laid[at.get(mitre.meets)!]!;
      const inMate = mate.give.mitres[0]?.meets === one.draft.id ? 0 : 1;
      return mitred(one, which, mate, inMate)?.[0] ?? mitre;
    };
    const mitres = [again(0), again(1)] as const;
    return mitres.some(Boolean) ? (relaid(one, { mitres }) ?? one) : one;
  });
}

function gaveWayOf(
  index: number,
  first: readonly Laid[],
  laid: readonly Laid[],
  told: readonly Decided[],
): readonly GaveWay[] {
  return told.flatMap(({ meeting: { board, one, other }, way }): GaveWay[] => {
    const joint = one.index === index ? one : other;
    if (!isJoint(joint) || joint.index !== index || !way.change.has(index)) return [];
    const mate = joint === one ? other : one;
    const sizes = (of: Laid) => ({ depth: of.depths[joint.which], length: of.row.length });
    return [
      {
        board,
        to: isJoint(mate) ? `joint ${laid[mate.index]!.draft.id}` : mate.id,
        way: way.way,
        before: sizes(first[index]!),
        after: sizes(laid[index]!),
      },
    ];
  });
}

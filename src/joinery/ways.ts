import { JoinError } from '../errors.js';
import { NOISE } from '../tolerances.js';
import { aside, roomBeside, sharedRoom, staggered } from './apart.js';
import { shortBy } from './joint.js';
import { type Give, type Laid, laidOut } from './layout.js';
import { type InBoard, isJoint, type Meeting, tooNear } from './meetings.js';
import { mitred } from './mitre.js';
import type { Meet } from './options.js';
import { pocketsIn, tenonsOf } from './parts.js';
import { PRACTICE } from './practice.js';
import { shorter } from './shorter.js';

/** A change of what joints give up, by the index of the joint. */
export type Change = ReadonlyMap<number, Partial<Give>>;

/** A way two joints can make way for each other, and what it leaves. */
export interface Way {
  readonly way: Meet | 'move';
  readonly change: Change;
  /** The least share any of them keeps of the cheeks of its tenons in the board. */
  readonly share: number;
  /** Whether its tenons still go in far enough. */
  readonly sound: boolean;
}

/** A simpler way is taken when it keeps this share, or comes this near to the best. Common practice, no source. */
const KEEPS_ENOUGH = 0.9;
const NEAR_BEST = 0.1;

/**
 * The best way out of a meeting: the simplest that costs little, else the one that keeps most of the tenons.
 *
 * Simple before costly: beside each other or along, both shorter, one shorter, staggered, mitred.
 *
 * @param mayMitre whether these two are the only ones that would be mitred there
 * @returns undefined when there is none
 * @throws JoinError when a way is asked for that cannot be had
 */
export function bestWay(laid: readonly Laid[], meeting: Meeting, mayMitre: boolean): Way | undefined {
  const asked = askedWays(laid, meeting);
  const asFor = ({ way, change }: Way) =>
    // where one says butt, it is the one that yields; where both say it, either
    [...asked].every(
      ([index, meet]) => way === meet && (meet !== 'butt' || asked.size > 1 || change.has(index)),
    );
  const ways = waysOut(laid, meeting, mayMitre).filter(asFor);
  if (ways.length === 0) {
    if (asked.size > 0) throw cannotBeHad(laid, meeting, [...asked][0]!);
    return undefined;
  }
  const sound = ways.filter((way) => way.sound);
  const among = sound.length > 0 ? sound : ways;
  const best = Math.max(...among.map(({ share }) => share));
  return among.find(({ share }) => share >= Math.min(best - NEAR_BEST, KEEPS_ENOUGH));
}

function askedWays(laid: readonly Laid[], { board, one, other }: Meeting): ReadonlyMap<number, Meet> {
  const joints = isJoint(other) ? [one, other] : [];
  const asked = new Map(
    joints.flatMap(({ index }) => {
      const meet = laid[index]!.draft.options.meet;
      return meet === undefined ? [] : [[index, meet] as const];
    }),
  );
  if (new Set(asked.values()).size > 1) {
    const said = [...asked].map(([index, meet]) => `${laid[index]!.draft.id} says ${meet}`).join(', ');
    throw new JoinError(
      'join-option',
      `joint ${laid[one.index]!.draft.id}: its tenons meet those of another joint in ${board}, and ${said}: give both joints the same meet, or leave one out`,
    );
  }
  return asked;
}

const cannotBeHad = (
  laid: readonly Laid[],
  { board, one, other }: Meeting,
  [index, meet]: readonly [number, Meet],
) => {
  const joint = laid[index]!.draft.id;
  const mate = isJoint(other) ? laid[other.index === index ? one.index : other.index]!.draft.id : other.id;
  return new JoinError(
    'no-room',
    `joint ${joint}: meet is ${meet}, but its tenons cannot make way for ${mate} in ${board} like that: leave out meet, or the depths, shifts or tenon width that prevent it`,
  );
};

/** Every way that clears the two of each other, the simple ones first. */
function waysOut(laid: readonly Laid[], meeting: Meeting, mayMitre: boolean): readonly Way[] {
  const { one, other } = meeting;
  const lone = !isJoint(other);
  const tried = (
    way: Way['way'],
    ...changes: (readonly [InBoard, Partial<Give> | undefined])[]
  ): readonly Way[] => {
    if (changes.some(([, give]) => give === undefined)) return [];
    const change = new Map(changes.map(([{ index }, give]) => [index, give!]));
    const judged = judge(laid, meeting, change);
    return judged ? [{ way, change, ...judged }] : [];
  };
  const ofOther = lone ? [other] : pocketsIn(laid[other.index]!, other.which);
  const ofOne = pocketsIn(laid[one.index]!, one.which);
  const movedOne = roomBeside(laid[one.index]!, ofOne, lone ? undefined : laid[other.index]!, ofOther);
  const [onlyOne, onlyOther] = [
    shorter(laid, meeting, [one]),
    lone ? undefined : shorter(laid, meeting, [other]),
  ];
  if (lone) {
    return [
      ...tried('move', [one, aside(laid[one.index]!, ofOne, ofOther, 1)]),
      ...tried('move', [one, movedOne]),
      ...tried('butt', [one, onlyOne?.[0]]),
    ];
  }
  const both = shorter(laid, meeting, [one, other]);
  const shared = sharedRoom(laid[one.index]!, ofOne, laid[other.index]!, ofOther);
  const turns = staggered(laid[one.index]!, laid[other.index]!);
  const mitres = mayMitre ? mitred(laid[one.index]!, one.which, laid[other.index]!, other.which) : undefined;
  return [
    ...tried(
      'move',
      [one, aside(laid[one.index]!, ofOne, ofOther, 2)],
      [other, aside(laid[other.index]!, ofOther, ofOne, 2)],
    ),
    ...tried('move', [one, shared?.[0]], [other, shared?.[1]]),
    ...tried('move', [one, movedOne]),
    ...tried('move', [other, roomBeside(laid[other.index]!, ofOther, laid[one.index]!, ofOne)]),
    ...tried('shorten', [one, both?.[0]], [other, both?.[1]]),
    ...tried('butt', [one, onlyOne?.[0]]),
    ...tried('butt', [other, onlyOther?.[0]]),
    ...tried('stagger', [one, turns?.[0]], [other, turns?.[1]]),
    ...tried(
      'mitre',
      [one, mitres && { mitres: atSide(one.which, mitres[0], laid[one.index]!.give.mitres) }],
      [other, mitres && { mitres: atSide(other.which, mitres[1], laid[other.index]!.give.mitres) }],
    ),
  ];
}

const atSide = <T>(which: 0 | 1, value: T, known: readonly [T | undefined, T | undefined]) =>
  (which === 0 ? [value, known[1]] : [known[0], value]) as readonly [T | undefined, T | undefined];

/** What a change leaves; undefined when the two still meet, or a joint no longer fits. */
function judge(
  laid: readonly Laid[],
  { one, other }: Meeting,
  change: Change,
): Pick<Way, 'share' | 'sound'> | undefined {
  const after = (joint: InBoard): Laid | undefined => {
    const give = change.get(joint.index);
    return give ? relaid(laid[joint.index]!, give) : laid[joint.index]!;
  };
  const first = after(one);
  if (!first) return undefined;
  const pairs: (readonly [InBoard, Laid])[] = [[one, first]];
  const isMitre = first.give.mitres[one.which] !== undefined;
  if (isJoint(other)) {
    const second = after(other);
    if (!second) return undefined;
    pairs.push([other, second]);
    const meet = tooNear(first, pocketsIn(first, one.which), second, pocketsIn(second, other.which));
    if (meet && !(isMitre && first.give.mitres[one.which]?.meets === second.draft.id)) return undefined;
  } else if (tooNear(first, pocketsIn(first, one.which), undefined, [other])) return undefined;
  const kept = pairs.map(([{ index, which }, now]) => {
    const [was, is] = [entryOf(laid[index]!, which), entryOf(now, which)];
    return {
      share: is.cheeks / was.cheeks,
      sound: is.into >= Math.min(PRACTICE.leastEntryThicknesses * now.draft.thickness, was.into) - NOISE,
    };
  });
  return {
    share: Math.min(...kept.map(({ share }) => share)),
    sound: kept.every(({ sound }) => sound),
  };
}

/** How far the tenons of a joint go into a board, on the average of both cheeks, and their cheeks there, mm and mm². */
function entryOf(laid: Laid, which: 0 | 1): { readonly into: number; readonly cheeks: number } {
  const tenons = tenonsOf(laid);
  const { thickness, width, intoA, intoB, mitreA, mitreB } = tenons[0]!;
  const into =
    which === 0 ? intoA - shortBy(tenons[0]!, mitreA) / 2 : intoB - shortBy(tenons[0]!, mitreB) / 2;
  return { into, cheeks: tenons.length * (width - thickness) * into };
}

/** A joint laid out again with more given up; undefined when it no longer fits. */
export function relaid(laid: Laid, more: Partial<Give>): Laid | undefined {
  try {
    return laidOut(laid.draft, merged(laid.give, more));
  } catch (error) {
    if (error instanceof JoinError && error.code === 'no-room') return undefined;
    throw error;
  }
}

/** Two things given up are both given up. */
export function merged(give: Give, more: Partial<Give>): Give {
  const least = (p: number | undefined, q: number | undefined) =>
    p === undefined ? q : q === undefined ? p : Math.min(p, q);
  return {
    most: [least(give.most[0], more.most?.[0]), least(give.most[1], more.most?.[1])],
    mitres: [more.mitres?.[0] ?? give.mitres[0], more.mitres?.[1] ?? give.mitres[1]],
    room: more.room
      ? { from: Math.max(give.room.from, more.room.from), to: Math.min(give.room.to, more.room.to) }
      : give.room,
    across: give.across + (more.across ?? 0),
    turn: more.turn ?? give.turn,
  };
}

import { type Pocket, pocketGap, pocketsNear, pocketsOf } from '../board/index.js';
import { angleDeg, dot, frameOut, subtract } from '../frame/index.js';
import { COPLANAR, PARALLEL_DEG, WALL_ROUNDING } from '../tolerances.js';
import type { Joinable } from './contact.js';
import type { Laid } from './layout.js';
import { pocketsIn } from './parts.js';
import { PRACTICE } from './practice.js';

/** A joint as it stands in one of its boards. */
export interface InBoard {
  /** Of the joint among those laid out. */
  readonly index: number;
  /** 0 when the board is its a, 1 for its b. */
  readonly which: 0 | 1;
}

/** Two joints, or a joint and an earlier cut, that leave too little wood between them in a board. */
export interface Meeting {
  readonly board: string;
  readonly one: InBoard;
  readonly other: InBoard | Pocket;
}

export const isJoint = (other: Meeting['other']): other is InBoard => 'index' in other;

/** The joints of each board, in the order of their names: the order they were asked for in must not matter. */
export function jointsOfBoards(laid: readonly Laid[]): ReadonlyMap<string, readonly InBoard[]> {
  const found = new Map<string, InBoard[]>();
  laid.forEach(({ draft }, index) => {
    draft.sides.forEach(({ board }, which) => {
      found.set(board.id, [...(found.get(board.id) ?? []), { index, which: which === 0 ? 0 : 1 }]);
    });
  });
  const name = ({ index }: InBoard): string => laid[index]!.draft.id;
  return new Map(
    [...found].map(([board, joints]) => [board, joints.toSorted((p, q) => (name(p) < name(q) ? -1 : 1))]),
  );
}

/** Air that was in a board before any of these joints, assembly frame. */
export const cutBefore = ({ board, place }: Joinable): readonly Pocket[] =>
  pocketsOf(board).map((pocket) => ({ ...pocket, at: frameOut(place, pocket.at) }));

/** Where too little wood is left; mitred tenons are meant to meet. */
export function meetingsOf(
  laid: readonly Laid[],
  joints: ReadonlyMap<string, readonly InBoard[]>,
  before: ReadonlyMap<string, readonly Pocket[]>,
): readonly Meeting[] {
  return [...joints].flatMap(([board, inBoard]) => {
    const pockets = inBoard.map(({ index, which }) => pocketsIn(laid[index]!, which));
    return inBoard.flatMap((one, i): Meeting[] => [
      ...inBoard.slice(i + 1).flatMap((other, k): Meeting[] => {
        if (areMitred(laid, one, other)) return [];
        return tooNear(laid[one.index]!, pockets[i]!, laid[other.index]!, pockets[i + 1 + k]!)
          ? [{ board, one, other }]
          : [];
      }),
      ...(before.get(board) ?? [])
        .filter((cut) => tooNear(laid[one.index]!, pockets[i]!, undefined, [cut]))
        .map((cut): Meeting => ({ board, one, other: cut })),
    ]);
  });
}

const areMitred = (laid: readonly Laid[], one: InBoard, other: InBoard): boolean =>
  laid[one.index]!.give.mitres[one.which]?.meets === laid[other.index]!.draft.id;

/** Whether any pocket of one joint comes nearer to one of another than the wood that is kept. */
export const tooNear = (
  one: Laid,
  ofOne: readonly Pocket[],
  other: Laid | undefined,
  ofOther: readonly Pocket[],
): boolean => ofOne.some((p) => ofOther.some((q) => lacks(one, p, other, q) > 0));

/** How much wood is missing between two pockets, mm; 0 when there is enough. */
export function lacks(one: Laid, p: Pocket, other: Laid | undefined, q: Pocket): number {
  const kept = keptBetween(one, p, other, q);
  if (!pocketsNear(p, q, kept)) return 0;
  const missing = kept - pocketGap(p, q);
  return missing > WALL_ROUNDING ? missing : 0;
}

/** The wood kept between two pockets: in one face as much as between two mortises of a row, else a wall. */
export function keptBetween(one: Laid, p: Pocket, other: Laid | undefined, q: Pocket): number {
  const sameFace =
    angleDeg(p.at.z, q.at.z) < PARALLEL_DEG &&
    Math.abs(dot(subtract(p.at.origin, q.at.origin), p.at.z)) < COPLANAR;
  if (!sameFace || !other) return PRACTICE.wall;
  // beside each other a wall is enough, end to end a web
  const between = subtract(q.at.origin, p.at.origin);
  const endToEnd = Math.abs(dot(between, p.at.x)) > (p.length + q.length) / 2 - WALL_ROUNDING;
  return endToEnd ? Math.max(one.draft.web, other.draft.web) : PRACTICE.wall;
}

import type { Board } from '../../board/index.js';
import type { Vec3 } from '../../frame/index.js';
import { COPLANAR } from '../../tolerances.js';
import { type Trait, traitsOf } from './board-traits.js';

/** Boards with one shape, and how that shape stands to its mirror image. */
export interface BoardKind {
  readonly boards: readonly Board[];
  /** True when the mirror image is another shape: left and right must be told apart. */
  readonly handed: boolean;
  /** Id of the first board of the mirrored shape, when the design has one. */
  readonly mirrorOf: string | undefined;
}

/**
 * Sorts boards by shape: equal ones together, a board and its mirror image never.
 *
 * Two boards are equal when the blank can be turned, grain along grain, so that everything cut into one falls on everything
 * cut into the other; mirror images when only a reflection does that. Names and joints do not count.
 */
export function boardKinds(boards: readonly Board[]): readonly BoardKind[] {
  const all = boards.map((board): Seen => ({ board, traits: traitsOf(board) }));
  const kinds: Seen[][] = [];
  for (const one of all) {
    const same = kinds.find(([first]) => fits(first!, one, 1));
    if (same) same.push(one);
    else kinds.push([one]);
  }
  return kinds.map((kind) => {
    const first = kind[0]!;
    const handed = !fits(first, first, -1);
    const firsts = kinds.map(([other]) => other!);
    const mirrored = handed ? firsts.find((other) => other !== first && fits(first, other, -1)) : undefined;
    return { boards: kind.map(({ board }) => board), handed, mirrorOf: mirrored?.board.id };
  });
}

interface Seen {
  readonly board: Board;
  readonly traits: readonly Trait[];
}

/** Whether a turn (1) or a reflection (−1) of the blank brings one board onto the other. */
function fits(one: Seen, other: Seen, sense: 1 | -1): boolean {
  if (one.board.material !== other.board.material || one.traits.length !== other.traits.length) return false;
  const from = sizesOf(one.board);
  const to = sizesOf(other.board);
  return motions(sense)
    .filter(({ swap }) => near(from, swap ? [to[0], to[2], to[1]] : to))
    .some((motion) => covers(one.traits, other.traits, motion));
}

const sizesOf = ({ blank: { length, width, thickness } }: Board): Vec3 => [length, width, thickness];

/** The blank turned or reflected so that it fills its own box; the grain stays along x. */
interface Motion {
  readonly swap: boolean;
  readonly signs: Vec3;
}

const motions = (sense: 1 | -1): readonly Motion[] =>
  [false, true].flatMap((swap) =>
    [1, -1].flatMap((x) =>
      [1, -1].flatMap((y) =>
        [1, -1].flatMap((z): Motion[] =>
          x * y * z * (swap ? -1 : 1) === sense ? [{ swap, signs: [x, y, z] }] : [],
        ),
      ),
    ),
  );

const moved = ({ swap, signs }: Motion, [x, y, z]: Vec3): Vec3 =>
  swap ? [signs[0] * x, signs[1] * z, signs[2] * y] : [signs[0] * x, signs[1] * y, signs[2] * z];

/** Each trait, moved, falls on one of the other board that no other trait has taken. */
function covers(traits: readonly Trait[], others: readonly Trait[], motion: Motion): boolean {
  const left = [...others];
  return traits.every((trait) => {
    const turned = {
      ...trait,
      points: trait.points.map((p) => moved(motion, p)),
      loose: trait.loose.map((p) => moved(motion, p)),
    };
    const at = left.findIndex((other) => alike(turned, other));
    if (at < 0) return false;
    left.splice(at, 1);
    return true;
  });
}

const alike = (a: Trait, b: Trait): boolean =>
  a.kind === b.kind &&
  a.loose.length === b.loose.length &&
  near(a.sizes, b.sizes) &&
  a.points.every((p, i) => near(p, b.points[i]!)) &&
  a.loose.every((p) => b.loose.some((q) => near(p, q)));

const near = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((part, i) => Math.abs(part - b[i]!) < COPLANAR);

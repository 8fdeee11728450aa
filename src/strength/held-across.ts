import type { Design, PlacedBoard } from '../assembly/index.js';
import { add, length, pointOut, scale, subtract, type Vec3 } from '../frame/index.js';
import type { Joint } from '../joinery/index.js';
import { movedBy, type Season, type Strain, strainOf } from '../movement/index.js';

/** A board that others hold across its grain. mm */
export interface HeldBoard {
  readonly held: PlacedBoard;
  /** What holds it. */
  readonly by: readonly PlacedBoard[];
  /** How much of its width is held: what moves against each other for 1 %, over what its wood moves across for 1 %. */
  readonly width: number;
  /** What moves against each other for 1 % of moisture. */
  readonly perPercent: number;
  /** Middle of the run, assembly frame. */
  readonly at: Vec3;
}

/**
 * Boards on the way from one joint to the next hold a board rigidly when both joints lie this near to those of the held board,
 * mm; longer legs bend instead. Our own.
 */
const STUBBY = 100;

/** Less held width than this is not told, mm: the width of one small tenon. */
const LEAST_TOLD = 25;

interface Stop {
  readonly at: Vec3;
  readonly joint: Joint;
}

interface Glued {
  readonly placed: PlacedBoard;
  readonly strain: Strain;
}

/** Every board with the longest run of it that glue holds against another's grain; boards that move alike hold nothing. */
export function heldAcross({ boards, joints }: Design, season: Season): readonly HeldBoard[] {
  const glued = new Map(
    boards.map((placed): [string, Glued] => [
      placed.board.id,
      { placed, strain: strainOf(placed.board.material, season.cut) },
    ]),
  );
  const stops = joints.map((joint) => ({ joint, at: joint.seat.origin }));
  const found = [...inPairs(joints, glued), ...inLoops(stops, glued)];
  const worst = new Map<string, HeldBoard>();
  for (const one of found) {
    const { id } = one.held.board;
    if (one.width >= LEAST_TOLD && one.width > (worst.get(id)?.width ?? 0)) worst.set(id, one);
  }
  return [...worst.values()];
}

/** Two boards that are glued to each other at places apart: the ends of the glue in all the tenons between them. */
function inPairs(joints: readonly Joint[], glued: ReadonlyMap<string, Glued>): readonly HeldBoard[] {
  const pairs = new Map<string, Joint[]>();
  for (const joint of joints) {
    const key = [joint.a, joint.b].toSorted().join('\n');
    pairs.set(key, [...(pairs.get(key) ?? []), joint]);
  }
  return [...pairs.values()].flatMap((between) => {
    const [a, b] = [glued.get(between[0]!.a)!, glued.get(between[0]!.b)!];
    const ends = between.flatMap(({ tenons }) =>
      tenons.flatMap(({ place, width, thickness }) =>
        [-1, 1].map((side) => pointOut(place, [(side * (width - thickness)) / 2, 0, 0])),
      ),
    );
    return ends.flatMap((from, i) =>
      ends.slice(i + 1).flatMap((to) => {
        const run = subtract(to, from);
        return mismatch(
          [
            { of: a, run },
            { of: b, run: scale(run, -1) },
          ],
          middle(from, to),
        );
      }),
    );
  });
}

/** A board at two others that are joined to each other, or to a third, close by. */
function inLoops(stops: readonly Stop[], glued: ReadonlyMap<string, Glued>): readonly HeldBoard[] {
  const joined = (id: string) => stops.filter(({ joint }) => joint.a === id || joint.b === id);
  const other = ({ joint }: Stop, id: string) => (joint.a === id ? joint.b : joint.a);
  return [...glued].flatMap(([id, of]) => {
    const own = joined(id);
    return own.flatMap((one, i) =>
      own.slice(i + 1).flatMap((two) => {
        const [p, q] = [other(one, id), other(two, id)];
        if (p === q) return [];
        const ways = joined(p).flatMap((out): (readonly [Stop, Stop, string | undefined])[] => {
          const next = other(out, p);
          if (next === id) return [];
          if (next === q) return [[out, out, undefined]];
          return joined(q)
            .filter((back) => other(back, q) === next)
            .map((back) => [out, back, next]);
        });
        return ways
          .filter(([out, back]) => near(one, out) && near(two, back))
          .flatMap(([out, back, third]) =>
            mismatch(
              [
                { of, run: subtract(two.at, one.at) },
                { of: glued.get(q)!, run: subtract(back.at, two.at) },
                ...(third === undefined ? [] : [{ of: glued.get(third)!, run: subtract(out.at, back.at) }]),
                { of: glued.get(p)!, run: subtract(one.at, out.at) },
              ],
              middle(one.at, two.at),
            ),
          );
      }),
    );
  });
}

const near = (a: Stop, b: Stop): boolean => length(subtract(a.at, b.at)) <= STUBBY;

const middle = (a: Vec3, b: Vec3): Vec3 => scale(add(a, b), 1 / 2);

/** What the runs of a closed way round move against each other; the board that moves most is held by the others. */
function mismatch(round: readonly { readonly of: Glued; readonly run: Vec3 }[], at: Vec3): HeldBoard[] {
  const moves = round.map(({ of, run }) => ({
    of,
    move: movedBy(of.strain, of.placed.place, run),
  }));
  const [most] = moves.toSorted((a, b) => length(b.move) - length(a.move));
  const open = length(moves.reduce<Vec3>((sum, { move }) => add(sum, move), [0, 0, 0]));
  const { strain, placed } = most!.of;
  if (strain.width === 0 || open < 1e-9) return [];
  return [
    {
      held: placed,
      by: moves.flatMap(({ of }) => (of.placed === placed ? [] : [of.placed])),
      width: open / strain.width,
      perPercent: open,
      at,
    },
  ];
}

import type { Bevel, Board } from '../../board/index.js';
import { dot, type Plane, subtract, unit, type Vec3 } from '../../frame/index.js';
import { type Corner, type Profile, polygon } from '../../profile/index.js';
import { SAME_POINT, SQUARE } from '../../tolerances.js';

/** An outline that is being shaped: corners, and which of its sides are bowed. */
export interface Cutting {
  readonly board: Board;
  readonly corners: readonly Corner[];
  readonly bows: readonly Bow[];
  readonly bevels: readonly Bevel[];
}

/** A side of the outline that is an arc. */
export interface Bow {
  readonly from: Corner;
  readonly to: Corner;
  readonly bulge: number;
}

export const cuttingOf = (board: Board): Cutting => ({
  board,
  corners: board.outline.map(({ x, y }) => ({ x, y })),
  bows: [],
  bevels: board.bevels,
});

/** The shaped board. @throws ProfileError when the outline crosses itself or a radius does not fit */
export function cutBoard({ board, corners, bows, bevels }: Cutting): Board {
  const straight = polygon(corners);
  const outline: Profile = straight.map((vertex, i) => {
    const next = straight[(i + 1) % straight.length]!;
    const bow = bows.find(({ from, to }) => near(from, vertex) && near(to, next));
    return bow ? { ...vertex, bulge: bow.bulge } : vertex;
  });
  return { ...board, outline, bevels };
}

const near = (a: Corner, b: Corner): boolean => Math.hypot(a.x - b.x, a.y - b.y) < SAME_POINT;

/**
 * Takes off what lies beyond a plane: in the outline when the plane is square to the faces, else as a bevel.
 *
 * @param plane board frame, its normal off the wood that stays
 */
export function cutOff(cutting: Cutting, { point, normal }: Plane, id: string): Cutting {
  const n = unit(normal);
  if (Math.abs(n[2]) > SQUARE)
    return { ...cutting, bevels: [...cutting.bevels, { id: freeId(cutting, id), point, normal: n }] };
  const over = ({ x, y }: Corner) => dot(n, subtract([x, y, 0], [point[0], point[1], 0]));
  const corners = cutting.corners.flatMap((corner, i): readonly Corner[] => {
    const next = cutting.corners[(i + 1) % cutting.corners.length]!;
    const [here, there] = [over(corner), over(next)];
    const kept = here <= SAME_POINT ? [corner] : [];
    if (!((here < -SAME_POINT && there > SAME_POINT) || (here > SAME_POINT && there < -SAME_POINT)))
      return kept;
    const share = here / (here - there);
    return [
      ...kept,
      { x: corner.x + (next.x - corner.x) * share, y: corner.y + (next.y - corner.y) * share },
    ];
  });
  return { ...cutting, corners };
}

function freeId({ bevels }: Cutting, id: string): string {
  const taken = (name: string) => bevels.some((bevel) => bevel.id === name);
  if (!taken(id)) return id;
  let number = 2;
  while (taken(`${id}-${number}`)) number += 1;
  return `${id}-${number}`;
}

/** A plane through two lines of the board that run along one of its axes. */
export function planeThrough(a: Vec3, b: Vec3, along: Vec3, away: Vec3): Plane {
  const run = subtract(b, a);
  const normal: Vec3 = [
    run[1] * along[2] - run[2] * along[1],
    run[2] * along[0] - run[0] * along[2],
    run[0] * along[1] - run[1] * along[0],
  ];
  const size = Math.sign(dot(normal, away));
  return { point: a, normal: unit([normal[0] * size, normal[1] * size, normal[2] * size]) };
}

/** The index of the straight run of the outline that looks most one way of the board, farthest out. */
export function runToward({ corners }: Cutting, axis: 0 | 1, sign: 1 | -1): number {
  let best = -1;
  let most = Number.NEGATIVE_INFINITY;
  corners.forEach((from, i) => {
    const to = corners[(i + 1) % corners.length]!;
    const run = Math.hypot(to.x - from.x, to.y - from.y);
    if (run < SAME_POINT) return;
    const out = axis === 0 ? (to.y - from.y) / run : (from.x - to.x) / run;
    if (out * sign < 0.7) return;
    const middle = axis === 0 ? (from.x + to.x) / 2 : (from.y + to.y) / 2;
    const far = middle * sign;
    if (far > most) {
      most = far;
      best = i;
    }
  });
  return best;
}

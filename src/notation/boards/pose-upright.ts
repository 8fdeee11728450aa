import { add, cross, eachAxis, scale, unit, type Vec3 } from '../../frame/index.js';
import { SAME_DIRECTION } from '../../tolerances.js';
import {
  ALL_AXES,
  type Axis,
  type AxisTold,
  arrises,
  type Fact,
  faceMet,
  type Pair,
  type Reach,
  runTo,
  type Settled,
  solveBox,
  vectorOf,
} from '../places/index.js';
import type { Pose } from './pose.js';
import type { CutSide, ToldBoard } from './told-board.js';

/** The three directions of the piece. */
export const SQUARE_WAYS: Pose['ways'] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * The directions of a level board that slopes: the named sides go down.
 *
 * @param slopes degrees towards right and back, below 0 towards left and front
 */
export function slopedWays([right, back]: readonly [number, number]): Pose['ways'] {
  const x = unit([1, 0, -Math.tan((right * Math.PI) / 180)]);
  const along: Vec3 = [0, 1, -Math.tan((back * Math.PI) / 180)];
  const z = unit(cross(x, along));
  return [x, cross(z, x), z];
}

/** How far a turned board reaches: without the directions whose ends are cut to something. */
export const reachOf = (ways: Pose['ways'], ends: readonly Axis[]): Reach =>
  eachAxis((axis) =>
    eachAxis((other) =>
      other === axis ? Math.abs(ways[axis][axis]) : ends.includes(other) ? 0 : Math.abs(ways[other][axis]),
    ),
  );

/**
 * A board whose place is told by its six sides: first where nothing is cut, then what it reaches between, then sides cut to a plane that
 * is not square to them.
 *
 * @throws Problem
 */
export function poseUpright(board: ToldBoard, ways: Pose['ways'] = SQUARE_WAYS): Pose {
  const { name, told, pairs, sizeKeys } = board;
  const later = new Set([...pairs.map(({ axis }) => axis), ...board.cuts.map(({ axis }) => axis)]);
  const reach = reachOf(ways, [...later]);
  const solved = new Map<Axis, Settled>();
  const solve = (axes: readonly Axis[], more: ReadonlyMap<Axis, readonly Fact[]>): void => {
    const asked = new Map(
      axes.map((axis): [Axis, AxisTold] => {
        const one = told.get(axis)!;
        return [axis, { ...one, facts: [...one.facts, ...(more.get(axis) ?? [])] }];
      }),
    );
    for (const [axis, found] of solveBox(name, asked, reach, sizeKeys)) solved.set(axis, found);
  };
  solve(
    ALL_AXES.filter((axis) => !later.has(axis)),
    new Map(),
  );
  const cuts: CutSide[] = [...board.cuts];
  const ends = new Map<Axis, readonly Fact[]>();
  for (const pair of pairs) {
    const from = eachAxis(
      (axis) => solved.get(axis)?.middle ?? gapMiddle(pairs, axis) ?? told.get(axis)!.like?.min ?? 0,
    );
    const { facts, cut } = endsOf(pair, from, ways[pair.axis]);
    ends.set(pair.axis, facts);
    cuts.push(...cut);
    if (cut.length === 0) solve([pair.axis], ends);
  }
  for (const axis of new Set(cuts.map((cut) => cut.axis))) {
    const [a, b] = ALL_AXES.filter((one) => one !== axis);
    const offsets = arrises(ways[a!], solved.get(a!)?.size ?? 0, ways[b!], solved.get(b!)?.size ?? 0);
    const middle = eachAxis((one) => (one === axis ? 0 : (solved.get(one)?.middle ?? 0)));
    const facts = cuts
      .filter((cut) => cut.axis === axis)
      .map(({ sign, plane }): Fact => {
        const runs = offsets.map((offset) => runTo(plane, add(middle, offset), ways[axis]));
        const far = sign < 0 ? Math.min(...runs) : Math.max(...runs);
        return { kind: sign < 0 ? 'low' : 'high', value: far * ways[axis][axis], key: 'between' };
      });
    solve([axis], new Map([[axis, [...facts, ...(ends.get(axis) ?? [])]]]));
  }
  return {
    ways,
    middle: eachAxis((axis) => solved.get(axis)!.middle),
    sizes: eachAxis((axis) => solved.get(axis)!.size),
    cuts,
  };
}

const gapMiddle = (pairs: readonly Pair[], axis: Axis): number | undefined => {
  const found = pairs.find((pair) => pair.axis === axis);
  return found && (found.low.at + found.high.at) / 2;
};

/**
 * What a board that reaches between two things ends at: figures where the faces it meets are square to its way, planes where not.
 *
 * @param from a point between both, mm
 */
export function endsOf(
  pair: Pair,
  from: Vec3,
  way: Vec3,
): { facts: readonly Fact[]; cut: readonly CutSide[] } {
  const { axis, into } = pair;
  const facts: Fact[] = [];
  const cut: CutSide[] = [];
  for (const sign of [-1, 1] as const) {
    const end = sign < 0 ? pair.low : pair.high;
    const kind = sign < 0 ? 'low' : 'high';
    const out = scale(way, sign);
    const met = end.thing && faceMet(end.thing.boards, from, out);
    if (!met) {
      facts.push({ kind, value: end.at + sign * into, key: 'between' });
      continue;
    }
    const square = Math.abs(met.normal[axis]) > 1 - SAME_DIRECTION;
    if (square && Math.abs(way[axis]) > 1 - SAME_DIRECTION)
      facts.push({ kind, value: met.point[axis] + sign * into, key: 'between' });
    else
      cut.push({
        axis,
        sign,
        plane: {
          point: add(met.point, scale(vectorOf({ axis, sign }), into)),
          normal: scale(met.normal, -1),
        },
      });
  }
  return { facts, cut };
}

import {
  add,
  cross,
  dot,
  eachAxis,
  leaning,
  levelAt,
  type Plane,
  scale,
  subtract,
  unit,
  type Vec3,
} from '../../frame/index.js';
import {
  ALL_AXES,
  type Axis,
  type AxisTold,
  arrises,
  type Fact,
  middleAt,
  runTo,
  SIDES,
  type Side,
  type Spot,
  type Surroundings,
  sideAt,
  solveBox,
} from '../places/index.js';
import { type Keys, keysOf, onlyKeys, phraseOf, phrasesOf, problemWith } from '../text/index.js';
import type { Pose } from './pose.js';
import type { CutSide, ToldBoard } from './told-board.js';

/**
 * A board that leans, its grain up: head and foot are cut to what they stand at, level where that is level.
 *
 * Its reference face meets a level plane in a line square to the way it looks.
 *
 * @param lean degrees by which its foot goes right and back; below 0 left and front
 * @throws Problem
 */
export function poseLeaning(
  board: ToldBoard,
  keys: Keys,
  around: Surroundings,
  lean: readonly [number, number],
): Pose {
  const { name, axes, told, sizeKeys } = board;
  if (axes.grain !== 2)
    throw problemWith(
      name,
      `board '${name.value}' leans, and its grain does not run up`,
      `write slopes: { front: 10° } for a level board`,
    );
  const { up, outPerRise } = leaning({ splayDeg: lean[0], rakeDeg: lean[1] });
  const square: Vec3 = axes.edge === 0 ? [1, 0, 0] : [0, 1, 0];
  const flat = unit(cross(up, square));
  const faceWay = flat[axes.face] < 0 ? scale(flat, -1) : flat;
  const across = unit(cross(up, faceWay));
  const edgeWay = across[axes.edge] < 0 ? scale(across, -1) : across;
  const ways = eachAxis((axis) => (axis === 2 ? up : axis === axes.face ? faceWay : edgeWay));
  const { head, foot } = endPlanes(board);
  // how far a level cut reaches for each size
  const level = (axis: Axis) => {
    const run = -ways[axis][2] / up[2];
    return add(ways[axis], scale(up, run));
  };
  const reach = eachAxis((axis) =>
    eachAxis((other) =>
      axis === 2 || other === 2 ? (axis === other ? 1 : 0) : Math.abs(level(other)[axis]),
    ),
  );
  const ends = endFacts(keys, around);
  const horizontal = ALL_AXES.filter((axis) => axis !== 2);
  const facts = new Map(
    horizontal.map((axis): [Axis, { told: AxisTold; atFoot: boolean }] => {
      const base = told.get(axis)!;
      const atFoot = ends.foot.get(axis) ?? [];
      const atHead = ends.head.get(axis) ?? [];
      const side = base.facts.find(({ kind }) => kind !== 'middle');
      if (side && Math.abs(lean[axis as 0 | 1]) > 1e-9)
        throw problemWith(
          name,
          `board '${name.value}' leans there, so '${side.key}' could be its head or its foot`,
          `write foot: { ${side.key}: … } or head: { ${side.key}: … }`,
        );
      return [
        axis,
        { told: { ...base, facts: [...base.facts, ...atHead, ...atFoot] }, atFoot: atFoot.length > 0 },
      ];
    }),
  );
  const solved = solveBox(name, new Map([...facts].map(([axis, one]) => [axis, one.told])), reach, sizeKeys);
  const sizes: [number, number, number] = [solved.get(0)!.size, solved.get(1)!.size, 1];
  const lowest = foot && 'at' in foot ? foot.at : undefined;
  const fromFoot = horizontal.some((axis) => facts.get(axis)!.atFoot);
  if (fromFoot && lowest === undefined)
    throw problemWith(
      name,
      `board '${name.value}' is told by its foot, and its foot is not level`,
      'tell its middle at the head',
    );
  // a point of its middle line, by the height its head or foot stands at
  const out = [outPerRise[0], outPerRise[1]];
  const headPlane = planeOf(head);
  const point = middlePoint(headPlane, out, solved, facts, lowest ?? 0);
  const offsets = arrises(ways[0], sizes[0], ways[1], sizes[1]);
  const planes: CutSide[] = [{ axis: 2, sign: 1, plane: headPlane }];
  let bottom: Plane;
  if (foot) bottom = { ...planeOf(foot), normal: scale(planeOf(foot).normal, -1) };
  else {
    const long = told.get(2)!.size;
    if (!long)
      throw problemWith(
        name,
        `nothing says where the foot of board '${name.value}' stands`,
        `write bottom: floor, or how long it is`,
      );
    bottom = { point: add(point, scale(up, -long.value)), normal: [0, 0, -1] };
  }
  planes.push({ axis: 2, sign: -1, plane: bottom });
  const high = Math.max(...offsets.map((offset) => runTo(headPlane, add(point, offset), up)));
  const low = Math.min(...offsets.map((offset) => runTo(bottom, add(point, offset), up)));
  sizes[2] = high - low;
  return { ways, middle: add(point, scale(up, (high + low) / 2)), sizes, cuts: planes };
}

const planeOf = (spot: Spot): Plane => {
  if ('at' in spot) return levelAt(spot.at);
  // its normal off the wood below it
  const { point, normal } = spot.plane;
  return { point, normal: normal[2] < 0 ? scale(normal, -1) : normal };
};

/** What head and foot stand at. */
function endPlanes(board: ToldBoard): { head: Spot; foot: Spot | undefined } {
  const { name, told, cuts, pairs } = board;
  const { facts, like } = told.get(2)!;
  const at = (kind: 'low' | 'high'): Spot | undefined => {
    const sign = kind === 'low' ? -1 : 1;
    const cut = cuts.find((one) => one.axis === 2 && one.sign === sign);
    if (cut) return { axis: 2, plane: cut.plane };
    const fact = facts.find((one) => one.kind === kind);
    if (fact) return { axis: 2, at: fact.value };
    const pair = pairs.find(({ axis }) => axis === 2);
    if (pair) return { axis: 2, at: kind === 'low' ? pair.low.at : pair.high.at };
    return like && { axis: 2, at: kind === 'low' ? like.min : like.max };
  };
  const head = at('high');
  if (!head)
    throw problemWith(
      name,
      `nothing says where the head of board '${name.value}' stands`,
      `write top: bottom of …`,
    );
  return { head, foot: at('low') };
}

type EndFacts = ReadonlyMap<Axis, readonly Fact[]>;

/** What is told of its head and its foot alone: `foot: { left: piece }`. */
function endFacts(keys: Keys, around: Surroundings): { head: EndFacts; foot: EndFacts } {
  const read = (key: 'head' | 'foot'): EndFacts => {
    const entry = keys.get(key);
    const found = new Map<Axis, Fact[]>();
    if (!entry) return found;
    const [told] = keysOf(entry, key, `${key}: { left: … }`);
    const known = ['left', 'right', 'front', 'back', 'middle'] as const;
    onlyKeys(told!, known, `'${key}'`);
    const put = (axis: Axis, fact: Fact) => found.set(axis, [...(found.get(axis) ?? []), fact]);
    for (const side of known) {
      const one = told!.get(side);
      if (!one) continue;
      const phrases = side === 'middle' ? phrasesOf(one, side) : [phraseOf(one, side)];
      for (const phrase of phrases) {
        const spots = side === 'middle' ? middleAt(phrase, around) : [sideAt(phrase, side as Side, around)];
        for (const spot of spots.filter(({ axis }) => axis !== 2)) {
          if (!('at' in spot))
            throw problemWith(phrase, 'that side leans', 'name a board that stands upright');
          const kind = side === 'middle' ? 'middle' : SIDES[side].sign < 0 ? 'low' : 'high';
          put(spot.axis, { kind, value: spot.at, key: `${key}: ${side}` });
        }
      }
    }
    return found;
  };
  return { head: read('head'), foot: read('foot') };
}

/** Where the middle line meets the plane of the head, mm. */
function middlePoint(
  head: Plane,
  out: readonly number[],
  solved: ReadonlyMap<Axis, { readonly middle: number }>,
  facts: ReadonlyMap<Axis, { readonly atFoot: boolean }>,
  lowest: number,
): Vec3 {
  // x and y as a + b·z, then z from the plane
  const line = ([0, 1] as const).map((axis) => {
    const { middle } = solved.get(axis)!;
    return facts.get(axis)!.atFoot
      ? { a: middle + out[axis]! * lowest, b: -out[axis]! }
      : { a: middle, b: 0 };
  });
  const { point, normal } = head;
  const base: Vec3 = [line[0]!.a, line[1]!.a, 0];
  const way: Vec3 = [line[0]!.b, line[1]!.b, 1];
  const z = dot(normal, subtract(point, base)) / dot(normal, way);
  return [base[0] + way[0] * z, base[1] + way[1] * z, z];
}

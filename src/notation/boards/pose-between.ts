import {
  add,
  cross,
  directionOut,
  dot,
  eachAxis,
  pointOut,
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
  type Pair,
  runTo,
  type Stood,
  solveBox,
  vectorOf,
} from '../places/index.js';
import type { Pose } from './pose.js';
import { endsOf, reachOf, SQUARE_WAYS } from './pose-upright.js';
import type { ToldBoard } from './told-board.js';

/** The pair that gives a board its ends, when both are single boards and one of them leans. */
export function leaningPair({ pairs, axes }: ToldBoard): Pair | undefined {
  const pair = pairs.find(({ axis }) => axis === axes.grain);
  if (!pair || pairs.length > 1) return undefined;
  const ends = [pair.low, pair.high].map(({ thing }) => thing?.boards ?? []);
  return ends.every((boards) => boards.length === 1) && ends.flat().some((board) => board.leans)
    ? pair
    : undefined;
}

interface Line {
  readonly point: Vec3;
  readonly way: Vec3;
}

/** The middle line of a board, its way up or along the piece. */
function middleLine({ placed: { board, place } }: Stood): Line {
  const { length, width, thickness } = board.blank;
  const way = directionOut(place, [1, 0, 0]);
  const most = way.reduce((best, part) => (Math.abs(part) > Math.abs(best) + 1e-9 ? part : best), 0);
  return {
    point: pointOut(place, [length / 2, width / 2, thickness / 2]),
    way: most < 0 ? scale(way, -1) : way,
  };
}

/**
 * A board from one leaning board to another: from middle line to middle line, its face in the plane of both lines, plumb, or level.
 *
 * @param plumb its face stands plumb instead
 * @throws Problem
 */
export function poseBetween(board: ToldBoard, pair: Pair, plumb: boolean): Pose {
  const { name, axes, told, sizeKeys } = board;
  const lines = [pair.low, pair.high].map(({ thing }) => middleLine(thing!.boards[0]!));
  const cross2 = ALL_AXES.filter((axis) => axis !== axes.grain);
  let ways: Pose['ways'] = SQUARE_WAYS;
  let middle: Vec3 = [0, 0, 0];
  let sizes = new Map<Axis, number>();
  let way: Vec3 = vectorOf({ axis: axes.grain, sign: 1 });
  // the second round knows which way it runs, and so how far it reaches
  for (let round = 0; round < 2; round += 1) {
    ways = waysOf(way, lines, board, plumb);
    const reach = reachOf(ways, [axes.grain]);
    const asked = new Map(cross2.map((axis): [Axis, AxisTold] => [axis, told.get(axis)!]));
    const placed = new Map<Axis, number>();
    const toldAxes = cross2.filter((axis) => isPlaced(told.get(axis)!));
    const solvedTold = solveBox(
      name,
      new Map([...asked].filter(([axis]) => toldAxes.includes(axis))),
      reach,
      sizeKeys,
    );
    for (const [axis, one] of solvedTold) placed.set(axis, one.middle);
    const ends = lines.map((line) => pointOn(line, placed));
    const fill = cross2.filter((axis) => !toldAxes.includes(axis));
    const filled = new Map(
      fill.map((axis): [Axis, AxisTold] => [
        axis,
        { ...told.get(axis)!, like: undefined, fill: (ends[0]![axis] + ends[1]![axis]) / 2 },
      ]),
    );
    const all = solveBox(name, new Map([...asked, ...filled]), reach, sizeKeys);
    sizes = new Map([...all].map(([axis, one]) => [axis, one.size]));
    middle = eachAxis((axis) =>
      axis === axes.grain ? (ends[0]![axis] + ends[1]![axis]) / 2 : all.get(axis)!.middle,
    );
    const run = subtract(ends[1]!, ends[0]!);
    way = unit(run);
  }
  const { facts, cut } = endsOf(pair, middle, ways[axes.grain]);
  const [a, b] = cross2;
  const offsets = arrises(ways[a!], sizes.get(a!)!, ways[b!], sizes.get(b!)!);
  const end = (sign: 1 | -1): number => {
    const plane = cut.find((one) => one.sign === sign)?.plane ?? {
      point: vectorOf({ axis: axes.grain, sign: 1 }).map(
        (part) => part * facts.find(({ kind }) => kind === (sign < 0 ? 'low' : 'high'))!.value,
      ) as unknown as Vec3,
      normal: vectorOf({ axis: axes.grain, sign }),
    };
    const runs = offsets.map((offset) => runTo(plane, add(middle, offset), ways[axes.grain]));
    return sign < 0 ? Math.min(...runs) : Math.max(...runs);
  };
  const [low, high] = [end(-1), end(1)];
  return {
    ways,
    middle: add(middle, scale(ways[axes.grain], (low + high) / 2)),
    sizes: eachAxis((axis) => (axis === axes.grain ? high - low : sizes.get(axis)!)),
    cuts: cut,
  };
}

/** Whether something else than the middle lines says where the board stands in a direction. */
const isPlaced = ({ facts, fill, like, size }: AxisTold): boolean =>
  facts.length > 0 || fill !== undefined || (like !== undefined && size === undefined);

/** The point of a line at what is told of the place, or its middle. */
function pointOn({ point, way }: Line, placed: ReadonlyMap<Axis, number>): Vec3 {
  const along = [...placed].find(([axis]) => Math.abs(way[axis]) > 0.5);
  const at = along ? add(point, scale(way, (along[1] - point[along[0]]) / way[along[0]])) : point;
  return eachAxis((axis) => placed.get(axis) ?? at[axis]);
}

function waysOf(way: Vec3, lines: readonly Line[], { axes }: ToldBoard, plumb: boolean): Pose['ways'] {
  const sense = dot(lines[0]!.way, lines[1]!.way) < 0 ? -1 : 1;
  const sum = add(lines[0]!.way, scale(lines[1]!.way, sense));
  const along = unit(subtract(sum, scale(way, dot(sum, way))));
  const square = cross(way, along);
  const told = vectorOf({ axis: axes.face, sign: 1 });
  const inPlane = !plumb && Math.abs(dot(square, told)) > Math.abs(dot(along, told));
  const level = subtract(told, scale(way, dot(told, way)));
  const out = inPlane ? square : level;
  const facing = unit(dot(out, told) < 0 ? scale(out, -1) : out);
  const edge = cross(way, facing);
  const edgeWay = edge[axes.edge] < 0 ? scale(edge, -1) : edge;
  return eachAxis((axis) => (axis === axes.grain ? way : axis === axes.face ? facing : edgeWay));
}

import { assemble, type Design, type JoinRequest, type PlacedBoard } from '../../src/assembly/index.js';
import { type Bevel, makeBoard } from '../../src/board/index.js';
import {
  add,
  cross,
  directionIn,
  frame,
  pointIn,
  scale,
  subtract,
  unit,
  type Vec3,
} from '../../src/frame/index.js';
import type { AxisOption, JoinOptions } from '../../src/joinery/index.js';

/** Four square legs that lean outwards in both elevations, rails between them, a top on them. mm, degrees. */
export interface SplayedBase {
  readonly rakeDeg: number;
  readonly splayDeg: number;
  readonly rails?: boolean;
  /** Axis of the joints between top and legs; no top when left out. */
  readonly topAxis?: AxisOption;
  /** How deep each tenon enters, and the fit. */
  readonly into: number;
  readonly cheek: number;
}

const HEIGHT = 300;
// thick enough that the tenons of two rails pass each other
const LEG = 64;
const HALF = 132;
const RAIL = { width: 60, thickness: 20, height: 180 };

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

export function splayedBase(of: SplayedBase): Design {
  const legs = [-1, 1].flatMap((sx) => [-1, 1].map((sy) => leg(of, sx, sy)));
  const fit: JoinOptions = {
    cutter: 8,
    cheekClearance: of.cheek,
    edgeClearance: 1,
    endGap: 1,
    endInset: 5,
    tenons: 1,
  };
  const deep = (...boards: string[]): JoinOptions => ({
    ...fit,
    depths: Object.fromEntries(boards.map((id) => [id, of.into + 1])),
  });
  const boards: PlacedBoard[] = legs.map(({ placed }) => placed);
  const joints: JoinRequest[] = [];
  for (const side of of.rails ? [-1, 1] : []) {
    for (const across of ['x', 'y'] as const) {
      const ends = legs.filter((one) => (across === 'x' ? one.sy : one.sx) === side);
      const id = `${across}-rail-${side < 0 ? 1 : 2}`;
      boards.push(rail(id, across, ends));
      for (const end of ends) joints.push({ a: id, b: end.id, options: deep(id, end.id) });
    }
  }
  if (of.topAxis !== undefined) {
    boards.push({
      board: makeBoard({ id: 'top', blank: { length: 400, width: 400, thickness: 40 } }),
      place: frame([-200, -200, HEIGHT], [0, 0, 1], [1, 0, 0]),
    });
    for (const one of legs) {
      joints.push({ a: 'top', b: one.id, options: { ...deep('top', one.id), axis: of.topAxis } });
    }
  }
  return assemble({ name: 'base', title: 'Base', cutter: 8, boards, joints });
}

type Leg = ReturnType<typeof leg>;

/** A leg with one pair of faces true to the y rails: their normals have no x. */
function leg(of: SplayedBase, sx: number, sy: number) {
  const id = `leg-${sx < 0 ? 1 : 2}${sy < 0 ? 1 : 2}`;
  const up = unit([-sx * tan(of.rakeDeg), -sy * tan(of.splayDeg), 1]);
  const normalY = unit([0, up[2], -up[1]]);
  const normalX = cross(normalY, up);
  const head: Vec3 = [sx * HALF, sy * HALF, HEIGHT];
  const long = HEIGHT / up[2] + 20;
  const corner = subtract(subtract(head, scale(up, HEIGHT / up[2])), scale(add(normalX, normalY), LEG / 2));
  const place = frame(corner, normalY, up);
  const top: Bevel = {
    id: 'head',
    point: pointIn(place, head),
    normal: directionIn(place, [0, 0, 1]),
  };
  const board = makeBoard({ id, blank: { length: long, width: LEG, thickness: LEG }, bevels: [top] });
  const at = (height: number): Vec3 => add(head, scale(up, (height - HEIGHT) / up[2]));
  return { id, sx, sy, up, normalX, normalY, at, placed: { board, place } };
}

/** A level rail cut at both ends to the faces of its legs. */
function rail(id: string, across: 'x' | 'y', ends: readonly Leg[]): PlacedBoard {
  const along: Vec3 = across === 'x' ? [1, 0, 0] : [0, 1, 0];
  const middle = scale(add(ends[0]!.at(RAIL.height), ends[1]!.at(RAIL.height)), 1 / 2);
  const through = cross(along, [0, 0, 1]);
  const long = 500;
  const corner = subtract(
    subtract(middle, scale(along, long / 2)),
    add(scale(through, RAIL.thickness / 2), [0, 0, RAIL.width / 2]),
  );
  const place = frame(corner, through, along);
  const bevels = ends.map((end, i): Bevel => {
    const outwards = across === 'x' ? scale(end.normalX, end.sx) : scale(end.normalY, end.sy);
    return {
      id: `end-${i + 1}`,
      point: pointIn(place, subtract(end.at(RAIL.height), scale(outwards, LEG / 2))),
      normal: directionIn(place, outwards),
    };
  });
  const blank = { length: long, width: RAIL.width, thickness: RAIL.thickness };
  return { board: makeBoard({ id, blank, bevels }), place };
}

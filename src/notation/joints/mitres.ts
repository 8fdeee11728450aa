import { cross, eachAxis, type Plane, scale, unit, type Vec3 } from '../../frame/index.js';
import { ALL_AXES, type Axis, type Stood, type Trim, vectorOf } from '../places/index.js';
import { type PairEntry, problemWith } from '../text/index.js';
import { allCalled } from './joints.js';

/** Ends to be mitred, by the name of the board. */
export type Mitres = ReadonlyMap<string, readonly Trim[]>;

/**
 * The ends of boards that are mitred into each other: one plane through the outer and the inner corner cuts both, whatever their widths.
 *
 * @throws Problem for boards that do not overlap at a corner
 */
export function mitresOf(entry: PairEntry, standing: readonly Stood[]): Mitres {
  const found = new Map<string, Trim[]>();
  const add = (board: Stood, trim: Trim) => found.set(board.name, [...(found.get(board.name) ?? []), trim]);
  let corners = 0;
  const others = allCalled(entry.b, standing);
  for (const a of allCalled(entry.a, standing)) {
    for (const b of others) {
      if (a === b || !overlap(a, b)) continue;
      if (a.leans || b.leans)
        throw problemWith(
          entry.a,
          'only boards that stand square to the piece are mitred',
          'leave mitred out, and cut the ends with between',
        );
      corners += 1;
      const plane = mitrePlane(a, b, entry);
      const [ofA, ofB] = [awayFrom(plane, a), awayFrom(plane, b)];
      add(a, { plane: ofA, id: `mitre-${found.get(a.name)?.length ? 2 : 1}` });
      add(b, { plane: ofB, id: `mitre-${found.get(b.name)?.length ? 2 : 1}` });
    }
  }
  if (corners === 0)
    throw problemWith(
      entry.a,
      `'${entry.a.value}' and '${entry.b.value}' do not share a corner to be mitred`,
      'let both reach to the outer corner, for one by like: piece',
    );
  return found;
}

const overlap = (a: Stood, b: Stood): boolean =>
  ALL_AXES.every(
    (axis) => Math.min(a.box.max[axis], b.box.max[axis]) - Math.max(a.box.min[axis], b.box.min[axis]) > 1e-6,
  );

/** Through the outer corner of where both boards overlap and the inner one. */
function mitrePlane(a: Stood, b: Stood, entry: PairEntry): Plane {
  const [p, q] = [a.axes.grain, b.axes.grain];
  if (p === q) throw problemWith(entry.a, 'boards in one line are not mitred', 'leave mitred out');
  const end = (board: Stood, other: Stood, axis: Axis): { outer: number; inner: number } => {
    const mid = (board.box.min[axis] + board.box.max[axis]) / 2;
    const at = (other.box.min[axis] + other.box.max[axis]) / 2;
    const sign = at > mid ? 1 : -1;
    const [low, high] = [
      Math.max(board.box.min[axis], other.box.min[axis]),
      Math.min(board.box.max[axis], other.box.max[axis]),
    ];
    return sign > 0 ? { outer: high, inner: low } : { outer: low, inner: high };
  };
  const [alongA, alongB] = [end(a, b, p), end(b, a, q)];
  const point = (x: number, y: number): Vec3 => eachAxis((axis) => (axis === p ? x : axis === q ? y : 0));
  const [outer, inner] = [point(alongA.outer, alongB.outer), point(alongA.inner, alongB.inner)];
  const third = ALL_AXES.find((axis) => axis !== p && axis !== q)!;
  const run: Vec3 = [outer[0] - inner[0], outer[1] - inner[1], outer[2] - inner[2]];
  return { point: outer, normal: unit(cross(run, vectorOf({ axis: third, sign: 1 }))) };
}

/** The plane with its normal off the wood of a board that stays. */
function awayFrom({ point, normal }: Plane, { box }: Stood): Plane {
  const middle = ALL_AXES.map((axis) => (box.min[axis] + box.max[axis]) / 2 - point[axis]);
  const side = middle[0]! * normal[0] + middle[1]! * normal[1] + middle[2]! * normal[2];
  return { point, normal: side > 0 ? scale(normal, -1) : normal };
}

import { add, type Frame, pointOut, scale, type Vec2, type Vec3 } from '../frame/index.js';
import { lineRound } from '../profile/index.js';
import { doubleMesh, type Solids } from '../solid/index.js';
import { massOf } from '../tables/index.js';
import { ON_FLOOR } from '../tolerances.js';

/** How a piece rests on the floor, empty; mm, kg, assembly frame. */
export interface Resting {
  /** Convex hull of all that touches the floor, counter-clockwise from above. */
  readonly feet: readonly Vec2[];
  readonly floor: number;
  readonly kg: number;
  /** Centre of mass. */
  readonly centre: Vec3;
}

/**
 * Feet, mass and centre of mass, each from the corners and facets of the finished boards and tenons; no boolean is asked for.
 * A tenon is taken to be of the wood of the first board it joins; bought hardware is left out.
 */
export function restingOf({ boards, tenons }: Solids): Resting {
  const pieces = [
    ...[...boards.values()].map(({ own, place, board }) => ({ own, place, material: board.material })),
    ...[...tenons.values()].map(({ own, tenon, joint }) => ({
      own,
      place: tenon.place,
      material: boards.get(joint.a)!.board.material,
    })),
  ].map((piece) => ({ ...piece, mesh: doubleMesh(piece.own) }));
  const floor = pieces.reduce(
    (least, { mesh, place }) => Math.min(least, lowest(mesh, place)),
    Number.POSITIVE_INFINITY,
  );
  const touching = pieces.flatMap(({ mesh, place }) => below(mesh, place, floor + ON_FLOOR));
  const weights = pieces.map(({ mesh, place, material }) => {
    const { volume, centre } = volumeAndCentre(mesh);
    return { kg: massOf(volume, material), at: pointOut(place, centre) };
  });
  return { feet: lineRound(touching), floor, ...weighed(weights) };
}

/** Mass of some weights together, kg, and their common centre. */
export function weighed(
  weights: readonly { readonly kg: number; readonly at: Vec3 }[],
): Pick<Resting, 'kg' | 'centre'> {
  const kg = weights.reduce((sum, one) => sum + one.kg, 0);
  const moment = weights.reduce<Vec3>((sum, one) => add(sum, scale(one.at, one.kg)), [0, 0, 0]);
  return { kg, centre: scale(moment, 1 / kg) };
}

type Mesh = ReturnType<typeof doubleMesh>;

/** Heights of all corners above the origin of the assembly. */
const heights = ({ corners }: Mesh, { origin, x, y, z }: Frame): Float64Array => {
  const found = new Float64Array(corners.length / 3);
  for (let i = 0; i < found.length; i += 1)
    found[i] = origin[2] + corners[3 * i]! * x[2] + corners[3 * i + 1]! * y[2] + corners[3 * i + 2]! * z[2];
  return found;
};

const lowest = (mesh: Mesh, place: Frame): number =>
  heights(mesh, place).reduce((least, height) => Math.min(least, height), Number.POSITIVE_INFINITY);

/** The corners that stand no higher, from above. */
function below(mesh: Mesh, place: Frame, height: number): readonly Vec2[] {
  const found: Vec2[] = [];
  heights(mesh, place).forEach((here, i) => {
    if (here >= height) return;
    const [a, b, c] = [mesh.corners[3 * i]!, mesh.corners[3 * i + 1]!, mesh.corners[3 * i + 2]!];
    const [x, y] = pointOut(place, [a, b, c]);
    found.push([x, y]);
  });
  return found;
}

/** Sums of the tetrahedra between the origin and each facet. */
function volumeAndCentre({ corners, triangles }: Mesh): {
  readonly volume: number;
  readonly centre: Vec3;
} {
  let six = 0;
  let [mx, my, mz] = [0, 0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ax, ay, az] = [corners[a]!, corners[a + 1]!, corners[a + 2]!];
    const [bx, by, bz] = [corners[b]!, corners[b + 1]!, corners[b + 2]!];
    const [cx, cy, cz] = [corners[c]!, corners[c + 1]!, corners[c + 2]!];
    const part = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    six += part;
    mx += part * (ax + bx + cx);
    my += part * (ay + by + cy);
    mz += part * (az + bz + cz);
  }
  return { volume: six / 6, centre: [mx / (4 * six), my / (4 * six), mz / (4 * six)] };
}

import { SolidError } from '../errors.js';
import { cross, dot, type Frame, length, subtract, type Vec3, WORLD } from '../frame/index.js';
import type { OutlineEdge } from '../profile/index.js';
import type { Body } from './kernel.js';

/**
 * Triangles in double precision: nine numbers each, three corners one after the other, counter-clockwise from outside; mm.
 */
export type Facets = Float64Array;

/** A body's triangles over shared corners, in double precision: corner i at `corners[3i]…`, mm. */
export interface DoubleMesh {
  readonly corners: Float64Array;
  readonly triangles: Uint32Array;
}

/** A body never changes: it is read once. */
const meshes = new WeakMap<Body, DoubleMesh>();

/**
 * The triangles of a body as the kernel has them, to the last bit: its own mesh is rounded to single precision, the corners it
 * hands out to be moved are not. Both come in one order.
 *
 * @throws SolidError when they do not: the kernel is then another than this was written for
 */
export function doubleMesh(body: Body): DoubleMesh {
  const known = meshes.get(body);
  if (known) return known;
  const { vertProperties, triVerts, numProp } = body.getMesh();
  let corners = new Float64Array(0);
  body
    .warpBatch((all) => {
      corners = new Float64Array(all);
    })
    .delete();
  let same = numProp === 3 && corners.length === vertProperties.length;
  for (let i = 0; same && i < corners.length; i += 1) same = Math.fround(corners[i]!) === vertProperties[i];
  if (!same) throw new SolidError('facets-order', 'the kernel hands out the corners of a body in two orders');
  const mesh = { corners, triangles: triVerts };
  meshes.set(body, mesh);
  return mesh;
}

/** The triangles of a body one by one. */
export function facetsOf(body: Body): Facets {
  const { corners, triangles } = doubleMesh(body);
  const facets = new Float64Array(3 * triangles.length);
  for (let i = 0; i < triangles.length; i += 1) {
    const corner = 3 * triangles[i]!;
    for (let j = 0; j < 3; j += 1) facets[3 * i + j] = corners[corner + j]!;
  }
  return facets;
}

/** Facets written in the frame `place` stands in, instead of in `place`. */
export function facetsOut(facets: Facets, { origin, x, y, z }: Frame): Facets {
  const out = new Float64Array(facets.length);
  for (let i = 0; i < facets.length; i += 3) {
    const [a, b, c] = [facets[i]!, facets[i + 1]!, facets[i + 2]!];
    for (let j = 0; j < 3; j += 1) out[i + j] = origin[j]! + a * x[j]! + b * y[j]! + c * z[j]!;
  }
  return out;
}

/** Facets as seen from `place`. */
export function facetsIn(facets: Facets, { origin: o, x, y, z }: Frame): Facets {
  const seen = new Float64Array(facets.length);
  for (let i = 0; i < facets.length; i += 3) {
    const [a, b, c] = [facets[i]! - o[0], facets[i + 1]! - o[1], facets[i + 2]! - o[2]];
    seen[i] = a * x[0] + b * x[1] + c * x[2];
    seen[i + 1] = a * y[0] + b * y[1] + c * y[2];
    seen[i + 2] = a * z[0] + b * z[1] + c * z[2];
  }
  return seen;
}

/** Facets with their order of corners reversed: normals point the other way. */
export function turnedRound(facets: Facets): Facets {
  const turned = facets.slice();
  for (let i = 0; i < facets.length; i += 9) {
    for (let k = 3; k < 6; k += 1) {
      turned[i + k] = facets[i + k + 3]!;
      turned[i + k + 3] = facets[i + k]!;
    }
  }
  return turned;
}

/** The box round facets along the axes of a frame, mm. */
export function facetsBox(facets: Facets, frame: Frame = WORLD): { readonly min: Vec3; readonly max: Vec3 } {
  const seen = frame === WORLD ? facets : facetsIn(facets, frame);
  const min: [number, number, number] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
  ];
  const max: [number, number, number] = [
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (let i = 0; i < seen.length; i += 3) {
    for (let j: 0 | 1 | 2 = 0; j < 3; j += 1) {
      const at = seen[i + j]!;
      if (at < min[j]!) min[j] = at;
      if (at > max[j]!) max[j] = at;
    }
  }
  return { min, max };
}

/**
 * Volume between facets and a point, mm³: that of the body when they close it, or when all that is missing lies in planes
 * through the point.
 */
export function facetsVolume(facets: Facets, [x, y, z]: Vec3 = [0, 0, 0]): number {
  let six = 0;
  for (let i = 0; i < facets.length; i += 9) {
    const ax = facets[i]! - x;
    const ay = facets[i + 1]! - y;
    const az = facets[i + 2]! - z;
    const bx = facets[i + 3]! - x;
    const by = facets[i + 4]! - y;
    const bz = facets[i + 5]! - z;
    const cx = facets[i + 6]! - x;
    const cy = facets[i + 7]! - y;
    const cz = facets[i + 8]! - z;
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/**
 * Does a point lie within facets? By the whole angle under which it sees them: all round from inside, nothing from outside.
 *
 * @param apex a point of the plane the facets are open at; each facet is closed to it, and only what lies in that plane is left
 */
export function facetsHold(facets: Facets, apex: Vec3, point: Vec3): boolean {
  const o = subtract(apex, point);
  let seen = 0;
  for (let i = 0; i < facets.length; i += 9) {
    const corner = (k: number): Vec3 => [
      facets[i + k]! - point[0],
      facets[i + k + 1]! - point[1],
      facets[i + k + 2]! - point[2],
    ];
    const [a, b, c] = [corner(0), corner(3), corner(6)];
    seen += solidAngle(a, b, c) + solidAngle(o, b, a) + solidAngle(o, c, b) + solidAngle(o, a, c);
  }
  return seen > 2 * Math.PI;
}

/** Of a triangle seen from the origin, signed (A. van Oosterom and J. Strackee, 1983). */
function solidAngle(a: Vec3, b: Vec3, c: Vec3): number {
  const [la, lb, lc] = [length(a), length(b), length(c)];
  const whole = la * lb * lc + dot(a, b) * lc + dot(b, c) * la + dot(c, a) * lb;
  return 2 * Math.atan2(dot(a, cross(b, c)), whole);
}

/** The outline in which facets cross the plane z = height: directed edges x0, y0, x1, y1, in no order; wood to their left. */
export function facetsSection(facets: Facets, height: number): readonly OutlineEdge[] {
  const edges: OutlineEdge[] = [];
  for (let i = 0; i < facets.length; i += 9) {
    let [enters, leaves] = [-1, -1];
    for (let k = 0; k < 3; k += 1) {
      const here = facets[i + 3 * k + 2]! >= height;
      const there = facets[i + 3 * ((k + 1) % 3) + 2]! >= height;
      if (here && !there) leaves = k;
      if (!here && there) enters = k;
    }
    if (enters < 0 || leaves < 0) continue;
    const on = (k: number): [number, number] => {
      const [a, b] = [i + 3 * k, i + 3 * ((k + 1) % 3)];
      const share = (height - facets[a + 2]!) / (facets[b + 2]! - facets[a + 2]!);
      return [
        facets[a]! + share * (facets[b]! - facets[a]!),
        facets[a + 1]! + share * (facets[b + 1]! - facets[a + 1]!),
      ];
    };
    edges.push([...on(leaves), ...on(enters)]);
  }
  return edges;
}

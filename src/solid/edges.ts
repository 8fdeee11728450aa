import { settledLength, spanOf } from '../frame/index.js';
import type { Body } from './kernel.js';
import { triangleRuns } from './triangle-runs.js';

/**
 * A body as drawings need it: flat facets, and the edges at which two of them meet at an angle.
 *
 * Corner i is at `positions[3i]…`, mm, single precision: for looking, never for measuring. Triangle j joins `triangles[3j]…`,
 * counter-clockwise from outside, and lies in the plane n·p = k with n = `normals[3j]…`, k = `offsets[j]`. Edge e joins the corners
 * `edges[4e], edges[4e + 1]` between the triangles `edges[4e + 2], edges[4e + 3]`.
 */
export interface FeatureEdges {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly normals: Float64Array;
  readonly offsets: Float64Array;
  readonly edges: Uint32Array;
  /** 1 for an edge that is always drawn, 0 for one between facets of a curved surface, drawn as a silhouette only. */
  readonly sharp: Uint8Array;
}

/** Facets of one curved surface meet at less than this: even an arc of 0.4 mm radius has as many facets as that. */
const CREASE_COS = Math.cos((20 * Math.PI) / 180);

/** Two faces count as one when their normals agree this well: cos of 0.1°. */
const FLAT_COS = Math.cos((0.1 * Math.PI) / 180);

/**
 * The feature edges of a body.
 */
export function featureEdges(body: Body): FeatureEdges {
  const found = known.get(body) ?? edgesOf(body);
  known.set(body, found);
  return found;
}

/** A body never changes. */
const known = new WeakMap<Body, FeatureEdges>();

function edgesOf(body: Body): FeatureEdges {
  const mesh = body.getMesh();
  const stride = mesh.numProp;
  const corners = mesh.vertProperties.length / stride;
  const positions = new Float64Array(corners * 3);
  for (let i = 0; i < corners; i += 1) {
    for (let j = 0; j < 3; j += 1) positions[3 * i + j] = settledLength(mesh.vertProperties[i * stride + j]!);
  }
  const merged = new Uint32Array(corners).map((_, i) => i);
  mesh.mergeFromVert?.forEach((from, i) => {
    merged[from] = mesh.mergeToVert![i]!;
  });
  const runs = triangleRuns(mesh);
  const { faces } = runs;
  const triangles = runs.triangles.map((corner) => merged[corner]!);
  const { normals, offsets } = planes(positions, triangles, faces);
  return { positions, triangles, normals, offsets, ...creases(corners, triangles, faces, normals) };
}

/** Each triangle takes the plane of its whole face, the mean by area: a sliver alone has no normal to be trusted. */
function planes(
  positions: Float64Array,
  triangles: Uint32Array,
  faces: Uint32Array,
): Pick<FeatureEdges, 'normals' | 'offsets'> {
  const { sums, middles } = faceSums(positions, triangles, faces);
  const normals = new Float64Array(triangles.length);
  const offsets = new Float64Array(faces.length);
  faces.forEach((face, t) => {
    const [x, y, z] = [sums[3 * face]!, sums[3 * face + 1]!, sums[3 * face + 2]!];
    const size = spanOf(x, y, z) || 1;
    normals.set([x / size, y / size, z / size], 3 * t);
    offsets[t] =
      (x * middles[4 * face]! + y * middles[4 * face + 1]! + z * middles[4 * face + 2]!) /
      (size * (middles[4 * face + 3]! || 1));
  });
  return { normals, offsets };
}

/** Sums of area vectors, and of middles weighted by area, over each face. */
function faceSums(positions: Float64Array, triangles: Uint32Array, faces: Uint32Array) {
  const sums = new Float64Array(3 * faces.length);
  const middles = new Float64Array(4 * faces.length);
  faces.forEach((face, t) => {
    const [a, b, c] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
    const at = (i: number, j: number) => positions[i + j]!;
    const cross = (j: number, k: number) =>
      (at(b, j) - at(a, j)) * (at(c, k) - at(a, k)) - (at(b, k) - at(a, k)) * (at(c, j) - at(a, j));
    const area = [cross(1, 2), cross(2, 0), cross(0, 1)] as const;
    const size = spanOf(...area);
    for (let j = 0; j < 3; j += 1) {
      sums[3 * face + j]! += area[j]!;
      middles[4 * face + j]! += (size * (at(a, j) + at(b, j) + at(c, j))) / 3;
    }
    middles[4 * face + 3]! += size;
  });
  return { sums, middles };
}

function creases(
  corners: number,
  triangles: Uint32Array,
  faces: Uint32Array,
  normals: Float64Array,
): Pick<FeatureEdges, 'edges' | 'sharp'> {
  const open = new Map<number, number>();
  const edges: number[] = [];
  const sharp: number[] = [];
  for (let i = 0; i < triangles.length; i += 1) {
    const t = Math.floor(i / 3);
    const from = triangles[i]!;
    const to = triangles[i % 3 === 2 ? i - 2 : i + 1]!;
    const other = open.get(to * corners + from);
    if (other === undefined) {
      open.set(from * corners + to, t);
      continue;
    }
    open.delete(to * corners + from);
    if (faces[other] === faces[t]) continue;
    const cos =
      normals[3 * t]! * normals[3 * other]! +
      normals[3 * t + 1]! * normals[3 * other + 1]! +
      normals[3 * t + 2]! * normals[3 * other + 2]!;
    if (cos > FLAT_COS) continue;
    edges.push(from, to, t, other);
    sharp.push(cos < CREASE_COS ? 1 : 0);
  }
  return { edges: new Uint32Array(edges), sharp: new Uint8Array(sharp) };
}

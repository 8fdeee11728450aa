import {
  add,
  type Frame,
  frameIn,
  settledLength,
  subtract,
  type Vec2,
  type Vec3,
  WORLD,
} from '../frame/index.js';
import type { Region } from '../profile/index.js';
import { type Body, type Kernel, matrix } from './kernel.js';
import { leavingNoVectors } from './left-vectors.js';
import type { Mesh } from './mesh.js';
import { triangleRuns } from './triangle-runs.js';

/** A box along the axes of some frame, mm. */
export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Volume, mm³; positive for a body that is not inside out. */
export const volume = (body: Body): number => body.volume();

/** Number of handles: 0 for a solid without through holes. */
export const genus = (body: Body): number => body.genus();

/** What the kernel says of a body: `NoError` when it is sound. */
export const status = (body: Body): string => body.status();

/** The box round a body, assembly frame or whatever frame the body is in. */
export function box(body: Body): Box {
  const known = boxes.get(body);
  if (known) return known;
  const { min, max } = body.boundingBox();
  const found: Box = { min: [min[0], min[1], min[2]], max: [max[0], max[1], max[2]] };
  boxes.set(body, found);
  return found;
}

/** A body never changes: the kernel is asked once. */
const boxes = new WeakMap<Body, Box>();

/** The box round a body along the axes of a frame the body is seen from. */
export function boxIn(body: Body, frame: Frame): Box {
  const seen = body.transform(matrix(frameIn(frame, WORLD)));
  const found = box(seen);
  seen.delete();
  return found;
}

/** A box with so much more on every side. */
export const grown = ({ min, max }: Box, by: number): Box => ({
  min: subtract(min, [by, by, by]),
  max: add(max, [by, by, by]),
});

/** What of a body lies in a box. The caller owns it. */
export function withinBox(kernel: Kernel, body: Body, { min, max }: Box): Body {
  const cube = kernel.wasm.Manifold.cube([...subtract(max, min)]);
  const room = cube.translate([...min]);
  const inside = body.intersect(room);
  cube.delete();
  room.delete();
  return inside;
}

/** The wood two bodies share, mm³; 0 for an exact contact but for rounding noise. */
export function sharedVolume(a: Body, b: Body): number {
  const shared = a.intersect(b);
  const size = shared.volume();
  shared.delete();
  return size;
}

/** What two bodies share: its volume, mm³, and its mean thickness as a film between two faces, mm; 0 when they are apart. */
export function shared(a: Body, b: Body): { readonly volume: number; readonly thickness: number } {
  const common = a.intersect(b);
  const [volume, surface] = [common.volume(), common.surfaceArea()];
  common.delete();
  return { volume, thickness: surface === 0 ? 0 : (2 * volume) / surface };
}

/** The box round what two bodies share. */
export function sharedBox(a: Body, b: Body): Box {
  const shared = a.intersect(b);
  const found = box(shared);
  shared.delete();
  return found;
}

/** A look no farther than this is quick, mm. */
const SHORT_LOOK = 0.5;

/**
 * The least distance between two bodies, mm; `reach` when they are farther apart than that; 0 when they touch or overlap.
 *
 * The kernel compares every two facets within the reach, so it looks near first and four times as far at each further look.
 */
export function gap(a: Body, b: Body, reach: number): number {
  const apart = boxGap(box(a), box(b));
  if (apart >= reach) return reach;
  for (let near = Math.max(SHORT_LOOK, reach / 8, apart * 1.01); near < reach; near *= 4) {
    const found = a.minGap(b, near);
    if (found < near) return found;
  }
  return a.minGap(b, reach);
}

/** The least distance between two boxes, mm; no two things in them are nearer. */
export const boxGap = (a: Box, b: Box): number =>
  Math.hypot(...a.min.map((least, i) => Math.max(0, least - b.max[i]!, b.min[i]! - a.max[i]!)));

/** The first surface met on a straight way, as the distance from its start, mm; undefined when there is none. */
export function hit(body: Body, from: Vec3, to: Vec3): number | undefined {
  const hits = body.rayCast([...from], [...to]);
  const whole = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  return hits.length === 0 ? undefined : Math.min(...hits.map((one) => one.distance)) * whole;
}

/** The section of a body by the XY plane of a frame, as loops in that frame. */
export function section(body: Body, frame: Frame): Region {
  const seen = body.transform(matrix(frameIn(frame, WORLD)));
  const cut = seen.slice(0);
  const loops = leavingNoVectors(() => cut.toPolygons()).map((loop) => loop.map(([x, y]): Vec2 => [x, y]));
  cut.delete();
  seen.delete();
  return loops;
}

/** A body moved by a vector. The kernel owns it. */
export const shifted = (kernel: Kernel, body: Body, by: Vec3): Body => kernel.keep(body.translate([...by]));

/**
 * The triangles of a body, counter-clockwise from outside. Single precision: for writing, never for measuring. What is nothing but
 * for noise is written as nothing.
 */
export function meshOf(body: Body): Mesh {
  const mesh = body.getMesh();
  const { vertProperties, numProp } = mesh;
  const positions = new Float32Array((vertProperties.length / numProp) * 3);
  for (let i = 0; i < positions.length; i += 1)
    positions[i] = settledLength(vertProperties[Math.floor(i / 3) * numProp + (i % 3)]!);
  return { positions, triangles: triangleRuns(mesh).triangles };
}

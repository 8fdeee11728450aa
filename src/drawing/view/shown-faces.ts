import { type Frame, pointIn, spanOf, unit, type Vec2, type Vec3 } from '../../frame/index.js';
import { boundsOf, loopArea, type Region } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import type { Box } from '../sheet/index.js';
import type { SeenPart } from './seen-part.js';

/** A face turned toward the viewer, or a band of a curved surface that one tone covers, in view coordinates. */
export interface ShownFace {
  readonly part: SeenPart;
  readonly normal: Vec3;
  /** Its outline as seen, nothing hidden yet. */
  readonly loops: Region;
  /** Numbers of its triangles in the part. */
  readonly members: readonly number[];
  readonly box: Box;
  /** How near it is: z = depth[0]·x + depth[1]·y + depth[2]. */
  readonly depth: Vec3;
  /** How far it may lie off that plane, mm; what touches must not hide each other. */
  readonly bulge: number;
}

/** Faces turned less than this toward the viewer are seen as lines. */
const TURNED = 0.002;

const [FLAT, CURVED] = [0.05, 0.4];

/**
 * The faces of a part that are turned toward the viewer.
 *
 * @param corners of the part, in view coordinates
 * @param stepOf brightness of a normal in view coordinates, a whole number: neighbouring facets of a curved surface with the same one
 * are one face
 */
export function shownFaces(
  part: SeenPart,
  corners: Float64Array,
  view: Frame,
  stepOf: (normal: Vec3) => number,
): readonly ShownFace[] {
  const { solid } = part;
  const origin = pointIn(view, [0, 0, 0]);
  const turned = (t: number): Vec3 => {
    const n: Vec3 = [solid.normals[3 * t]!, solid.normals[3 * t + 1]!, solid.normals[3 * t + 2]!];
    const tip = pointIn(view, n);
    return [tip[0] - origin[0], tip[1] - origin[1], tip[2] - origin[2]];
  };
  // triangles of one flat face share its plane to the last digit
  const byOffset = new Map<number, number[]>();
  const owner = new Int32Array(solid.offsets.length).fill(-1);
  const planes: { normal: Vec3; step: number; first: number }[] = [];
  for (let t = 0; t < owner.length; t += 1) {
    const there = byOffset.get(solid.offsets[t]!) ?? [];
    const known = there.find((plane) => alike(solid.normals, planes[plane]!.first, t));
    if (known !== undefined) {
      owner[t] = known;
      continue;
    }
    const normal = turned(t);
    if (normal[2] <= TURNED) continue;
    owner[t] = planes.length;
    byOffset.set(solid.offsets[t]!, [...there, planes.length]);
    planes.push({ normal, step: stepOf(normal), first: t });
  }
  const joined = planes.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (joined[at] !== at) at = joined[at]!;
    joined[i] = at;
    return at;
  };
  for (let e = 0; e < solid.sharp.length; e += 1) {
    const [one, other] = [owner[solid.edges[4 * e + 2]!]!, owner[solid.edges[4 * e + 3]!]!];
    if (solid.sharp[e] === 1 || one < 0 || other < 0 || planes[one]!.step !== planes[other]!.step) continue;
    joined[root(one)] = root(other);
  }
  const members = new Map<number, number[]>();
  const facets = new Map<number, Set<number>>();
  owner.forEach((plane, t) => {
    if (plane < 0) return;
    const face = root(plane);
    const own = members.get(face);
    if (own) own.push(t);
    else members.set(face, [t]);
    facets.set(face, (facets.get(face) ?? new Set()).add(plane));
  });
  return [...members].flatMap(([face, triangles]) => {
    const flat = facets.get(face)!.size === 1;
    const shown = faceOf(part, triangles, corners, planes[face]!.normal, flat);
    return shown.loops.length === 0 ? [] : [shown];
  });
}

/** Whether two triangles have the same normal. */
const alike = (normals: Float64Array, t: number, s: number): boolean =>
  normals[3 * t] === normals[3 * s] &&
  normals[3 * t + 1] === normals[3 * s + 1] &&
  normals[3 * t + 2] === normals[3 * s + 2];

function faceOf(
  part: SeenPart,
  members: readonly number[],
  corners: Float64Array,
  own: Vec3,
  flat: boolean,
): ShownFace {
  const { triangles } = part.solid;
  const sum: [number, number, number] = [0, 0, 0];
  const middle: [number, number, number] = [0, 0, 0];
  let weight = 0;
  for (const t of members) {
    const [i, j, k] = [0, 1, 2].map((n) => 3 * triangles[3 * t + n]!) as [number, number, number];
    const leg = (to: number, axis: number) => corners[to + axis]! - corners[i + axis]!;
    const cross: Vec3 = [
      leg(j, 1) * leg(k, 2) - leg(j, 2) * leg(k, 1),
      leg(j, 2) * leg(k, 0) - leg(j, 0) * leg(k, 2),
      leg(j, 0) * leg(k, 1) - leg(j, 1) * leg(k, 0),
    ];
    const size = spanOf(...cross);
    weight += size;
    for (const axis of [0, 1, 2] as const) {
      sum[axis] += cross[axis];
      middle[axis] += (size * (corners[i + axis]! + corners[j + axis]! + corners[k + axis]!)) / 3;
    }
  }
  const normal = flat ? own : unit(sum);
  const [x, y, z] = middle.map((one) => one / weight) as [number, number, number];
  const [sx, sy] = [-normal[0] / normal[2], -normal[1] / normal[2]];
  const loops = outlineOf(triangles, members, corners);
  return {
    part,
    normal,
    loops,
    members,
    box: boundsOf(loops.flat()),
    depth: [sx, sy, z - sx * x - sy * y],
    bulge: flat ? FLAT : CURVED,
  };
}

/** The outline of triangles: their sides that no two of them share, end to end. */
function outlineOf(triangles: Uint32Array, members: readonly number[], corners: Float64Array): Region {
  const sides = new Map<number, number[]>();
  const key = (from: number, to: number) => from * 0x4000000 + to;
  const open = new Set<number>();
  for (const t of members) {
    for (let n = 0; n < 3; n += 1) {
      const [from, to] = [triangles[3 * t + n]!, triangles[3 * t + ((n + 1) % 3)]!];
      if (!open.delete(key(to, from))) open.add(key(from, to));
    }
  }
  for (const side of open) {
    const [from, to] = [Math.floor(side / 0x4000000), side % 0x4000000];
    const there = sides.get(from);
    if (there) there.push(to);
    else sides.set(from, [to]);
  }
  const loops: (readonly Vec2[])[] = [];
  for (const start of sides.keys()) {
    while ((sides.get(start)?.length ?? 0) > 0) {
      const loop: Vec2[] = [];
      let at = start;
      for (let next = sides.get(at)?.pop(); next !== undefined; next = sides.get(at)?.pop()) {
        loop.push([corners[3 * at]!, corners[3 * at + 1]!]);
        at = next;
        if (at === start) break;
      }
      loops.push(straightened(loop));
    }
  }
  return loops.filter(coversMore);
}

/** More than what rounding leaves, mm²: no polygon of the library's. */
export const coversMore = (loop: readonly Vec2[]): boolean => Math.abs(loopArea(loop)) > SAME_POINT;

/** A loop without corners that lie on the line of the corner kept before them and the next one. */
function straightened(loop: readonly Vec2[]): readonly Vec2[] {
  const kept: Vec2[] = [];
  loop.forEach((p, i) => {
    const [a, b] = [kept.at(-1) ?? loop.at(-1)!, loop[(i + 1) % loop.length]!];
    const turn = (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
    if (Math.abs(turn) > ON_LINE * spanOf(b[0] - a[0], b[1] - a[1])) kept.push(p);
  });
  return kept;
}

/** What is left out of an outline lies no farther off it, mm. */
const ON_LINE = 1e-3;

import { add, dot, type Frame, pointIn, scale, spanOf, type Vec2, type Vec3 } from '../../frame/index.js';
import { boundsOf, type Region } from '../../profile/index.js';
import type { ShownFace } from './shown-faces.js';

/** A face whose normal leans less than this toward the grain shows long grain: cos of 45°. */
const END_COS = Math.SQRT1_2;

/** Year rings are farther apart and nearer in turns of this pattern, in pitches. */
const RINGS: readonly number[] = [0.55, 0.4, 0.7, 0.45, 0.6, 0.35];

/**
 * The grain of a face as short strokes: along it on long grain, arcs of year rings on end grain.
 *
 * @param loops what is seen of the face
 * @param pitch of the strokes, mm
 * @returns `end` whether it is end grain
 */
export function grainMarks(
  { part, normal }: ShownFace,
  loops: Region,
  view: Frame,
  pitch: number,
): { readonly marks: readonly (readonly Vec2[])[]; readonly end: boolean } {
  const wood = part.look?.wood;
  if (!wood) return { marks: [], end: false };
  const grain = turnedInto(view, wood.frame.x);
  const end = Math.abs(grain[0] * normal[0] + grain[1] * normal[1] + grain[2] * normal[2]) > END_COS;
  const strokes = end
    ? rings(part.shift ?? [0, 0, 0], wood, loops, view, pitch)
    : streaks(within(grain, normal), loops, pitch);
  return { marks: strokes.flatMap((stroke) => inside(stroke, loops)), end };
}

/** Long grain that runs to the right, where a region leaves room for it: as on every board. */
export const longGrain = (loops: Region, pitch: number): readonly (readonly Vec2[])[] =>
  streaks([1, 0, 0], loops, pitch).flatMap((stroke) => inside(stroke, loops));

/** Broken strokes along the grain, unevenly apart, the same each time. */
function streaks([x, y]: Vec3, loops: Region, pitch: number): readonly (readonly Vec2[])[] {
  const run = spanOf(x, y);
  if (run < 1e-6) return [];
  const [u, v]: Vec2 = [x / run, y / run];
  const along = loops.flat().map((p) => p[0] * u + p[1] * v);
  const aside = loops.flat().map((p) => p[1] * u - p[0] * v);
  const [from, to, low, high] = [
    Math.min(...along),
    Math.max(...along),
    Math.min(...aside),
    Math.max(...aside),
  ];
  const at = (s: number, level: number): Vec2 => [u * s - v * level, v * s + u * level];
  const strokes: Vec2[][] = [];
  let row = 0;
  for (let level = low + pitch * 0.5; level < high; level += pitch * (0.55 + 0.9 * chance(row))) {
    row += 1;
    let s = from - pitch * 8 * chance(1000 * row + 999);
    for (let n = 0; s < to; n += 1) {
      const long = pitch * (3 + 14 * chance(1000 * row + 2 * n));
      strokes.push([at(s, level), at(s + long, level)]);
      s += long + pitch * (1.5 + 6 * chance(1000 * row + 2 * n + 1));
    }
  }
  return strokes;
}

/** Arcs of year rings round a heart that lies under the board, as on a board sawn beside it. */
function rings(
  shift: Vec3,
  { frame, width, thickness }: NonNullable<NonNullable<ShownFace['part']['look']>['wood']>,
  loops: Region,
  view: Frame,
  pitch: number,
): readonly (readonly Vec2[])[] {
  const under = 0.35 * width;
  const far = spanOf(width / 2, under + thickness);
  const box = boundsOf(loops.flat());
  const inView = (y: number, z: number): Vec2 => {
    const p = pointIn(view, add(shift, add(frame.origin, add(scale(frame.y, y), scale(frame.z, z)))));
    return [p[0], p[1]];
  };
  // rings are drawn in the plane of the board's end and slid along the grain onto the face
  const middle = inView(width / 2, thickness / 2);
  const slide: Vec2 = [(box.minX + box.maxX) / 2 - middle[0], (box.minY + box.maxY) / 2 - middle[1]];
  const arcs: Vec2[][] = [];
  let radius = under;
  for (let i = 0; radius < far; i += 1) {
    radius += pitch * RINGS[i % RINGS.length]!;
    const arc: Vec2[] = [];
    for (let n = 0; n <= 12; n += 1) {
      const y = (width * n) / 12;
      const square = radius ** 2 - (y - width / 2) ** 2;
      if (square <= 0) continue;
      const [px, py] = inView(y, Math.sqrt(square) - under);
      arc.push([px + slide[0], py + slide[1]]);
    }
    if (arc.length > 1) arcs.push(arc);
  }
  return arcs;
}

/** What of a row of straight pieces lies in a region: even-odd. */
function inside(stroke: readonly Vec2[], loops: Region): readonly (readonly Vec2[])[] {
  const found: Vec2[][] = [];
  stroke.slice(1).forEach((q, i) => {
    const p = stroke[i]!;
    const dx = q[0] - p[0];
    const dy = q[1] - p[1];
    const cuts = [0, 1];
    let odd = false;
    for (const loop of loops) {
      let a = loop.at(-1)!;
      let sa = dx * (a[1] - p[1]) - dy * (a[0] - p[0]);
      for (const b of loop) {
        const sb = dx * (b[1] - p[1]) - dy * (b[0] - p[0]);
        if (sa > 0 !== sb > 0) {
          const share = sa / (sa - sb);
          const x = a[0] + (b[0] - a[0]) * share - p[0];
          const y = a[1] + (b[1] - a[1]) * share - p[1];
          const t = (x * dx + y * dy) / (dx * dx + dy * dy);
          if (t < 0) odd = !odd;
          else if (t < 1) cuts.push(t);
        }
        a = b;
        sa = sb;
      }
    }
    cuts.sort((a, b) => a - b);
    for (let n = 0; n + 1 < cuts.length; n += 1) {
      // each crossing changes sides
      if (odd === (n % 2 === 0)) {
        const [from, to] = [cuts[n]!, cuts[n + 1]!];
        const last = found.at(-1);
        if (from === 0 && n === 0 && last?.at(-1) === p)
          last.push(to === 1 ? q : [p[0] + dx * to, p[1] + dy * to]);
        else if (to > from)
          found.push([
            from === 0 ? p : [p[0] + dx * from, p[1] + dy * from],
            to === 1 ? q : [p[0] + dx * to, p[1] + dy * to],
          ]);
      }
    }
  });
  return found;
}

/** A share of 1 that follows from a number and looks like chance. */
const chance = (n: number): number => {
  let mixed = Math.imul(n + 1, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca77);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae3d);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
};

/** A direction of the assembly in view coordinates. */
const turnedInto = (view: Frame, way: Vec3): Vec3 => [dot(way, view.x), dot(way, view.y), dot(way, view.z)];

/** The part of a direction that lies in a plane. */
const within = (way: Vec3, normal: Vec3): Vec3 => {
  const off = scale(normal, dot(way, normal));
  return [way[0] - off[0], way[1] - off[1], way[2] - off[2]];
};

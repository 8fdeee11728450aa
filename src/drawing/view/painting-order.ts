import type { Vec2 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { convexHull, type Region } from '../../profile/index.js';
import { coversMore, type ShownFace } from './shown-faces.js';

/** Outlines that reach no farther into each other only touch, mm. */
const TOUCH = 1e-6;

/** A face in its turn, and what nearer faces hide of it that are painted before it. */
export interface Painted {
  readonly face: ShownFace;
  readonly hidden: Region;
}

/**
 * Faces from the far ones to the near ones, so that each is painted over what it hides.
 *
 * Only what no order tells right is left to be cut out of an outline: faces that run through each other, and rounds of faces of
 * which each stands before the next.
 */
export function paintingOrder(faces: readonly ShownFace[]): readonly Painted[] {
  const hullOf = onceForEach((face: ShownFace) => convexHull(face.loops.flat()));
  const hidden = faces.map((): (readonly Vec2[])[] => []);
  // of each face those before it, and of each how many behind it are not painted yet
  const before = faces.map((): number[] => []);
  const waits = faces.map(() => 0);
  faces.forEach((face, i) => {
    faces.forEach((front, j) => {
      if (i === j) return;
      const where = inFront(front, face, hullOf);
      if (where === front.loops) {
        before[i]!.push(j);
        waits[j]! += 1;
      } else hidden[i]!.push(...where);
    });
  });
  const left = new Set(faces.keys());
  const painted: Painted[] = [];
  while (left.size > 0) {
    let next = -1;
    for (const i of left) if (next < 0 || waits[i]! < waits[next]!) next = i;
    left.delete(next);
    painted.push({ face: faces[next]!, hidden: hidden[next]! });
    // in a round: those behind it come later, and spare it
    if (waits[next]! > 0)
      for (const i of left) if (before[i]!.includes(next)) hidden[i]!.push(...faces[next]!.loops);
    for (const j of before[next]!) waits[j]! -= 1;
  }
  return painted;
}

const NOTHING: Region = [];

/** Where a face stands before another: both are planes, so that is a half of the picture; all of its outline, or some. */
function inFront(front: ShownFace, face: ShownFace, hullOf: (face: ShownFace) => readonly Vec2[]): Region {
  const minX = Math.max(front.box.minX, face.box.minX);
  const maxX = Math.min(front.box.maxX, face.box.maxX);
  if (minX >= maxX) return NOTHING;
  const minY = Math.max(front.box.minY, face.box.minY);
  const maxY = Math.min(front.box.maxY, face.box.maxY);
  if (minY >= maxY) return NOTHING;
  const air = Math.max(front.bulge, face.bulge);
  const [a, b] = [front.depth, face.depth];
  const [dx, dy, d] = [a[0] - b[0], a[1] - b[1], a[2] - b[2] - air];
  const over = (p: Vec2) => dx * p[0] + dy * p[1] + d;
  // quick, before their outlines are looked at: in no corner of what their boxes share
  if (Math.max(over([minX, minY]), over([maxX, minY]), over([maxX, maxY]), over([minX, maxY])) <= 0)
    return NOTHING;
  const [one, other] = [hullOf(front), hullOf(face)];
  if (parted(one, other)) return NOTHING;
  const shared = common(one, other).map(over);
  if (Math.max(...shared) <= 0) return NOTHING;
  // nowhere behind it: where they touch, either may be painted last
  if (Math.min(...shared) >= -2 * air) return front.loops;
  return front.loops.map((loop) => halfOf(loop, over)).filter(coversMore);
}

/** What two convex outlines, counter-clockwise, share. */
const common = (one: readonly Vec2[], other: readonly Vec2[]): readonly Vec2[] =>
  other.reduce((left, p, i) => {
    const q = other[(i + 1) % other.length]!;
    const [x, y] = [q[0] - p[0], q[1] - p[1]];
    return halfOf(left, (r) => x * (r[1] - p[1]) - y * (r[0] - p[0]));
  }, one);

/** Whether a straight line parts two convex outlines, which may touch along it. */
const parted = (one: readonly Vec2[], other: readonly Vec2[]): boolean =>
  hasBeside(one, other) || hasBeside(other, one);

/** Whether a side of the first outline, counter-clockwise, has all of the other on its outer side. */
const hasBeside = (one: readonly Vec2[], other: readonly Vec2[]): boolean =>
  one.some((p, i) => {
    const q = one[(i + 1) % one.length]!;
    const [x, y] = [q[0] - p[0], q[1] - p[1]];
    const least = TOUCH * Math.hypot(x, y);
    return other.every((r) => x * (r[1] - p[1]) - y * (r[0] - p[0]) <= least);
  });

/** What of a loop lies where a linear measure is above 0; pieces may hang together along the border. */
function halfOf(loop: readonly Vec2[], over: (p: Vec2) => number): readonly Vec2[] {
  const kept: Vec2[] = [];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    const a = over(p);
    const b = over(q);
    if (a > 0) kept.push(p);
    if (a > 0 === b > 0) return;
    const t = a / (a - b);
    kept.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
  });
  return kept;
}

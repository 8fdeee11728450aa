import { dot, unit, type Vec2, type Vec3 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { convexHull, loopArea, type Region, subtractRegion } from '../../profile/index.js';
import { BEHIND } from '../../tolerances.js';
import { shaded, type Tone } from '../sheet/index.js';
import { grainMarks } from './grain-marks.js';
import type { Scene } from './scene.js';
import { coversMore, type ShownFace, shownFaces } from './shown-faces.js';

/** Toward the light, in the view: from above, the left and the viewer, so that the top is bright and two sides tell apart. */
const LIGHT: Vec3 = unit([-0.45, 0.75, 0.5]);

/** Brightness of a face turned away from the light and of one square to it, and of end grain beside long grain. */
const [DARK, BRIGHT, END] = [0.6, 1.04, 0.86];

/** Steps of brightness: facets of a curved surface within one step are one tone. */
const STEPS = 14;

/** Faces whose visible rest is less than this share of the picture's box are left to the ground. */
const LEAST = 2e-6;

/** Outlines that reach no farther into each other only touch, mm. */
const TOUCH = 1e-6;

/** The faces of parts as they are seen, each in the tone of its light, with its grain; mm in the view's plane. */
export function tonesOf(scene: Scene): readonly Tone[] {
  const { parts, view, corners } = scene;
  const faces = parts.flatMap((part, p) =>
    shownFaces(part, corners[p]!, view, stepOf).filter(anySeen(scene, corners[p]!)),
  );
  const [width, height] = [0, 1].map((axis) => {
    const at = faces.flatMap(({ box }) => (axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY]));
    return Math.max(...at) - Math.min(...at);
  }) as [number, number];
  const pitch = Math.max(width, height) / 55;
  const hullOf = onceForEach((face: ShownFace) => convexHull(face.loops.flat()));
  return faces.flatMap((face): Tone[] => {
    const before = faces.flatMap((other) =>
      other === face ? [] : inFront(other, face, () => parted(hullOf(other), hullOf(face))),
    );
    const loops = before.length === 0 ? face.loops : subtractRegion(face.loops, before);
    if (loops.reduce((sum, loop) => sum + loopArea(loop), 0) < LEAST * width * height) return [];
    const { look, id } = face.part;
    const { marks, end } = grainMarks(face, loops, view, pitch);
    const light = DARK + ((BRIGHT - DARK) * stepOf(face.normal)) / STEPS;
    const colour = shaded(look?.colour ?? '#cccccc', light * (end ? END : 1));
    return [{ kind: 'tone', part: id, colour, loops, marks, ink: shaded(colour, end ? 0.72 : 0.84) }];
  });
}

/** Whether anything of a face is seen, looked at in some places of each of its triangles: what is hidden needs no outline. */
const anySeen =
  ({ occluders }: Scene, at: Float64Array) =>
  ({ part, members }: ShownFace): boolean => {
    const { triangles } = part.solid;
    return members.some((t) => {
      const i = 3 * triangles[3 * t]!;
      const j = 3 * triangles[3 * t + 1]!;
      const k = 3 * triangles[3 * t + 2]!;
      return SPOTS.some((share) => {
        const mix = (axis: number) =>
          share[0] * at[i + axis]! + share[1] * at[j + axis]! + share[2] * at[k + axis]!;
        return !occluders.covers(mix(0), mix(1), mix(2) + BEHIND);
      });
    });
  };

/** Places looked at on a triangle, as shares of its corners: its middle, and near its corners and sides. */
const SPOTS: readonly (readonly [number, number, number])[] = [
  [1 / 3, 1 / 3, 1 / 3],
  [0.9, 0.05, 0.05],
  [0.05, 0.9, 0.05],
  [0.05, 0.05, 0.9],
  [0.49, 0.49, 0.02],
  [0.02, 0.49, 0.49],
  [0.49, 0.02, 0.49],
];

/** @param normal in view coordinates */
const stepOf = (normal: Vec3): number => Math.round(STEPS * Math.max(0, dot(normal, LIGHT)));

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

const NOTHING: Region = [];

/**
 * Where a face stands before another: both are planes, so that is a half of the picture.
 *
 * @param apart whether a line parts them, asked when nothing quicker does
 */
function inFront(front: ShownFace, face: ShownFace, apart: () => boolean): Region {
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
  const corners = [over([minX, minY]), over([maxX, minY]), over([maxX, maxY]), over([minX, maxY])];
  if (Math.max(...corners) <= 0 || apart()) return NOTHING;
  if (Math.min(...corners) > 0) return front.loops;
  return front.loops.map((loop) => halfOf(loop, over)).filter(coversMore);
}

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

/** A tone set down elsewhere, larger or smaller. */
export const toneOnSheet = (tone: Tone, to: (p: Vec2) => Vec2): Tone => ({
  ...tone,
  loops: tone.loops.map((loop) => loop.map(to)),
  marks: tone.marks.map((mark) => mark.map(to)),
});

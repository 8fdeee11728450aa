import { dot, unit, type Vec2, type Vec3 } from '../../frame/index.js';
import { loopArea, subtractRegion } from '../../profile/index.js';
import { BEHIND } from '../../tolerances.js';
import { shaded, type Tone } from '../sheet/index.js';
import { grainMarks } from './grain-marks.js';
import { paintingOrder } from './painting-order.js';
import type { Scene } from './scene.js';
import { type ShownFace, shownFaces } from './shown-faces.js';

/** Toward the light, in the view: from above, the left and the viewer, so that the top is bright and two sides tell apart. */
const LIGHT: Vec3 = unit([-0.45, 0.75, 0.5]);

/** Brightness of a face turned away from the light and of one square to it, and of end grain beside long grain. */
const [DARK, BRIGHT, END] = [0.6, 1.04, 0.86];

/** Steps of brightness: facets of a curved surface within one step are one tone. */
const STEPS = 14;

/** Faces whose visible rest is less than this share of the picture's box are left to the ground. */
const LEAST = 2e-6;

/** The faces of parts as they are seen, each in the tone of its light, with its grain, to be painted one over the other; mm in the view's plane. */
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
  return paintingOrder(faces).flatMap(({ face, hidden }): Tone[] => {
    const loops = hidden.length === 0 ? face.loops : subtractRegion(face.loops, hidden);
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

/** A tone set down elsewhere, larger or smaller. */
export const toneOnSheet = (tone: Tone, to: (p: Vec2) => Vec2): Tone => ({
  ...tone,
  loops: tone.loops.map((loop) => loop.map(to)),
  marks: tone.marks.map((mark) => mark.map(to)),
});

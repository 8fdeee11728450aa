import type { Frame, Vec2 } from '../../frame/index.js';
import type { Tone } from '../sheet/index.js';
import { chainLines } from './chain-lines.js';
import { contactShadow } from './contact-shadow.js';
import { distinctLines } from './distinct-lines.js';
import { hiddenLines } from './hidden-lines.js';
import { type Scene, sceneOf } from './scene.js';
import type { SeenPart, Wire } from './seen-part.js';
import { tonesOf } from './tones.js';

/** A line of a view, mm at full size in the view's plane. */
export interface ViewLine {
  readonly part: string;
  readonly line: 'visible' | 'hidden' | 'centre';
  readonly points: readonly Vec2[];
}

/** A floor seen flatter than this shows no shadow: sine of the angle. */
const FROM_ABOVE = 0.2;

/** What is seen of parts along -z of a frame, every line once. */
export interface View {
  readonly frame: Frame;
  readonly lines: readonly ViewLine[];
  /** Its surfaces in light and shade; none in a line drawing. */
  readonly tones: readonly Tone[];
}

export interface ViewOptions {
  /** Draw what is hidden, dashed. */
  readonly hidden: boolean;
  /** Axes drawn where they can be seen. */
  readonly wires?: readonly Wire[];
  /** With light and grain, on the floor or in the air. */
  readonly toned?: 'standing' | 'apart';
}

/**
 * A view of closed solids with its hidden lines found exactly.
 *
 * @param frame x to the right, y up, z toward the viewer; where its origin lies does not matter
 */
export const viewOf = (parts: readonly SeenPart[], frame: Frame, options: ViewOptions): View =>
  viewIn(sceneOf(parts, frame), options);

/** The view of a scene. */
export function viewIn(scene: Scene, options: ViewOptions): View {
  const { parts, view: frame } = scene;
  const pieces = hiddenLines(scene, options);
  const visible = distinctLines(pieces.visible);
  const hidden = distinctLines(pieces.hidden, visible);
  const wires = distinctLines(pieces.wires, visible);
  const lines = (line: ViewLine['line'], of: typeof visible): ViewLine[] =>
    chainLines(of).map(({ part, points }) => ({ part, line, points }));
  return {
    frame,
    tones: [
      ...(options.toned === 'standing' && frame.z[2] > FROM_ABOVE ? contactShadow(parts, frame) : []),
      ...(options.toned ? tonesOf(scene) : []),
    ],
    lines: [...lines('hidden', hidden), ...lines('centre', wires), ...lines('visible', visible)],
  };
}

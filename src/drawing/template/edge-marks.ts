import type { FaceId, Mortise, Slot } from '../../board/index.js';
import { dot, type Frame, type Vec2 } from '../../frame/index.js';
import { printLength, type Rule } from '../../length/index.js';
import { type Feature, faceName, size, spot, toolSize } from './feature.js';
import { from, inPlane, LETTER, line, readingDeg, words } from './strokes.js';
import type { Entity } from './template.js';

/** How far a mark stands out of the wood and back into it at the edge it crosses, mm. */
const OUT = 8;
const IN = 8;

/**
 * Marks where something that enters an end or an edge meets the template's line: a centre line as long as it is deep, and
 * a mark at each end of its extent along the edge.
 *
 * @param extent along the edge, mm
 */
export function edgeMarks(mark: string, at: Frame, extent: number, depth: number): readonly Entity[] {
  const meets: Vec2 = [at.origin[0], at.origin[1]];
  const out = inPlane(at.z);
  // a slanted end hides part of the depth from above
  const seen = depth * Math.hypot(at.z[0], at.z[1]);
  const label = from(meets, out, OUT + LETTER, 0);
  const leftwards = out[0] < -0.5 ? mark.length * LETTER : 0;
  return [
    line('MARK', from(meets, out, OUT), from(meets, out, -seen), 'centre'),
    ...[-extent / 2, extent / 2].map((end) =>
      line('MARK', from(meets, out, OUT, end), from(meets, out, -Math.min(IN, seen), end)),
    ),
    words([label[0] - leftwards, label[1] - (out[1] < -0.5 ? LETTER : 0)], mark),
  ];
}

/** A mortise in an end, an edge or a bevel, shown where it meets the template's line. */
export function mortiseInEdge(mark: string, mortise: Mortise, units: Rule): Feature {
  const { at, width, length, depth, face, joint } = mortise;
  return {
    entities: edgeMarks(mark, at, extentAlongEdge(mortise), depth),
    mark,
    row: `mortise ${toolSize(width, units)} x ${size(length, units)}, ${size(depth, units)} deep, into ${enters(face)}, its length ${lies(at)}, centre ${spot(at.origin[0], at.origin[1], units)}, ${printLength(at.origin[2], { units })} above the reference face, joint ${joint}`,
  };
}

/** The face a row names: a bevel by its id, a slanted piece of the outline by the mark on it. */
export function enters(face: FaceId): string {
  if (/^(reference|opposite)-/.test(face)) return `the ${faceName(face)}`;
  return /^edge-\d+$/.test(face) ? 'the slanted edge it marks' : `bevel ${face}`;
}

/** An obround's extent along the edge it enters: its straight run as seen from above, and its round ends, mm. */
export function extentAlongEdge({ at, length, width }: Mortise | Slot): number {
  const out = inPlane(at.z);
  return Math.abs(dot(at.x, [-out[1], out[0], 0])) * (length - width) + width;
}

/** How the length of a pocket in an edge lies. */
export function lies(at: Frame): string {
  const rise = Math.abs(at.x[2]);
  if (rise < 1e-6) return 'along the edge';
  if (rise > 1 - 1e-6) return 'through the thickness';
  return `${Math.round(Math.abs(readingDeg([Math.hypot(at.x[0], at.x[1]), rise])))}° to the faces`;
}

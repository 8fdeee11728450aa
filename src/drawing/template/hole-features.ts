import { entersWideFace, type Hole } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { printLength, type Rule } from '../../length/index.js';
import { edgeMarks, enters } from './edge-marks.js';
import { type Feature, faceName, labelOf, size, spot, toolSize } from './feature.js';
import { dashingOf, LETTER, line, OVERRUN, ring, words } from './strokes.js';

/** A hole in a wide face: a circle for each diameter and a cross to set the bit on. */
function drilledHole(mark: string, hole: Hole, units: Rule): Feature {
  const { at, diameter, depth, face, counterbore, countersink } = hole;
  const centre: Vec2 = [at.origin[0], at.origin[1]];
  const wider = [counterbore?.diameter, countersink?.diameter].filter((d) => d !== undefined);
  const reach = Math.max(diameter, ...wider) / 2 + OVERRUN;
  const into = depth === 'through' ? 'through the board' : `${size(depth, units)} deep`;
  return {
    entities: [
      ring('DRILL', centre, diameter, depth === 'through' ? undefined : dashingOf(face)),
      ...wider.map((d) => ring('DRILL', centre, d, dashingOf(face))),
      line('MARK', [centre[0] - reach, centre[1]], [centre[0] + reach, centre[1]], 'centre'),
      line('MARK', [centre[0], centre[1] - reach], [centre[0], centre[1] + reach], 'centre'),
      words([centre[0] + reach * 0.75, centre[1] + LETTER / 2], labelOf(mark, face)),
    ],
    mark,
    row: `hole ${toolSize(diameter, units)}, ${into}, from the ${faceName(face)}${widened(hole, units)}, centre ${spot(...centre, units)}`,
  };
}

/** A hole in an end, an edge or a bevel, shown where it meets the template's line. */
function holeInEdge(mark: string, hole: Hole, depthSeen: number, units: Rule): Feature {
  const { at, diameter, depth, face } = hole;
  const deep = depth === 'through' ? depthSeen : depth;
  const into = depth === 'through' ? 'through' : `${size(depth, units)} deep`;
  return {
    entities: edgeMarks(mark, at, diameter, deep),
    mark,
    row: `hole ${toolSize(diameter, units)}, ${into}, into ${enters(face)}${widened(hole, units)}, centre ${spot(at.origin[0], at.origin[1], units)}, ${printLength(at.origin[2], { units })} above the reference face`,
  };
}

/** Holes entering a wide face are drilled through the template, the others are marked at its line. */
export const holeFeature = (mark: string, hole: Hole, depthSeen: number, units: Rule): Feature =>
  entersWideFace(hole.face) ? drilledHole(mark, hole, units) : holeInEdge(mark, hole, depthSeen, units);

const widened = ({ counterbore, countersink }: Hole, units: Rule): string =>
  [
    counterbore &&
      `, counterbore ${toolSize(counterbore.diameter, units)}, ${size(counterbore.depth, units)} deep`,
    countersink && `, countersink ${toolSize(countersink.diameter, units)}, ${countersink.angleDeg}°`,
  ]
    .filter((part) => part !== undefined)
    .join('');

import { type Board, entersWideFace, fenceDistance, type Groove, grooveOutline } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import type { Rule } from '../../length/index.js';
import { clockwise, transform2d } from '../../profile/index.js';
import { edgeMarks, enters } from './edge-marks.js';
import { type Feature, faceName, labelOf, size, toolSize } from './feature.js';
import { closed, dashingOf, from, inPlane, LETTER, words } from './strokes.js';

/** A groove: its outline in a wide face, its ends where it enters an edge. It is cut along a fence, so it has no window. */
export function grooveFeature(
  mark: string,
  groove: Groove,
  board: Board,
  { units }: { readonly units: Rule },
): Feature {
  const { at, width, length, depth, face } = groove;
  const off = fenceDistance(board, groove);
  const kind = groove.rebate ? 'rebate' : 'groove';
  const place = groove.rebate
    ? `along the ${faceName(groove.from)}`
    : `near wall ${size(off, units)} from the ${faceName(groove.from)}`;
  const row = `${kind} ${toolSize(width, units)} wide, ${size(depth, units)} deep, into ${enters(face)}, ${place}, ${runs(groove, units)}, cut along a fence`;
  if (!entersWideFace(face)) return { entities: edgeMarks(mark, at, length, depth), mark, row };
  const middle: Vec2 = [at.origin[0], at.origin[1]];
  return {
    entities: [
      closed(
        'POCKET',
        clockwise(transform2d(grooveOutline(groove, width), inBoard(groove))),
        dashingOf(face),
      ),
      words(from(middle, inPlane(at.x), 0, LETTER / 2), labelOf(mark, face)),
    ],
    mark,
    row,
  };
}

const runs = ({ stopped, length }: Groove, units: Rule): string =>
  stopped.length === 0
    ? 'through'
    : `${size(length, units)} long, ${stopped.length === 2 ? 'stopped at both ends' : 'stopped at one end'}`;

/** Its X and Y on the template: the floor of a groove in a wide face lies level. */
const inBoard = ({ at: { origin, x, y } }: Groove) => ({
  origin: [origin[0], origin[1]] as const,
  x: [x[0], x[1]] as const,
  y: [y[0], y[1]] as const,
});

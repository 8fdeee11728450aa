import type { Board } from '../../board/index.js';
import { printAngle, type Say } from '../../length/index.js';
import type { LineMark, LineMarks } from '../holding/index.js';
import { faceWords } from '../words/index.js';
import type { MarkedOut } from './setup-card.js';

/** How the lines of a turned mortise are marked out on its board: the angle for a check, the marks to work by. */
export function markedWords(board: Board, { turnDeg, centreLine, guideEdge }: MarkedOut, say: Say): string {
  return [
    `turned ${printAngle(turnDeg)} to the grain`,
    `centre line: ${lineWords(board, centreLine, say)}`,
    ...(guideEdge ? [`guide's edge: ${lineWords(board, guideEdge, say)}`] : []),
  ].join('; ');
}

const lineWords = (board: Board, [a, b]: LineMarks, say: Say): string =>
  `${onWords(board, a)} at ${fromWords(board, a, say)}, ${onWords(board, b)} at ${fromWords(board, b, say)}`;

const onWords = (board: Board, { on, onHorn }: LineMark): string =>
  onHorn > 0 ? `end of the horn beyond the ${faceWords(board, on)}` : faceWords(board, on);

const fromWords = (board: Board, { from, fromHorn, at }: LineMark, say: Say): string =>
  `${say.length(at)} from the ${fromHorn > 0 ? `end of the horn beyond the ${faceWords(board, from)}` : faceWords(board, from)}`;

/** How to lay out the marks, once on a card with turned mortises. */
export const MARKING_OUT =
  'A turned mortise is marked out with a rule, without a protractor. Put both marks of a line on the arrises round the face the router lies on: "reference end at 40 mm from the reference edge" is a mark on the arris of the reference end, 40 mm along it from the corner with the reference edge. Join the marks with a straightedge. Lay the guide board\'s edge on its own two marks; measure the middle and the ends of the mortise along the centre line, from its first mark.';

import { type Board, type FaceId, faceFrame, faces, looksAlongGrain } from '../../board/index.js';
import { NOISE } from '../../tolerances.js';

/**
 * What a person calls a face: `reference face`, `angled opposite end`, `bevelled top end`. Its id stands behind only where
 * two faces would be called the same.
 *
 * @param board the finished board, whose names are used
 */
export function faceWords(board: Board, id: FaceId): string {
  const words = calledAs(board, id);
  if (words === undefined) return id;
  return isMark(id) || faces(board).every((other) => other.id === id || calledAs(board, other.id) !== words)
    ? words
    : `${words} (${id})`;
}

const isMark = (id: FaceId): boolean => /^(reference|opposite)-(face|edge|end)$/.test(id);

function calledAs(board: Board, id: FaceId): string | undefined {
  if (isMark(id)) return id.replace('-', ' ');
  const z = faceFrame(board, id)?.z;
  if (!z) return undefined;
  const isEnd = looksAlongGrain(z);
  const kind = isEnd ? 'end' : 'edge';
  const side = (isEnd ? z[0] : z[1]) < 0 ? 'reference' : 'opposite';
  if (board.bevels.some((bevel) => bevel.id === id)) return `${cutAs(id) ?? `bevelled ${side}`} ${kind}`;
  const square = Math.max(Math.abs(z[0]), Math.abs(z[1])) > 1 - NOISE;
  return `${square ? 'inner' : 'angled'} ${side} ${kind}`;
}

/** `bevelled top`, `tapered back`, of `top` and `taper-back`; undefined for a number, which names nothing a person sees. */
function cutAs(id: FaceId): string | undefined {
  const where = id.replace(/^(bevel|taper)-|-(end|edge|face)$/g, '').replaceAll('-', ' ');
  if (/\d/.test(id)) return undefined;
  return `${id.startsWith('taper-') ? 'tapered' : 'bevelled'} ${where}`;
}

import { type Board, type FaceId, faceFrame, looksAlongGrain } from '../../board/index.js';
import { NOISE } from '../../tolerances.js';

/**
 * What a person calls a face: `reference face`, `angled opposite end (edge-2)`, `bevelled end 'top'`.
 *
 * @param board the finished board, whose names are used
 */
export function faceWords(board: Board, id: FaceId): string {
  if (/^(reference|opposite)-(face|edge|end)$/.test(id)) return id.replace('-', ' ');
  const z = faceFrame(board, id)?.z;
  if (!z) return id;
  const isEnd = looksAlongGrain(z);
  if (board.bevels.some((bevel) => bevel.id === id)) return `bevelled ${isEnd ? 'end' : 'edge'} '${id}'`;
  const side = isEnd ? (z[0] < 0 ? 'reference' : 'opposite') : z[1] < 0 ? 'reference' : 'opposite';
  const square = Math.max(Math.abs(z[0]), Math.abs(z[1])) > 1 - NOISE;
  return `${square ? 'inner' : 'angled'} ${side} ${isEnd ? 'end' : 'edge'} (${id})`;
}

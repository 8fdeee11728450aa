import { type Board, type FaceId, faceFrame, sawAngles } from '../../board/index.js';
import type { Vec3 } from '../../frame/index.js';
import { printAngle } from '../../length/index.js';
import { PARALLEL_DEG } from '../../tolerances.js';

const LEAST = Math.sin((PARALLEL_DEG * Math.PI) / 180);

/**
 * The sides of the blank a cut leaves the board longest on (an end) or widest on (an edge): where its normal turns away from.
 * A cut's plane steps back by the tangent of its lean for every mm towards the side its normal turns to.
 *
 * @param normal of the cut, out of the wood, unit, board frame
 * @returns `reference face`, or a face and an edge for a compound cut; empty for a square one
 * @example longSides([Math.cos(0.1), 0, Math.sin(0.1)]) // ['reference face']
 */
export function longSides([x, y, z]: Vec3): readonly string[] {
  const side = (share: number, name: 'face' | 'edge'): readonly string[] =>
    Math.abs(share) < LEAST ? [] : [`${share > 0 ? 'reference' : 'opposite'} ${name}`];
  return Math.abs(x) > Math.abs(y) ? [...side(z, 'face'), ...side(y, 'edge')] : side(z, 'face');
}

/** How a face that is out of square is sawn: `blade tilt 10°, long on the reference face`; empty for a square one. */
export function sawnWords(board: Board, id: FaceId): string {
  const normal = faceFrame(board, id)?.z;
  if (!normal || id === 'reference-face' || id === 'opposite-face') return '';
  const long = longSides(normal);
  if (long.length === 0) return '';
  const isEnd = Math.abs(normal[0]) > Math.abs(normal[1]);
  const { mitreDeg, bevelDeg } = sawAngles(normal);
  return [
    ...(isEnd && mitreDeg > PARALLEL_DEG ? [`mitre ${printAngle(mitreDeg)}`] : []),
    ...(bevelDeg > PARALLEL_DEG ? [`blade tilt ${printAngle(bevelDeg)}`] : []),
    `${isEnd ? 'long' : 'wide'} on the ${long.join(' and the ')}`,
  ].join(', ');
}

import { type Board, type FaceId, faceFrame, sawAngles } from '../../board/index.js';
import type { Vec3 } from '../../frame/index.js';
import { PARALLEL_DEG } from '../../tolerances.js';
import { boardEnds, longSides } from '../boards/index.js';
import { faceWords } from '../words/index.js';
import type { StepDraft } from './work-step.js';

/** Both ends: the words, the angles and the three lengths between them. */
export function endCuts(board: Board, made: readonly FaceId[]): Pick<StepDraft, 'what' | 'uses' | 'figures'> {
  const ends = boardEnds(board);
  return {
    what: `saw ${made.map((id) => `the ${faceWords(board, id)}`).join(' and ')}, reference edge against the fence${longWords(board, made)}; ends ${ends.ends}; stop set to: ${ends.stopTo}`,
    uses: ['reference-face', 'reference-edge'],
    figures: [
      ...made
        .flatMap((id) => [
          {
            name: `mitre of ${faceWords(board, id)}`,
            value: sawAngles(normalOf(board, id)).mitreDeg,
            unit: 'deg' as const,
          },
          { name: `blade tilt of ${faceWords(board, id)}`, value: tiltDeg(board, id), unit: 'deg' as const },
        ])
        .filter(({ value }) => value > PARALLEL_DEG),
      { name: 'long point to long point', value: ends.longPoint, unit: 'mm' },
      { name: 'short point to short point', value: ends.shortPoint, unit: 'mm' },
      { name: 'centre line', value: ends.centreLine, unit: 'mm' },
    ],
  };
}

/** Which side each cut leaves longest: a tilted blade can be set to either. */
export const longWords = (board: Board, made: readonly FaceId[]): string =>
  made
    .map((id) => {
      const normal = normalOf(board, id);
      return { id, long: longSides(normal), end: Math.abs(normal[0]) > Math.abs(normal[1]) };
    })
    .filter(({ long }) => long.length > 0)
    .map(
      ({ id, long, end }) =>
        `; the ${faceWords(board, id)}: ${end ? 'long' : 'wide'} on the ${long.join(' and the ')}`,
    )
    .join('');

const normalOf = (board: Board, id: FaceId): Vec3 => faceFrame(board, id)?.z ?? [1, 0, 0];

/** Out of square through the thickness, degrees. */
export const tiltDeg = (board: Board, id: FaceId): number => sawAngles(normalOf(board, id)).bevelDeg;

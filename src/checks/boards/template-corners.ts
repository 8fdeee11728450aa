import { tightTemplateCorners } from '../../board/index.js';
import type { Bench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding } from '../finding/index.js';

/** No corner of an outline or opening is tighter than the cutter, or the guide bush round it, can follow. */
export const templateCorners = (bench: Bench): readonly Finding[] => {
  const { say, solids, bush } = bench;
  const follower = { cutter: solids.design.cutter, ...(bush === undefined ? {} : { bush }) };
  return [...solids.boards.values()].flatMap(({ id, board }) =>
    tightTemplateCorners(board, follower).map((corner): Finding => {
      const [x, y] = corner.at;
      const [radius, needed] = say.lengths(corner.radius, corner.needed);
      const line = corner.line === 'outline' ? 'the outline' : `opening ${corner.line}`;
      const where = `${say.length(x)} from the reference end and ${say.length(y)} from the reference edge`;
      const guide =
        corner.because === 'cutter'
          ? `${say.length(follower.cutter)} cutter`
          : `${say.length(bush ?? 0)} guide bush`;
      return {
        code: 'corner-too-tight',
        level: 'warning',
        subjects: [id],
        measured: corner.radius,
        limit: corner.needed,
        unit: 'mm',
        message: `${line} of ${id} has an inside corner of radius ${radius} ${where}; the ${guide} cuts no tighter than ${needed}`,
        remedy: 'make the radius larger, use a smaller cutter or bush, or finish the corner by hand',
        basis: COMMON_PRACTICE,
      };
    }),
  );
};

import { type Board, templateOutline } from '../../board/index.js';
import type { Bench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** The guide bush leaves something of every board's outline for its template to be cut to; else the board gets no template. */
export const templatesLeft = ({ solids, say, bush }: Bench): readonly Finding[] => {
  if (bush === undefined) return [];
  const { cutter } = solids.design;
  const lost = [...solids.boards.values()].filter(
    ({ board }) => templateOutline(board, { cutter, bush }).length === 0,
  );
  return lost.map(({ id, board }): Finding => {
    const most = largestBush(board, cutter, bush);
    const [wide, thin] = say.fines(bush, cutter);
    return {
      code: 'template-vanishes',
      level: 'warning',
      subjects: [id],
      measured: bush,
      limit: most ?? cutter,
      unit: 'mm',
      message: `${id} is too narrow for a template: with a ${wide} guide bush and a ${thin} cutter the line to cut lies ${say.fine((bush - cutter) / 2)} inside the part, which leaves nothing of it; ${id} gets no template`,
      remedy:
        most === undefined
          ? 'leave out --bush and follow the outline with a bearing'
          : `use --bush ${most}mm or less, or leave it out and follow the outline with a bearing`,
      basis: MEASURED,
    };
  });
};

/** The largest bush of a whole number of mm that leaves an outline; undefined when none larger than the cutter does. */
function largestBush(board: Board, cutter: number, from: number): number | undefined {
  for (let bush = Math.ceil(from) - 1; bush > cutter; bush -= 1)
    if (templateOutline(board, { cutter, bush }).length > 0) return bush;
  return undefined;
}

import { tightCorners } from '../profile/index.js';
import { type Bench, COMMON_PRACTICE } from './bench.js';
import type { Finding } from './finding.js';

/** No inside corner of an outline or opening is tighter than the cutter or the guide bush that follows it. */
export const templateCorners = (bench: Bench): readonly Finding[] => {
  const { say, solids, bush } = bench;
  const diameter = Math.max(solids.design.cutter, bush ?? 0);
  const guide = diameter === bush ? 'guide bush' : 'cutter';
  const outlines = (id: string) => {
    const { board } = solids.boards.get(id)!;
    return [
      { name: 'outline', corners: tightCorners(board.outline, diameter / 2, 'outside') },
      ...board.openings.map((opening) => ({
        name: `opening ${opening.id}`,
        corners: tightCorners(opening.outline, diameter / 2, 'inside'),
      })),
    ];
  };
  return [...solids.boards.keys()].flatMap((id) =>
    outlines(id).flatMap(({ name, corners }) =>
      corners.map(
        ({ at, radius }): Finding => ({
          code: 'corner-too-tight',
          level: 'warning',
          subjects: [id],
          measured: radius,
          limit: diameter / 2,
          unit: 'mm',
          message: `the ${name} of ${id} has an inside corner of radius ${say.length(radius)} at ${say.length(at[0])} from the reference end, ${say.length(at[1])} from the reference edge; the ${say.length(diameter)} ${guide} leaves ${say.length(diameter / 2)}`,
          remedy: 'make the radius larger, use a smaller cutter or bush, or finish that corner by hand',
          basis: COMMON_PRACTICE,
        }),
      ),
    ),
  );
};

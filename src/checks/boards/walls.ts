import { PRACTICE } from '../../joinery/index.js';
import { SIZED_TO_LIMIT } from '../../tolerances.js';
import type { FigureBench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

/** Below this a wall gives way under the cutter or the clamp, mm. Common practice, no source. */
const BREAKS = 3;

/** The wood round each mortise: nothing breaks through, no mortise meets another, no wall is too thin. */
export const walls = (bench: FigureBench): readonly Finding[] =>
  bench.tenons.flatMap((t) =>
    t.mortises.flatMap((m): Finding[] => {
      const { say } = bench;
      if (m.wall >= PRACTICE.wall - SIZED_TO_LIMIT) return [];
      const shared = { subjects: [t.tenon.id, m.board], measured: m.wall, unit: 'mm' as const };
      if (m.wall === 0) {
        return [
          {
            ...shared,
            code: 'mortise-breaks-through',
            level: 'error',
            limit: BREAKS,
            message: `the mortise for tenon ${t.tenon.id} in ${m.board} breaks through a face or meets another cavity; it is ${say.length(m.depth)} deep`,
            remedy: 'cut it shallower, shorter or narrower, or move it into thicker wood',
            basis: MEASURED,
          },
        ];
      }
      const weak = m.wall < BREAKS;
      const limit = weak ? BREAKS : PRACTICE.wall;
      const [wall, least] = say.lengths(m.wall, limit);
      return [
        {
          ...shared,
          code: 'wall-thin',
          level: weak ? 'error' : 'warning',
          limit,
          message: `the thinnest wall round the mortise for tenon ${t.tenon.id} in ${m.board} is ${wall}; it should be at least ${least}`,
          remedy: 'use a thinner cutter or thicker stock, or cut the mortise shallower',
          basis: COMMON_PRACTICE,
        },
      ];
    }),
  );

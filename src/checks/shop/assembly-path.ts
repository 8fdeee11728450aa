import { type GlueStep, type ProvedGlueUp, provedGlueUp } from '../../shop/index.js';
import type { Bench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** The design can be put together: an order of moves brings every board to its seat with nothing in the way. */
export const assemblyPath = (bench: Bench): readonly Finding[] => {
  const proved = bench.glueUp ?? provedGlueUp(bench.solids);
  return [...stuck(bench, proved), ...proved.glueUp.steps.flatMap((step) => sprung(bench, step))];
};

/** Boards that no order of moves brings together. */
export function stuck({ say }: Pick<Bench, 'say'>, { glueUp, inTheWay }: ProvedGlueUp): Finding[] {
  return glueUp.conflicts.map(({ boards, joints, excess, directions, panels = [] }): Finding => {
    const met = inTheWay.filter(({ boards: pair }) => pair.every((id) => boards.includes(id)));
    const shutOut = met.some(({ boards: pair }) => pair.some((id) => panels.includes(id)));
    const pairs = [...new Set(met.map(({ pieces }) => pieces.toSorted().join(' and ')))];
    const why =
      pairs.length > 0
        ? `on the way ${pairs.join(', ')} meet`
        : Number.isFinite(excess)
          ? `at best a tenon still misses its mortise by ${say.fine(excess)}`
          : 'no one move follows the directions of all their tenons';
    return {
      code: 'no-glue-up-order',
      level: 'error',
      subjects: [...joints, ...boards],
      measured: pairs.length > 0 || !Number.isFinite(excess) ? joints.length : excess,
      limit: 0,
      unit: pairs.length > 0 || !Number.isFinite(excess) ? '' : 'mm',
      message: `no way was found to put ${boards.join(', ')} together: in each of the ${directions} directions tried, joints ${joints.join(', ')} lock every group of boards to the rest; ${why}`,
      remedy: `turn the axes of these joints so that those that close together run one way (axis along a board), allow more clearance, or leave one out${shutOut ? '; or stop the grooves later, past the panel, or make the panel smaller' : ''}`,
      basis: MEASURED,
    };
  });
}

function sprung({ say }: Bench, step: GlueStep): Finding[] {
  return step.joints
    .filter(({ freedom }) => freedom === 'sprung')
    .map((entered): Finding => {
      const { joint, shift, excess, forceN = 0 } = entered;
      const [off, taken, sprung] = say.fines(shift, shift - excess, excess);
      return {
        code: 'joint-sprung',
        level: 'note',
        subjects: [joint, ...step.moving],
        measured: shift,
        limit: shift - excess,
        unit: 'mm',
        message: `in step ${step.id} the tenons of joint ${joint} start ${off} to one side of their mortises, and the clearances take up ${taken}: spring a board by ${sprung}, about ${forceN.toFixed(0)} N`,
        remedy:
          'push the board over by hand as the tenons enter, allow more clearance, or turn the axis of the joint',
        basis: 'elementary mechanics: a cantilever pushed aside at its end',
      };
    });
}

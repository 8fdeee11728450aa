import type { Bent, FrameLoad } from '../statics/index.js';
import type { Asked } from './asked.js';
import type { Push } from './framed.js';
import { type Margin, NOTHING, type Worked } from './margin.js';

/** What a frame does under loads, and of what joints it is. */
export interface Swaying {
  readonly as: string;
  readonly standing: (loads: readonly FrameLoad[]) => Bent;
}

/** How far a surface goes sideways: by the measured stiffness of a joint, or as a band. */
export function sway({ jointStiffness }: Asked, frames: readonly Swaying[], pushes: readonly Push[]): Worked {
  if (pushes.length === 0) return NOTHING;
  return {
    margins: frames.map(({ as, standing }): Margin => {
      const far = pushes.map(({ loads }) => {
        const { moves } = standing(loads);
        const [{ node, force }] = loads;
        return Math.abs(force[0] > 0 ? moves[node]![0] : moves[node]![1]);
      });
      const at = far.indexOf(Math.max(...far));
      const { surface, loads } = pushes[at]!;
      return {
        code: 'piece-sways',
        subjects: [surface.placed.board.id],
        what: `sway of ${surface.placed.board.name} when it is pushed sideways, ${as}`,
        figure: far[at]!,
        unit: 'mm',
        better: 'less',
        remedy: 'add a stretcher, or make the rails wider',
        at: loads[0].at,
      };
    }),
    notComputed:
      jointStiffness !== undefined
        ? []
        : [
            {
              what: 'sway',
              why: 'how stiff a joint is was not measured: it is told as a band, for 2 to 20 kN·m on a turn of one radian, from memory; measure a joint of yours and write joint-stiffness in the shop file',
            },
          ],
  };
}

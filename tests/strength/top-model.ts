import { assemble } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { frame, WORLD } from '../../src/frame/index.js';
import { choice, defineModel, length, type Model } from '../../src/model/index.js';

const MATERIAL = 'eastern white pine';

/** A wide board on two bearers that run across its grain, glued to them by tenons or held so that it can move. */
export const topModel = defineModel({
  name: 'bearer-top',
  title: 'Top on bearers',
  summary: 'A wide board on two bearers across its grain.',
  parameters: {
    width: length({ min: 60, max: 500, default: 300, help: 'Width of the top.' }),
    thickness: length({ min: 4, max: 40, default: 24, help: 'Thickness of the top.' }),
    hold: choice(['glue', 'buttons'], { default: 'buttons', help: 'What holds the top.' }),
    travel: length({ min: 0, max: 20, derived: 'what it moves', help: 'How far its buttons travel.' }),
    gap: length({ min: 30, max: 600, default: 400, help: 'Between the bearers.' }),
    use: choice(['none', 'step'], { default: 'none', help: 'What the top is for.' }),
  },
  build({ width, thickness, hold, travel, gap, use }, { wood } = { cutters: [6] }) {
    const [deep, high] = [40, 60];
    const bearer = (id: string, x: number) => ({
      board: makeBoard({ id, material: MATERIAL, blank: { length: width, width: high, thickness: deep } }),
      // its grain runs away from the person, its face looks right
      place: frame([x, 0, 0], [1, 0, 0], [0, 1, 0]),
    });
    const ids = ['left-bearer', 'right-bearer'];
    return assemble({
      name: 'bearer-top',
      title: 'Top on bearers',
      cutter: 6,
      boards: [
        {
          board: makeBoard({
            id: 'top',
            material: MATERIAL,
            blank: { length: 2 * deep + gap, width, thickness },
          }),
          place: { ...WORLD, origin: [0, 0, high] },
        },
        bearer('left-bearer', 0),
        bearer('right-bearer', deep + gap),
      ],
      ...(hold === 'glue'
        ? {
            joints: ids.map((a) => ({
              a,
              b: 'top',
              options: { cutter: 6, tenonWidth: 30, depths: { top: 10 }, ...wood },
            })),
          }
        : {
            fasten: ids.map((to) => ({
              held: 'top',
              to,
              by: 'button' as const,
              ...(travel !== undefined && { travel }),
            })),
            ...(wood?.season && { season: wood.season }),
          }),
      ...(use === 'step' && { uses: [{ board: 'top', use }] }),
    });
  },
}) as unknown as Model;

import { assemble } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { frame, WORLD } from '../../src/frame/index.js';
import { choice, defineModel, length, type Model } from '../../src/model/index.js';
import { speciesNames } from '../../src/tables/index.js';

/** A shelf between two uprights, for books. */
export const shelfModel = defineModel({
  name: 'book-shelf',
  title: 'Book shelf',
  summary: 'A shelf between two uprights.',
  parameters: {
    span: length({ min: 300, max: 2000, default: 700, help: 'Between the uprights.' }),
    thickness: length({ min: 15, max: 50, default: 24, help: 'Thickness of every board.' }),
    wood: choice(speciesNames, { default: 'eastern white pine', help: 'Species of every board.' }),
  },
  build({ span, thickness, wood: material }) {
    const upright = (id: string, x: number) => ({
      board: makeBoard({ id, material, blank: { length: 400, width: 220, thickness } }),
      place: frame([x, 220, 0], [1, 0, 0], [0, 0, 1]),
    });
    return assemble({
      name: 'book-shelf',
      title: 'Book shelf',
      cutter: 6,
      boards: [
        upright('left', 0),
        upright('right', thickness + span),
        {
          board: makeBoard({ id: 'shelf', material, blank: { length: span, width: 220, thickness } }),
          place: { ...WORLD, origin: [thickness, 0, 200] },
        },
      ],
      joints: ['left', 'right'].map((b) => ({
        a: 'shelf',
        b,
        options: { cutter: 6, tenons: 2, tenonWidth: 40 },
      })),
      uses: [{ board: 'shelf', use: 'shelf' }],
    });
  },
}) as unknown as Model;

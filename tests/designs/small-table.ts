import { assemble, type Design, type FastenRequest, type PlacedBoard } from '../../src/assembly/index.js';
import { makeBoard, withGroove } from '../../src/board/index.js';
import { frame, type Vec3 } from '../../src/frame/index.js';

/** Sizes of a sowing table, mm. */
const TABLE = {
  length: 800,
  width: 450,
  height: 500,
  leg: 45,
  apron: 90,
  thick: 22,
  top: 22,
  over: 40,
} as const;

/** What a test may do otherwise. */
export interface TableChoices {
  /** Buttons in a groove all along each apron, in slots of their own, or screws through flat rails below the top. */
  readonly by?: 'groove' | 'slots' | 'screws';
  readonly asked?: Partial<FastenRequest>;
}

/** Four legs, four aprons, a top that is held so that it can move. */
export function smallTable({ by = 'groove', asked = {} }: TableChoices = {}): Design {
  const { length, width, height, leg, apron, thick, top, over } = TABLE;
  const high = height - top;
  const [inX, inY] = [length - 2 * over, width - 2 * over];
  const legs = ['front-left', 'front-right', 'back-left', 'back-right'].map(
    (id, i): PlacedBoard => ({
      board: makeBoard({ id: `${id}-leg`, blank: { length: high, width: leg, thickness: leg } }),
      place: frame(
        [i % 2 === 0 ? over : length - over - leg, i < 2 ? over : width - over - leg, 0],
        [0, 1, 0],
        [0, 0, 1],
      ),
    }),
  );
  // a rail on edge, its reference face outside, its reference edge up; flat ones lie under the top
  const flat = by === 'screws';
  const size = (run: number) => ({
    length: run - 2 * leg,
    width: flat ? leg : apron,
    thickness: thick,
  });
  const apronAt = (id: string, run: number, origin: Vec3, x: Vec3, inside: Vec3): PlacedBoard => {
    const bare = makeBoard({ id, blank: size(run) });
    const board =
      by === 'groove'
        ? withGroove(bare, {
            face: 'opposite-face',
            from: 'reference-edge',
            distance: 10,
            width: 8,
            depth: 12,
            stop: { start: 25, end: 25 },
          })
        : bare;
    return { board, place: frame(origin, flat ? [0, 0, 1] : inside, x) };
  };
  const low = high - (flat ? thick : 0);
  const inset = (leg - thick) / 2;
  const side = flat ? 0 : inset;
  const aprons = [
    apronAt('front-apron', inX, [over + leg, over + side, low], [1, 0, 0], [0, 1, 0]),
    apronAt('back-apron', inX, [length - over - leg, width - over - side, low], [-1, 0, 0], [0, -1, 0]),
    apronAt('left-apron', inY, [over + side, width - over - leg, low], [0, -1, 0], [1, 0, 0]),
    apronAt('right-apron', inY, [length - over - side, over + leg, low], [0, 1, 0], [-1, 0, 0]),
  ];
  const joint = (a: string, b: string) => ({
    a: `${a}-apron`,
    b: `${b}-leg`,
    options: {
      cutter: 8,
      depths: { [`${b}-leg`]: flat ? 7 : 12 },
      ...(flat ? { turned: false } : { shiftAlong: 0 }),
    },
  });
  return assemble({
    name: 'table',
    title: 'Table',
    cutter: 8,
    boards: [
      ...legs,
      ...aprons,
      {
        board: makeBoard({ id: 'top', blank: { length, width, thickness: top } }),
        place: frame([0, 0, high], [0, 0, 1], [1, 0, 0]),
      },
    ],
    joints: [
      joint('front', 'front-left'),
      joint('front', 'front-right'),
      joint('back', 'back-left'),
      joint('back', 'back-right'),
      joint('left', 'front-left'),
      joint('left', 'back-left'),
      joint('right', 'front-right'),
      joint('right', 'back-right'),
    ],
    fasten: ['front', 'back', 'left', 'right'].map((id) => ({
      held: 'top',
      to: `${id}-apron`,
      by: by === 'screws' ? ('screw' as const) : ('button' as const),
      ...asked,
    })),
  });
}

import { assemble, type Design, type JoinRequest, type PlacedBoard } from '../../src/assembly/index.js';
import { type BoardSpec, makeBoard } from '../../src/board/index.js';
import { frame, WORLD } from '../../src/frame/index.js';
import type { JoinOptions } from '../../src/joinery/index.js';
import { polygon } from '../../src/profile/index.js';

type At = readonly [x: number, y: number, z: number];
type Size = readonly [length: number, width: number, thickness: number];

const board = (id: string, [length, width, thickness]: Size, more: Partial<BoardSpec> = {}) =>
  makeBoard({ id, material: 'European ash', blank: { length, width, thickness }, ...more });

/** Grain up; width to the right, thickness away. */
export const standing = (id: string, size: Size, at: At, more?: Partial<BoardSpec>): PlacedBoard => ({
  board: board(id, size, more),
  place: frame(at, [0, 1, 0], [0, 0, 1]),
});

/** Grain to the right, width up; thickness away from `at`. */
export const across = (id: string, size: Size, [x, y, z]: At): PlacedBoard => ({
  board: board(id, size),
  place: frame([x, y + size[2], z], [0, -1, 0], [1, 0, 0]),
});

/** Grain away, width up; thickness to the right. */
export const away = (id: string, size: Size, at: At): PlacedBoard => ({
  board: board(id, size),
  place: frame(at, [1, 0, 0], [0, 1, 0]),
});

/** Flat, grain to the right. */
export const lying = (id: string, size: Size, at: At, more?: Partial<BoardSpec>): PlacedBoard => ({
  board: board(id, size, more),
  place: { ...WORLD, origin: at },
});

export const design = (
  boards: readonly PlacedBoard[],
  joints: readonly JoinRequest[],
  name = 'crowd',
): Design => assemble({ name, title: name, cutter: 6, boards, joints });

export interface Table {
  readonly leg?: number;
  readonly apron?: readonly [width: number, thickness: number];
  readonly height?: number;
  readonly length?: number;
  readonly width?: number;
  /** From the leg's outside to the apron's. */
  readonly setback?: number;
  readonly top?: boolean;
  readonly options?: JoinOptions;
  /** Depth told for the mortises in the legs. */
  readonly depth?: number;
}

/** Four legs, four aprons flush with their tops, and a top on the legs if asked. */
export function table(of: Table = {}): Design {
  const { leg = 45, apron: [wide, thick] = [80, 20], height = 400, length = 600, width = 400 } = of;
  const setback = of.setback ?? (leg - thick) / 2;
  const { options = {} } = of;
  const corners = [
    ['front', 'left', 0, 0],
    ['front', 'right', length - leg, 0],
    ['back', 'left', 0, width - leg],
    ['back', 'right', length - leg, width - leg],
  ] as const;
  const up = height - wide;
  const boards = [
    ...corners.map(([depth, hand, x, y]) => standing(`${depth}-${hand}-leg`, [height, leg, leg], [x, y, 0])),
    across('front-apron', [length - 2 * leg, wide, thick], [leg, setback, up]),
    across('back-apron', [length - 2 * leg, wide, thick], [leg, width - setback - thick, up]),
    away('left-apron', [width - 2 * leg, wide, thick], [setback, leg, up]),
    away('right-apron', [width - 2 * leg, wide, thick], [length - setback - thick, leg, up]),
    ...(of.top ? [lying('top', [length + 40, width + 40, 25], [-20, -20, height])] : []),
  ];
  const into = (leg: string): JoinOptions =>
    of.depth === undefined ? options : { ...options, depths: { [leg]: of.depth } };
  const joints = corners.flatMap(([depth, hand]): JoinRequest[] => [
    { a: `${depth}-apron`, b: `${depth}-${hand}-leg`, options: into(`${depth}-${hand}-leg`) },
    { a: `${hand}-apron`, b: `${depth}-${hand}-leg`, options: into(`${depth}-${hand}-leg`) },
    ...(of.top ? [{ a: 'top', b: `${depth}-${hand}-leg` }] : []),
  ]);
  return design(boards, joints, 'table');
}

/** Two shelves opposite each other in one upright. */
export const shelves = ({
  thick = 20,
  deep = 300,
  options = {} as JoinOptions,
  swapped = false,
} = {}): Design => {
  const joints = ['left-shelf', 'right-shelf'].map((a) => ({ a, b: 'upright', options }));
  return design(
    [
      // its width runs away, its thickness to the right
      { board: board('upright', [600, deep, thick]), place: frame([0, 0, 0], [1, 0, 0], [0, 0, 1]) },
      lying('left-shelf', [400, deep, 20], [-400, -deep, 300]),
      lying('right-shelf', [400, deep, 20], [thick, -deep, 300]),
    ],
    swapped ? joints.toReversed() : joints,
    'shelves',
  );
};

/** A side whose arch leaves two feet, which stand on a plinth. */
export const arched = ({ foot = 60, foot2 = 60, thick = 25, options = {} as JoinOptions } = {}): Design => {
  const [length, width] = [300, 320];
  return design(
    [
      lying('plinth', [400, 120, 30], [0, 0, 0]),
      {
        board: board('side', [length, width, thick], {
          outline: polygon([
            { x: 0, y: 0 },
            { x: length, y: 0 },
            { x: length, y: width },
            { x: 0, y: width },
            { x: 0, y: width - foot2 },
            { x: 60, y: width - foot2 },
            { x: 60, y: foot },
            { x: 0, y: foot },
          ]),
        }),
        place: frame([30, 40, 30], [0, 1, 0], [0, 0, 1]),
      },
    ],
    [{ a: 'side', b: 'plinth', options }],
    'arched',
  );
};

import { assemble, type CaptiveRequest, type Design, type DesignSpec } from '../../src/assembly/index.js';
import { type Board, makeBoard, withGroove } from '../../src/board/index.js';
import { frame } from '../../src/frame/index.js';
import type { JoinOptions } from '../../src/joinery/index.js';

/** Sizes of the door of a potting shed's seed cupboard, mm. */
const DOOR = { height: 700, width: 450, rail: 70, foot: 90, thickness: 22 } as const;
const GROOVE = { width: 6, depth: 10 } as const;

/** What a test may do otherwise. */
export interface DoorChoices {
  /** Size of the panel less that of the room in its grooves, across the grain and along it. */
  readonly slack?: number;
  readonly endSlack?: number;
  /** Asked for in the design. */
  readonly asked?: Partial<CaptiveRequest>;
  readonly tongue?: number;
  /** Stiles grooved from end to end. */
  readonly through?: boolean;
  readonly grooveDepth?: number;
  /** How much farther the grooves of the stiles run past the panel. */
  readonly past?: number;
  /** Of every corner joint. */
  readonly joints?: JoinOptions;
}

/** A door of two stiles and two rails, loose tenons in its corners, a raised panel in grooves all round. */
export function panelledDoor(choices: DoorChoices = {}): Design {
  return assemble(doorSpec(choices));
}

export function doorSpec(choices: DoorChoices = {}): DesignSpec {
  const { slack = 6, endSlack = 2, asked = {}, tongue = 5.8, through = false, past = 0 } = choices;
  const { height, width, rail, foot, thickness } = DOOR;
  const depth = choices.grooveDepth ?? GROOVE.depth;
  const inEdge = (edge: string) => ({
    face: edge,
    from: 'reference-face',
    distance: (thickness - GROOVE.width) / 2,
    width: GROOVE.width,
    depth,
  });
  // past the corner of the panel by the cutter's radius
  const round = GROOVE.width / 2 + past;
  const stop = { start: foot - depth - round, end: rail - depth - round };
  const stile = (id: string, inner: string): Board =>
    withGroove(makeBoard({ id, blank: { length: height, width: rail, thickness } }), {
      ...inEdge(inner),
      ...(through ? {} : { stop }),
    });
  const between = width - 2 * rail;
  const cross = (id: string, wide: number): Board =>
    withGroove(
      makeBoard({ id, blank: { length: between, width: wide, thickness } }),
      inEdge('opposite-edge'),
    );
  const size = {
    length: height - rail - foot + 2 * depth - endSlack,
    width: between + 2 * depth - slack,
    thickness: 14,
  };
  const sides = [
    ['reference-edge', 'left'],
    ['opposite-edge', 'right'],
    ['reference-end', 'lower'],
    ['opposite-end', 'upper'],
  ] as const;
  const panel = sides.reduce(
    (board, [from, id]) =>
      withGroove(board, {
        id,
        face: 'opposite-face',
        from,
        distance: 0,
        width: 14,
        depth: size.thickness - tongue,
      }),
    makeBoard({ id: 'panel', blank: size }),
  );
  const up = (x: number) => frame([x, 0, 0], [0, 1, 0], [0, 0, 1]);
  const air = (GROOVE.width - tongue) / 2;
  return {
    name: 'door',
    title: 'Door',
    cutter: 8,
    boards: [
      { board: stile('left-stile', 'opposite-edge'), place: up(0) },
      { board: stile('right-stile', 'reference-edge'), place: up(width - rail) },
      { board: cross('top-rail', rail), place: frame([rail, 0, height], [0, 1, 0], [1, 0, 0]) },
      { board: cross('bottom-rail', foot), place: frame([rail, thickness, 0], [0, -1, 0], [1, 0, 0]) },
      {
        board: panel,
        place: frame(
          [rail - depth + slack / 2, (thickness - GROOVE.width) / 2 + air, foot - depth + endSlack / 2],
          [0, 1, 0],
          [0, 0, 1],
        ),
      },
    ],
    joints: ['top-rail', 'bottom-rail'].flatMap((a) =>
      ['left-stile', 'right-stile'].map((b) => ({ a, b, options: { cutter: 8, ...choices.joints } })),
    ),
    panels: [
      {
        panel: 'panel',
        in: ['left-stile', 'right-stile', 'top-rail', 'bottom-rail'],
        ...asked,
      },
    ],
  };
}

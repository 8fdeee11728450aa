import { assemble, type Design, type PlacedBoard } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { add, frame, scale, type Vec3, WORLD } from '../../src/frame/index.js';
import type { JoinOptions } from '../../src/joinery/index.js';
import { polygon } from '../../src/profile/index.js';

const RAD = Math.PI / 180;

/** A leg under a seat: where its middle stands from the seat's reference end and edge, and how far it is turned; mm, degrees. */
export interface TurnedLeg {
  readonly at: readonly [x: number, y: number];
  readonly turnDeg: number;
}

/** A plain seat on legs that are turned against its edges. mm. */
export interface TurnedSeat {
  readonly legs: readonly TurnedLeg[];
  readonly length?: number;
  readonly width?: number;
  readonly thickness?: number;
  /** Section of each leg, along and across its mortise. */
  readonly section?: readonly [number, number];
  readonly options?: JoinOptions;
}

const HEIGHT = 250;

/** The seat lies on its legs, its reference face down. */
export function turnedSeat(of: TurnedSeat): Design {
  const { length = 420, width = 340, thickness = 30, section = [60, 36], options = {} } = of;
  const seat: PlacedBoard = {
    board: makeBoard({ id: 'seat', blank: { length, width, thickness } }),
    place: { ...WORLD, origin: [0, 0, HEIGHT] },
  };
  const legs = of.legs.map(({ at, turnDeg }, i): PlacedBoard => {
    const [w, t] = section;
    const along: Vec3 = [Math.cos(turnDeg * RAD), Math.sin(turnDeg * RAD), 0];
    const across: Vec3 = [-along[1], along[0], 0];
    // x up, y along the mortise, z across it
    const corner = add([at[0], at[1], 0], add(scale(along, -w / 2), scale(across, -t / 2)));
    return {
      board: makeBoard({ id: `leg-${i + 1}`, blank: { length: HEIGHT, width: w, thickness: t } }),
      place: frame(corner, across, [0, 0, 1]),
    };
  });
  return assemble({
    name: 'turned-seat',
    title: 'Turned seat',
    cutter: options.cutter ?? 10,
    boards: [seat, ...legs],
    joints: legs.map(({ board }) => ({
      a: 'seat',
      b: board.id,
      options: { cutter: 10, tenons: 1, ...options },
    })),
  });
}

/** A frame with mitred corners; the rails' ends are cut as outlines or as bevels. mm. */
export interface MitredFrame {
  readonly length?: number;
  readonly width?: number;
  readonly railWidth?: number;
  readonly thickness?: number;
  readonly ends?: 'outline' | 'bevel';
  readonly options?: JoinOptions;
}

/** Four rails round a rectangle, their reference edges outside, mitred from corner to corner at 45°. */
export function mitredFrame(of: MitredFrame = {}): Design {
  const { length = 500, width = 360, railWidth = 70, thickness = 30, ends = 'outline', options = {} } = of;
  const corners: readonly Vec3[] = [
    [0, 0, 0],
    [length, 0, 0],
    [length, width, 0],
    [0, width, 0],
  ];
  const boards = corners.map((corner, i): PlacedBoard => {
    const next = corners[(i + 1) % 4]!;
    const run = Math.hypot(next[0] - corner[0], next[1] - corner[1]);
    const along: Vec3 = [(next[0] - corner[0]) / run, (next[1] - corner[1]) / run, 0];
    const id = ['front-rail', 'right-rail', 'back-rail', 'left-rail'][i]!;
    const blank = { length: run, width: railWidth, thickness };
    const board =
      ends === 'outline'
        ? makeBoard({
            id,
            blank,
            outline: polygon([
              { x: 0, y: 0 },
              { x: run, y: 0 },
              { x: run - railWidth, y: railWidth },
              { x: railWidth, y: railWidth },
            ]),
          })
        : makeBoard({
            id,
            blank,
            bevels: [
              { id: 'start-mitre', point: [0, 0, 0], normal: [-Math.SQRT1_2, Math.SQRT1_2, 0] },
              { id: 'end-mitre', point: [run, 0, 0], normal: [Math.SQRT1_2, Math.SQRT1_2, 0] },
            ],
          });
    return { board, place: frame(corner, [0, 0, 1], along) };
  });
  return assemble({
    name: 'mitred-frame',
    title: 'Mitred frame',
    cutter: options.cutter ?? 8,
    boards,
    joints: boards.map(({ board }, i) => ({
      a: board.id,
      b: boards[(i + 1) % 4]!.board.id,
      options: { cutter: 8, tenons: 1, ...options },
    })),
  });
}

/** A ring of equal rails, as many as it has sides, mitred at half the angle between two of them. mm. */
export interface MitredRing {
  readonly sides: number;
  /** Long point to long point. */
  readonly side: number;
  readonly railWidth: number;
  readonly thickness: number;
  readonly options?: JoinOptions;
}

export function mitredRing({ sides, side, railWidth, thickness, options = {} }: MitredRing): Design {
  const turn = (2 * Math.PI) / sides;
  const radius = side / 2 / Math.sin(turn / 2);
  const lost = railWidth * Math.tan(turn / 2);
  const boards = Array.from({ length: sides }, (_, i): PlacedBoard => {
    const at = (n: number): Vec3 => [radius * Math.cos(n * turn), radius * Math.sin(n * turn), 0];
    const [from, to] = [at(i), at(i + 1)];
    const along: Vec3 = [(to[0] - from[0]) / side, (to[1] - from[1]) / side, 0];
    const board = makeBoard({
      id: `rail-${i + 1}`,
      blank: { length: side, width: railWidth, thickness },
      outline: polygon([
        { x: 0, y: 0 },
        { x: side, y: 0 },
        { x: side - lost, y: railWidth },
        { x: lost, y: railWidth },
      ]),
    });
    return { board, place: frame(from, [0, 0, 1], along) };
  });
  return assemble({
    name: 'ring',
    title: 'Ring',
    cutter: options.cutter ?? 8,
    boards,
    joints: boards.map(({ board }, i) => ({
      a: board.id,
      b: boards[(i + 1) % sides]!.board.id,
      options: { cutter: 8, tenons: 1, ...options },
    })),
  });
}

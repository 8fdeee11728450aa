import { type Board, type BoardSpec, makeBoard } from '../../src/board/index.js';
import { JoinError } from '../../src/errors.js';
import { type Frame, frame, pointOut, type Vec3, WORLD } from '../../src/frame/index.js';
import type { Joinable, Joined } from '../../src/joinery/index.js';

/** A shelf that lies on its reference face, 300 along x, 100 across, 3/4 in thick unless asked. */
export const shelf = ({ thickness = 19.05, length = 300, width = 100 } = {}): Joinable => ({
  board: makeBoard({ id: 'shelf', blank: { length, width, thickness } }),
  place: WORLD,
});

/** An upright that stands on the shelf with its reference end; its width runs along x, its thickness along y. */
export const upright = (
  on: Joinable,
  { thickness = 19.05, width = 80, length = 200, at = [100, 40], up = 0 } = {},
  more: Partial<BoardSpec> = {},
): Joinable => ({
  board: makeBoard({ id: 'upright', blank: { length, width, thickness }, ...more }),
  place: frame([at[0]!, at[1]!, on.board.blank.thickness + up], [0, 1, 0], [0, 0, 1]),
});

/**
 * A leg raked by rho (radians) about y, with a tread lying on its bevelled end; the seat is level at z = 0.
 *
 * The leg's thickness is across x, its width along y; it leans outwards, towards +x at the foot.
 */
export function rakedPair(
  rho: number,
  { thickness = 28, width = 200, tread = 28 } = {},
): { readonly tread: Joinable; readonly leg: Joinable } {
  const length = 300;
  const normal: Vec3 = [Math.cos(rho), 0, -Math.sin(rho)];
  const leg: Board = makeBoard({
    id: 'leg',
    blank: { length, width, thickness },
    bevels: [{ id: 'top', point: [length, 0, thickness], normal }],
  });
  const up: Vec3 = [-Math.sin(rho), 0, Math.cos(rho)];
  const inwards: Vec3 = [-Math.cos(rho), 0, -Math.sin(rho)];
  const upright: Frame = frame([0, 0, 0], inwards, up);
  const long = pointOut(upright, [length, 0, thickness]);
  return {
    leg: { board: leg, place: { ...upright, origin: [-long[0], -long[1], -long[2]] } },
    tread: {
      board: makeBoard({ id: 'tread', blank: { length: 300, width: width + 40, thickness: tread } }),
      place: { ...WORLD, origin: [-150, -20, 0] },
    },
  };
}

/** The two mortises of a joint's nth tenon, and the tenon. */
export const nth = ({ a, b, joint }: Joined, n = 0) => {
  const tenon = joint.tenons[n]!;
  const of = (board: Board) => board.mortises.find((mortise) => mortise.tenon === tenon.id)!;
  return { tenon, inA: of(a), inB: of(b) };
};

/** The refusal of a joint. @throws Error when it was not refused, and any other error */
export function refusal(join: () => unknown): JoinError {
  try {
    join();
  } catch (error) {
    if (error instanceof JoinError) return error;
    throw error;
  }
  throw new Error('it was not refused');
}

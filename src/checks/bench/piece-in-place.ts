import type { Design, Hardware, PlacedBoard } from '../../assembly/index.js';
import { add, type Frame, pointOut, subtract, type Vec3 } from '../../frame/index.js';
import { once } from '../../once.js';
import { bounds } from '../../profile/index.js';
import type { JigAtHand } from '../../shop/index.js';
import {
  type Body,
  type Box,
  box,
  facetsBox,
  gap,
  type Kernel,
  type Outside,
  outsideIn,
  outsideOf,
  parted,
  shared,
  solidsOf,
  standingIn,
  stockOf,
} from '../../solid/index.js';
import { BOXES_TOUCH, COPLANAR } from '../../tolerances.js';

/** A piece of a set-up, with the room it takes known before its body is made; moved without being made again. */
export interface Piece {
  readonly name: string;
  readonly box: Box;
  /** The kernel owns it. */
  readonly body: () => Body;
  /** Its corners and faces, where its body is. */
  readonly outside: () => Outside;
  /** How far it stands from where its body and its box are. */
  readonly shift: Vec3;
}

const HERE: Vec3 = [0, 0, 0];

/** A piece whose body is there. */
export const pieceOf = (name: string, body: Body): Piece => ({
  name,
  box: box(body),
  body: () => body,
  outside: () => outsideOf(body),
  shift: HERE,
});

/** A piece whose body stands in a frame, as it is written in the frame around it; the body there is made when it is asked for. */
export function standingPiece(kernel: Kernel, name: string, own: Body, place: Frame): Piece {
  const outside = outsideIn(outsideOf(own), place);
  return {
    name,
    box: facetsBox(outside.corners),
    body: once(() => kernel.keep(standingIn(own, place))),
    outside: () => outside,
    shift: HERE,
  };
}

/** A piece moved on. */
export const pushed = (piece: Piece, by: Vec3): Piece => ({ ...piece, shift: add(piece.shift, by) });

/** Volume two pieces share, mm³, where it is more than a film; pieces parted by their boxes or by a plane never reach the kernel. */
export function sharedBy(one: Piece, other: Piece): number {
  const apart = [0, 1, 2].some(
    (i) =>
      one.box.min[i]! + one.shift[i]! > other.box.max[i]! + other.shift[i]! - BOXES_TOUCH ||
      other.box.min[i]! + other.shift[i]! > one.box.max[i]! + one.shift[i]! - BOXES_TOUCH,
  );
  if (apart || parted(one.outside(), other.outside(), subtract(one.shift, other.shift))) return 0;
  return withBoth(one, other, (a, b) => {
    const { volume, thickness } = shared(a, b);
    // long faces that bear on each other share a film: the last digits of an angle, over their length
    return thickness < COPLANAR ? 0 : volume;
  });
}

/** The gap between two pieces, looked for no farther than `reach`, mm. */
export const gapBetween = (one: Piece, other: Piece, reach: number): number =>
  withBoth(one, other, (a, b) => gap(a, b, reach));

function withBoth(one: Piece, other: Piece, measure: (a: Body, b: Body) => number): number {
  const by = add(one.shift, [-other.shift[0], -other.shift[1], -other.shift[2]]);
  if (by.every((part) => part === 0)) return measure(one.body(), other.body());
  const moved = one.body().translate([...by]);
  const found = measure(moved, other.body());
  moved.delete();
  return found;
}

/** A jig serves many designs: what its pieces look like is worked out once. */
const jigOutsides = new WeakMap<Design, Map<string, Outside>>();

/** Every piece of a jig but its cutter, each made when it is first asked for: most never come near the work. */
export function jigPieces(kernel: Kernel, { design }: JigAtHand): ReadonlyMap<string, Piece> {
  const outsides = jigOutsides.get(design) ?? new Map<string, Outside>();
  jigOutsides.set(design, outsides);
  const seen = (name: string, body: () => Body): Outside => {
    const outside = outsides.get(name) ?? outsideOf(body());
    outsides.set(name, outside);
    return outside;
  };
  const only = { ...design, boards: [], joints: [], hardware: [] };
  return new Map([
    ...design.boards.map((placed): [string, Piece] => {
      const name = placed.board.id;
      // its holes and slots are left out: they only hold bolts and screws
      const body = once(() => kernel.keep(standingIn(stockOf(kernel, placed.board), placed.place)));
      return [name, { name, box: boardBox(placed), body, outside: () => seen(name, body), shift: HERE }];
    }),
    ...design.hardware
      .filter(({ kind }) => kind !== 'cutter')
      .map((piece): [string, Piece] => {
        const name = piece.id;
        const body = once(() => solidsOf(kernel, { ...only, hardware: [piece] }).hardware.get(name)!.body);
        return [name, { name, box: hardwareBox(piece), body, outside: () => seen(name, body), shift: HERE }];
      }),
  ]);
}

const boardBox = ({ board, place }: PlacedBoard): Box => {
  const { minX, minY, maxX, maxY } = bounds(board.outline);
  return boxAround(
    [0, board.blank.thickness].flatMap((z) =>
      [minX, maxX].flatMap((x) => [minY, maxY].map((y) => pointOut(place, [x, y, z]))),
    ),
  );
};

const hardwareBox = ({ stages, place }: Hardware): Box =>
  boxAround(
    stages.flatMap(({ outline, from, to, endScale = 1 }) => {
      const { minX, minY, maxX, maxY } = bounds(outline);
      return [
        { z: from, by: 1 },
        { z: to, by: endScale },
      ].flatMap(({ z, by }) =>
        [minX, maxX].flatMap((x) => [minY, maxY].map((y) => pointOut(place, [x * by, y * by, z]))),
      );
    }),
  );

function boxAround(points: readonly Vec3[]): Box {
  const along = (i: 0 | 1 | 2, of: typeof Math.min) => of(...points.map((point) => point[i]));
  return {
    min: [along(0, Math.min), along(1, Math.min), along(2, Math.min)],
    max: [along(0, Math.max), along(1, Math.max), along(2, Math.max)],
  };
}

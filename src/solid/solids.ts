import type { Design, Hardware, PlacedBoard } from '../assembly/index.js';
import type { Board } from '../board/index.js';
import type { Joint, MitredEnd, Tenon } from '../joinery/index.js';
import { obround, regionOf, subtractRegion, unite } from '../profile/index.js';
import { boardBody, stockBody } from './board-body.js';
import { type Body, type Kernel, matrix, prism } from './kernel.js';

/** A board's bodies. */
export interface BoardSolid extends PlacedBoard {
  readonly kind: 'board';
  readonly id: string;
  /** Before mortises, holes, slots and grooves; board frame. */
  readonly stock: Body;
  /** Finished; board frame. */
  readonly own: Body;
  /** Finished; assembly frame. */
  readonly body: Body;
}

export interface TenonSolid {
  readonly kind: 'tenon';
  readonly id: string;
  readonly joint: Joint;
  readonly tenon: Tenon;
  /** Tenon frame; tenons of one size share it. */
  readonly own: Body;
  /** Assembly frame. */
  readonly body: Body;
}

export interface HardwareSolid {
  readonly kind: 'hardware';
  readonly id: string;
  readonly hardware: Hardware;
  /** Assembly frame. */
  readonly body: Body;
}

export type Solid = BoardSolid | TenonSolid | HardwareSolid;

/** Every body of a design, made once and shared by checks and files. */
export interface Solids {
  readonly kernel: Kernel;
  readonly design: Design;
  readonly boards: ReadonlyMap<string, BoardSolid>;
  readonly tenons: ReadonlyMap<string, TenonSolid>;
  readonly hardware: ReadonlyMap<string, HardwareSolid>;
}

/** Makes every body of a design; the kernel owns them. */
export function solidsOf(kernel: Kernel, design: Design): Solids {
  const { keep } = kernel;
  const boards = design.boards.map((placed): [string, BoardSolid] => {
    const id = placed.board.id;
    const stock = stockOf(kernel, placed.board);
    const own = boardOf(kernel, placed.board);
    const body = keep(own.transform(matrix(placed.place)));
    return [id, { kind: 'board', id, ...placed, stock, own, body }];
  });
  const tenons = design.joints.flatMap((joint) =>
    joint.tenons.map((tenon): [string, TenonSolid] => {
      const own = tenonBody(kernel, tenon);
      const body = keep(own.transform(matrix(tenon.place)));
      return [tenon.id, { kind: 'tenon', id: tenon.id, joint, tenon, own, body }];
    }),
  );
  const hardware = design.hardware.map((piece): [string, HardwareSolid] => {
    const body = keep(hardwareBody(kernel, piece));
    return [piece.id, { kind: 'hardware', id: piece.id, hardware: piece, body }];
  });
  return {
    kernel,
    design,
    boards: new Map(boards),
    tenons: new Map(tenons),
    hardware: new Map(hardware),
  };
}

/** The {@link stockBody} of a board, made once for all of one shape. The kernel owns it. */
export const stockOf = (kernel: Kernel, board: Board): Body => {
  const { blank, outline, openings, bevels } = board;
  const shape = `stock ${unnamed({ blank, outline, openings, bevels })}`;
  return kernel.shape(shape, () => stockBody(kernel, board));
};

/** The {@link boardBody} of a board, in the same way. */
export const boardOf = (kernel: Kernel, board: Board): Body =>
  kernel.shape(`board ${unnamed(board)}`, () => boardBody(kernel, board, stockOf(kernel, board)));

/** What a board is cut to, in words: names are left out. */
const unnamed = (board: Partial<Board>): string =>
  JSON.stringify(board, (key, value: unknown) => (NAMES.has(key) ? undefined : value));

const NAMES: ReadonlySet<string> = new Set(['id', 'name', 'material', 'face', 'joint', 'tenon']);

/** Every body of the design in one list: boards, tenons, hardware. */
export const allSolids = (solids: Solids): readonly Solid[] => [
  ...solids.boards.values(),
  ...solids.tenons.values(),
  ...solids.hardware.values(),
];

/**
 * A tenon in its own frame, made once for all of one size: edges rounded with half its thickness, ends square or mitred. The
 * kernel owns it.
 */
export function tenonBody(kernel: Kernel, { id: _, place: __, ...sizes }: Tenon): Body {
  const { width, thickness, intoA, intoB, mitreA, mitreB } = sizes;
  return kernel.shape(`tenon ${JSON.stringify(sizes)}`, () => {
    const outline = obround({ length: width, width: thickness });
    const square = prism(kernel, regionOf(outline), -intoA, intoB, undefined);
    const half = mitredOff(square, thickness, intoA, mitreA, -1);
    return mitredOff(half, thickness, intoB, mitreB, 1);
  });
}

/** Saws one end of a tenon to its mitre, from the long point at one cheek back to the other. Takes the body over. */
function mitredOff(
  body: Body,
  thickness: number,
  into: number,
  mitre: MitredEnd | undefined,
  end: 1 | -1,
): Body {
  if (!mitre) return body;
  const slope = Math.tan((mitre.angleDeg * Math.PI) / 180);
  const steep = Math.hypot(slope, 1);
  // what is kept lies on the side the normal points to
  const left = body.trimByPlane(
    [0, (mitre.long * slope) / steep, -end / steep],
    -(into - (thickness / 2) * slope) / steep,
  );
  body.delete();
  return left;
}

/** A stack of stages, united. The caller owns it. */
function hardwareBody(kernel: Kernel, piece: Hardware): Body {
  const parts = piece.stages.map((stage) => {
    const bores = stage.bores ?? [];
    const wood = regionOf(stage.outline);
    const region =
      bores.length === 0 ? wood : subtractRegion(wood, unite(bores.flatMap((bore) => regionOf(bore))));
    return prism(kernel, region, stage.from, stage.to, piece.place, stage.endScale);
  });
  if (parts.length === 1) return parts[0]!;
  const whole = kernel.wasm.Manifold.union(parts);
  for (const part of parts) part.delete();
  return whole;
}

import { assemble, type Design, type DesignSpec } from '../../src/assembly/index.js';
import type { Board, Mortise } from '../../src/board/index.js';
import { benchOf, type Finding, runChecks } from '../../src/checks/index.js';
import { type Frame, frame, frameOut, type Vec3 } from '../../src/frame/index.js';
import type { JoinOptions, Tenon } from '../../src/joinery/index.js';
import { speaker } from '../../src/length/index.js';
import {
  measureJoints,
  type Solids,
  solidsOf,
  startKernel,
  type TenonMeasure,
} from '../../src/solid/index.js';
import { shelf, upright } from '../joinery/on-the-bench.js';

/**
 * An upright 40 × 120 on a shelf 40 thick, joined with one tenon by a cutter of 14: every figure is sound. Of plywood, so that
 * no season moves it.
 */
export function sample(options: JoinOptions = {}, more: Partial<DesignSpec> = {}): Design {
  const one = shelf({ thickness: 40, length: 400, width: 140 });
  const two = upright(one, { thickness: 40, width: 120, length: 300, at: [120, 50] });
  return assemble({
    name: 'sample',
    title: 'Sample',
    cutter: 14,
    boards: [one, two].map(({ board, place }) => ({ board: { ...board, material: 'birch plywood' }, place })),
    joints: [{ a: 'shelf', b: 'upright', options: { cutter: 14, tenons: 1, ...options } }],
    ...more,
  });
}

/** Looks at a design's solids and frees them. */
export async function onSolids<T>(design: Design, look: (solids: Solids) => T): Promise<T> {
  const kernel = await startKernel();
  try {
    return look(solidsOf(kernel, design));
  } finally {
    kernel.dispose();
  }
}

export const findings = (design: Design, bush?: number): Promise<readonly Finding[]> =>
  onSolids(design, (solids) => runChecks(benchOf(solids, speaker('mm'), bush)));

export const measured = (design: Design): Promise<readonly TenonMeasure[]> => onSolids(design, measureJoints);

/** Codes of what is found, each once, in order of the alphabet. */
export const codes = async (design: Design, bush?: number): Promise<readonly string[]> =>
  [...new Set((await findings(design, bush)).map(({ code }) => code))].toSorted();

/** The design with a fault in its tenons, its mortises or its boards that no joint would make. */
export const withTenons = (design: Design, fault: (tenon: Tenon) => Tenon): Design => ({
  ...design,
  joints: design.joints.map((joint) => ({ ...joint, tenons: joint.tenons.map(fault) })),
});

export const withBoard = (design: Design, id: string, fault: (board: Board) => Board): Design => ({
  ...design,
  boards: design.boards.map((placed) =>
    placed.board.id === id ? { ...placed, board: fault(placed.board) } : placed,
  ),
});

export const withMortises = (design: Design, id: string, fault: (mortise: Mortise) => Mortise): Design =>
  withBoard(design, id, (board) => ({ ...board, mortises: board.mortises.map(fault) }));

export const withPlace = (design: Design, id: string, fault: (place: Frame) => Frame): Design => ({
  ...design,
  boards: design.boards.map((placed) =>
    placed.board.id === id ? { ...placed, place: fault(placed.place) } : placed,
  ),
});

/** A frame moved along its own axes and turned about its own z. */
export function nudged(at: Frame, by: Vec3, turnDeg = 0): Frame {
  const turn = (turnDeg * Math.PI) / 180;
  return frameOut(at, frame(by, [0, 0, 1], [Math.cos(turn), Math.sin(turn), 0]));
}

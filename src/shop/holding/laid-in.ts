import type { Design } from '../../assembly/index.js';
import type { Board, Face } from '../../board/index.js';
import { SAME_SETTING } from '../../tolerances.js';
import type { Holding, RailBearing } from './holding.js';
import type { Horn } from './horn.js';
import { hornsOf } from './horns.js';
import type { StageName } from './stage.js';
import { type SeenStage, type Work, workAtStage } from './work-at-stage.js';

/** A holding as it lies in the jig, turned end for end where that makes it share a setting. */
export interface LaidIn {
  readonly holding: Holding;
  readonly board: Board;
  readonly work: Work;
  readonly mouth: Face;
  readonly near: RailBearing | undefined;
  readonly far: RailBearing | undefined;
  readonly horns: readonly Horn[];
}

/**
 * @param stageOf the board at a stage, with its faces
 * @returns undefined when the stage has no mouth for the mortise
 */
export function laidIn(
  holding: Holding,
  { design, holdings }: { readonly design: Design; readonly holdings: readonly Holding[] },
  stageOf: (board: Board, name: StageName) => SeenStage,
): LaidIn | undefined {
  const board = design.boards.find((placed) => placed.board.id === holding.board)?.board;
  if (!board) return undefined;
  const at = stageOf(board, holding.stage);
  const work = workAtStage(at, holding.mortise);
  const mouth = at.faces.find(({ id }) => id === holding.mortise.face);
  if (!work || !mouth) return undefined;
  const turned = isTurned(holding);
  const [near, far] = turned
    ? [turnedRound(holding.far), turnedRound(holding.near)]
    : [holding.near, holding.far];
  return { holding, board, work, mouth, near, far, horns: hornsOf(board.id, holdings) };
}

/** The reference face goes against the near rail, a single rail is the near one, a guide board lies on the far side. */
function isTurned({ near, far, guide }: Holding): boolean {
  if (guide) return guide.side === 'near';
  if (!near || !far) return near === undefined && far !== undefined;
  const isReference = (rail: RailBearing) => rail.face.startsWith('reference-');
  if (isReference(near) !== isReference(far)) return isReference(far);
  return far.toRail < near.toRail - SAME_SETTING;
}

function turnedRound(rail: RailBearing | undefined): RailBearing | undefined {
  if (!rail?.wedge) return rail;
  const { thickEnd } = rail.wedge;
  const end = thickEnd === 'start' ? 'end' : thickEnd === 'end' ? 'start' : thickEnd;
  return { ...rail, wedge: { ...rail.wedge, thickEnd: end } };
}

/** Whether two mortises are cut without moving anything but the work. */
export function sameSetting(a: LaidIn, b: LaidIn): boolean {
  const [p, q] = [a.holding, b.holding];
  const near = (x: number | undefined, y: number | undefined) =>
    x === y || (x !== undefined && y !== undefined && Math.abs(x - y) < SAME_SETTING);
  const rail = (x: RailBearing | undefined, y: RailBearing | undefined) =>
    near(x?.toRail, y?.toRail) &&
    near(x?.toFace, y?.toFace) &&
    x?.wedge?.aid === y?.wedge?.aid &&
    x?.wedge?.thickEnd === y?.wedge?.thickEnd;
  return (
    p.stage === q.stage &&
    p.way === q.way &&
    near(p.mortise.width, q.mortise.width) &&
    near(p.mortise.length, q.mortise.length) &&
    near(p.mortise.depth, q.mortise.depth) &&
    near(p.stopDistance, q.stopDistance) &&
    near(p.guide?.offset, q.guide?.offset) &&
    p.window?.aid === q.window?.aid &&
    (p.marked === undefined) === (q.marked === undefined) &&
    rail(a.near, b.near) &&
    rail(a.far, b.far)
  );
}

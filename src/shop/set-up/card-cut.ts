import type { FaceId } from '../../board/index.js';
import type { Hand } from '../boards/index.js';
import type { Holding, Horn, LaidIn, SeenFace, Work } from '../holding/index.js';
import type { CardCut } from './setup-card.js';

/** One mortise as a row of its card. */
export function cardCut(
  { holding, board, work, near, far, horns }: LaidIn,
  hands: ReadonlyMap<string, Hand>,
): CardCut {
  const { mortise, guide, across } = holding;
  const along = measuredFrom(holding, work, horns);
  const half = mortise.length / 2;
  const acrossHorn = across ? hornBeyond(across.from, holding, horns) : 0;
  return {
    board: board.id,
    hand: hands.get(board.id),
    mortise: mortise.id,
    face: mortise.face,
    nearFace: near?.face,
    farFace: far?.face,
    from: along.face,
    outOfSquareDeg: along.outOfSquareDeg,
    horn: along.horn,
    centre: along.centre,
    ends: [along.centre - half, along.centre + half],
    across: across && { from: across.from, horn: acrossHorn, centre: across.centre + acrossHorn },
    guideEdge:
      guide &&
      across &&
      across.centre + acrossHorn + (guide.side === across.side ? -guide.offset : guide.offset),
  };
}

/**
 * The face the marks are measured from. Where a horn stands beyond it the rule starts at the horn's end, which is there; of
 * two ends with horns the nearer is taken.
 */
function measuredFrom(holding: Holding, work: Work, horns: readonly Horn[]) {
  const beyond = (id: FaceId) => hornBeyond(id, holding, horns);
  const given = { face: holding.along.from, centre: holding.along.centre + beyond(holding.along.from) };
  const others = work.faces.flatMap((face) =>
    beyond(given.face) > 0 && beyond(face.id) > 0 && face.id !== given.face
      ? [{ face: face.id, centre: Math.abs(face.offset / face.normal[0]) + beyond(face.id) }]
      : [],
  );
  const chosen = [given, ...others].toSorted((a, b) => a.centre - b.centre)[0]!;
  const square = Math.abs(faceNamed(work, chosen.face)?.normal[0] ?? 1);
  const deg = (Math.acos(Math.min(square, 1)) * 180) / Math.PI;
  return { ...chosen, horn: beyond(chosen.face), outOfSquareDeg: deg < 1e-6 ? 0 : deg };
}

const faceNamed = (work: Work, id: string): SeenFace | undefined => work.faces.find((face) => face.id === id);

/** Horns are on the milled blank only. */
const hornBeyond = (face: FaceId, { stage }: Holding, horns: readonly Horn[]): number =>
  stage === 'milled blank' ? (horns.find(({ end }) => end === face)?.length ?? 0) : 0;

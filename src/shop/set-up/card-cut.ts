import type { FaceId } from '../../board/index.js';
import { dot, type Vec2, type Vec3 } from '../../frame/index.js';
import { SAME_DIRECTION } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';
import type { Hand } from '../boards/index.js';
import {
  type Holding,
  type Horn,
  hornedMouth,
  type LaidIn,
  type MarkedLines,
  markedOut,
  type SeenFace,
  type Work,
} from '../holding/index.js';
import { edgeGuideFor } from './guide-figures.js';
import type { CardCut, MarkedOut } from './setup-card.js';

/** One mortise as a row of its card. */
export function cardCut(laid: LaidIn, hands: ReadonlyMap<string, Hand>, shop: Shop): CardCut {
  const { holding, board, work, near, far, horns } = laid;
  const { mortise, guide, across } = holding;
  const lines = holding.marked && markedOut(work, holding, hornsAt(holding, horns));
  const along = lines ? alongLine(lines) : measuredFrom(holding, work, horns);
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
    edgeGuide: edgeGuideFor(laid, shop, (face) => hornBeyond(face, holding, horns)),
    marked: lines && drawnOut(laid, lines),
  };
}

/** From the first mark of the centre line, along it. */
const alongLine = ({ along, marked: { centreLine } }: MarkedLines) => ({
  face: along.from,
  centre: along.centre,
  horn: centreLine[0].onHorn,
  outOfSquareDeg: 0,
});

function drawnOut({ holding, work, horns }: LaidIn, { marked, ...lines }: MarkedLines): MarkedOut {
  const { at } = holding.mortise;
  // the grain lies to the right; on an end, where it stands up, the width does
  const right: Vec3 = Math.abs(at.z[0]) < GRAIN_STANDS ? [1, 0, 0] : [0, 1, 0];
  const [c, s] = [dot(at.x, right), -dot(at.y, right)];
  const long = Math.hypot(c, s);
  const turned = ([x, y]: Vec2): Vec2 => [(c * x - s * y) / long, (s * x + c * y) / long];
  const run = ([p, q]: readonly [Vec2, Vec2]) => [turned(p), turned(q)] as const;
  return {
    turnDeg: (Math.atan2(Math.abs(s), Math.abs(c)) * 180) / Math.PI,
    centreLine: marked.centreLine,
    guideEdge: marked.guideEdge,
    drawn: {
      mouth: hornedMouth(work, hornsAt(holding, horns)).map((loop) => loop.map(turned)),
      along: turned([1, 0]),
      centreLine: run(lines.centreLine),
      guideEdge: lines.guideEdge && run(lines.guideEdge),
    },
  };
}

/** On a face this square to the grain (its cosine) the grain has no direction. */
const GRAIN_STANDS = 0.9;

/**
 * The face the marks are measured from. Where a horn stands beyond it the rule starts at the horn's end, which is there; of
 * two ends with horns the nearer is taken.
 */
function measuredFrom(holding: Holding, work: Work, horns: readonly Horn[]) {
  const beyond = (id: FaceId) => hornBeyond(id, holding, horns);
  // along the centre line a horn is longer than along the grain
  const skew = Math.abs(faceNamed(work, holding.along.from)?.normal[0] ?? 1);
  const given = {
    face: holding.along.from,
    centre: holding.along.centre + beyond(holding.along.from) / skew,
  };
  const others = work.faces.flatMap((face) =>
    beyond(given.face) > 0 && beyond(face.id) > 0 && face.id !== given.face
      ? [{ face: face.id, centre: (Math.abs(face.offset) + beyond(face.id)) / Math.abs(face.normal[0]) }]
      : [],
  );
  const chosen = [given, ...others].toSorted((a, b) => a.centre - b.centre)[0]!;
  const square = Math.abs(faceNamed(work, chosen.face)?.normal[0] ?? 1);
  const deg = (Math.acos(Math.min(square, 1)) * 180) / Math.PI;
  return { ...chosen, horn: beyond(chosen.face), outOfSquareDeg: square > 1 - SAME_DIRECTION ? 0 : deg };
}

const faceNamed = (work: Work, id: string): SeenFace | undefined => work.faces.find((face) => face.id === id);

/** Horns are on the milled blank only. */
const hornsAt = ({ stage }: Holding, horns: readonly Horn[]): readonly Horn[] =>
  stage === 'milled blank' ? horns : [];

const hornBeyond = (face: FaceId, holding: Holding, horns: readonly Horn[]): number =>
  hornsAt(holding, horns).find(({ end }) => end === face)?.length ?? 0;

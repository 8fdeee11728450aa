import type { Design } from '../assembly/index.js';
import { type Board, type Face, faces } from '../board/index.js';
import { routerSpeedLimit } from '../tables/index.js';
import { cardFigures, cutterAtHand, type FigureRequest, slidingOutlines } from './card-figures.js';
import { cautions, correction, FEED, zeroPoint } from './card-words.js';
import { type Hand, handsOf } from './handed.js';
import type { Aid, Holding, RailBearing, StageName } from './holding.js';
import { type Horn, hornsOf } from './horns.js';
import type { JigAtHand } from './jig-at-hand.js';
import { deepestPass, passesOf, plungeSpacing, plungesOf } from './passes.js';
import type { CardCut, Figure, RailSetting, SetupCard } from './setup-card.js';
import type { Shop } from './shop.js';
import { stagesOf } from './stages.js';
import { type SeenFace, type SeenStage, seenStage, type Work, workAtStage } from './work-at-stage.js';

/** What set-up cards are made from. */
export interface CardRequest {
  readonly design: Design;
  /** Of every mortise; as `holdingsOf` gives them. */
  readonly holdings: readonly Holding[];
  readonly aids: readonly Aid[];
  readonly jig: JigAtHand;
  readonly shop: Shop;
}

/** Settings nearer than this are one setting, mm: finer than any rail can be set. */
const SAME_SETTING = 0.01;

/** Pieces shorter than this are held by something longer when the shop file does not say, mm. Common practice, no source. */
const SHORT_PIECE = 300;

const STAGES: readonly StageName[] = ['milled blank', 'ends cut', 'outline cut'];

/** One card for every set-up, in the order they are cut, with every mortise of every board that is cut with it. */
export function setupCards(request: CardRequest): readonly SetupCard[] {
  const hands = handsOf(request.design);
  const stages = new Map<string, SeenStage>();
  const stageOf = (board: Board, name: StageName): SeenStage => {
    const key = `${board.id} ${name}`;
    const known =
      stages.get(key) ?? seenStage(stagesOf(board).find((one) => one.name === name)!, faces(board));
    stages.set(key, known);
    return known;
  };
  const seen = request.holdings
    .map((holding) => see(holding, request, stageOf))
    .filter((one) => one !== undefined);
  const groups: Seen[][] = [];
  for (const one of seen) {
    const same = groups.find(([first]) => sameSetting(first!, one));
    if (same) same.push(one);
    else groups.push([one]);
  }
  const outlines = slidingOutlines(request.jig, request.shop);
  return groups
    .toSorted(([a], [b]) => STAGES.indexOf(a!.holding.stage) - STAGES.indexOf(b!.holding.stage))
    .map((group, i) => cardOf(`S${i + 1}`, group, hands, { ...request, outlines }));
}

/** A holding as it lies in the jig, turned end for end where that makes it share a setting. */
interface Seen {
  readonly holding: Holding;
  readonly board: Board;
  readonly work: Work;
  readonly mouth: Face;
  readonly near: RailBearing | undefined;
  readonly far: RailBearing | undefined;
  readonly horns: readonly Horn[];
}

function see(
  holding: Holding,
  { design, holdings }: CardRequest,
  stageOf: (board: Board, name: StageName) => SeenStage,
): Seen | undefined {
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

function sameSetting(a: Seen, b: Seen): boolean {
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
    rail(a.near, b.near) &&
    rail(a.far, b.far)
  );
}

function cardOf(
  id: string,
  group: readonly Seen[],
  hands: ReadonlyMap<string, Hand>,
  request: CardRequest & Pick<FigureRequest, 'outlines'>,
): SetupCard {
  const { shop } = request;
  const first = group[0]!;
  const { holding } = first;
  const { width, length, depth } = holding.mortise;
  const slot = slotOf(group, shop);
  const walls = [first.near, first.far].map((rail) => rail && rail.toFace - slot.width / 2);
  const plunges = plungesOf(length, width);
  const shortest = Math.min(...group.map(({ board }) => board.blank.length));
  const used = group.flatMap(({ holding: one, near, far }) => [
    ...[near?.wedge?.aid, far?.wedge?.aid, one.guide?.aid, one.window?.aid, one.depthBlock].filter(
      (aid) => aid !== undefined,
    ),
    ...one.supports.map(({ aid }) => aid),
  ]);
  return {
    id,
    stage: holding.stage,
    way: holding.way,
    cutter: width,
    slotWidth: slot.width,
    mortiseLength: length,
    depth,
    depthBlock: holding.depthBlock,
    zeroPoint: [
      ...new Set(group.map(({ board, holding: one, mouth }) => zeroPoint(board, one.mortise, mouth))),
    ].join('; '),
    nearRail: settingOf(first.near),
    farRail: settingOf(first.far),
    guideOffset: holding.guide?.offset,
    window: holding.window && { aid: holding.window.aid, bush: holding.window.bush },
    stopDistance: holding.stopDistance,
    travelling: holding.travelling,
    raised: Math.max(...group.map(({ holding: one }) => one.raised)),
    stopsBeyond: Math.max(...group.flatMap(({ holding: one }) => one.stopsBeyond)),
    passes: passesOf(depth, width, shop.router.turretSteps),
    plunges,
    plungeSpacing: plungeSpacing(plunges),
    feed: FEED[holding.way],
    speedLimitRpm: speedOf(width),
    testCut: {
      depth: Math.min(deepestPass(width), depth),
      nearWall: walls[0],
      farWall: walls[1],
      correction: correction(walls[0], walls[1]),
    },
    figures: [slot.figure, ...worstFigures(group, request)],
    cuts: group.map((one) => cutOf(one, hands)),
    aids: [...new Set(used)],
    cautions: cautions(holding, shortest < (shop.shortest.saw ?? SHORT_PIECE)),
    broken: group.flatMap(({ holding: one }) => one.broken),
  };
}

const settingOf = (rail: RailBearing | undefined): RailSetting | undefined => {
  if (!rail) return undefined;
  if (!rail.wedge) return { distance: rail.toRail, toWork: rail.toFace, wedge: undefined };
  const { place: _, ...wedge } = rail.wedge;
  return { distance: rail.toRail, toWork: rail.toFace, wedge };
};

/** The speed table ends somewhere; a cutter beyond it has no limit to print. */
function speedOf(cutter: number): number | undefined {
  try {
    return routerSpeedLimit(cutter);
  } catch {
    return undefined;
  }
}

/** The slot the cutter cuts in the wood of these mouths, as measured; the narrower of two kinds of grain. */
function slotOf(group: readonly Seen[], shop: Shop): { readonly width: number; readonly figure: Figure } {
  const nominal = group[0]!.holding.mortise.width;
  const cutter = cutterAtHand(shop, nominal);
  const grains = [...new Set(group.map(({ mouth }) => (mouth.grain === 'end' ? 'end' : 'face')))];
  const measured = grains.map((grain) => (grain === 'end' ? cutter?.slotInEnd : cutter?.slotInFace));
  const known = measured.filter((width) => width !== undefined);
  const complete = known.length === grains.length;
  const width = known.length > 0 ? Math.min(...known) : (cutter?.diameter ?? nominal);
  return {
    width,
    figure: {
      name: 'slot width measured',
      needed: nominal,
      available: known.length > 0 ? width : undefined,
      verdict: complete ? 'passed' : 'not verified',
      text: complete
        ? `a test slot in ${grains.join(' and ')} grain measured ${width.toFixed(2)} mm`
        : `the shop file does not say how wide the cutter cuts in ${grains.join(' and ')} grain: cut a test slot, measure it and write it there; until then the tenon's fit is a guess`,
    },
  };
}

const VERDICTS: readonly Figure['verdict'][] = ['failed', 'not verified', 'passed'];

/** Of every figure the least favourable one of all cuts: a card passes only when each of them does. */
function worstFigures(
  group: readonly Seen[],
  { jig, aids, shop, outlines }: Omit<FigureRequest, 'holding' | 'work'>,
): readonly Figure[] {
  const all = group.map(({ holding, work }) => cardFigures({ holding, work, jig, aids, shop, outlines }));
  const spare = ({ available, needed, verdict }: Figure) =>
    VERDICTS.indexOf(verdict) * 1e6 + (available ?? needed) - needed;
  return all[0]!.map((figure, at) =>
    all
      .map((figures) => figures[at] ?? figure)
      .reduce((worst, one) => (spare(one) < spare(worst) ? one : worst)),
  );
}

function cutOf({ holding, board, work, near, far, horns }: Seen, hands: ReadonlyMap<string, Hand>): CardCut {
  const { mortise, guide, across } = holding;
  const along = measuredFrom(holding, work, horns);
  const half = mortise.length / 2;
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
    across: across && { from: across.from, centre: across.centre },
    guideEdge: guide && across && across.centre + (guide.side === across.side ? -guide.offset : guide.offset),
  };
}

/**
 * The face the marks are measured from. Where a horn stands beyond it the rule starts at the horn's end, which is there; of
 * two ends with horns the nearer is taken.
 */
function measuredFrom(holding: Holding, work: Work, horns: readonly Horn[]) {
  const beyond = (id: string) =>
    holding.stage === 'milled blank' ? (horns.find(({ end }) => end === id)?.length ?? 0) : 0;
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

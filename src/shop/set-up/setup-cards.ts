import type { Design } from '../../assembly/index.js';
import { type Board, faces } from '../../board/index.js';
import { speaker } from '../../length/index.js';
import { routerSpeedLimit } from '../../tables/index.js';
import type { JigAtHand, Shop } from '../at-hand/index.js';
import { type Hand, handsOf, sawnWords } from '../boards/index.js';
import {
  type Aid,
  type Holding,
  type LaidIn,
  laidIn,
  type RailBearing,
  type SeenStage,
  type StageName,
  sameSetting,
  seenStage,
  stagesOf,
} from '../holding/index.js';
import { faceWords, markOf } from '../words/index.js';
import { cardCut } from './card-cut.js';
import { cardSlot } from './card-slot.js';
import { cautions, correction, TURNED_CORRECTION, zeroPoint } from './card-words.js';
import { feedWords } from './feed.js';
import { type FigureRequest, slidingOutlines } from './figure-request.js';
import { opensInto } from './opens-into.js';
import { deepestPass, passesOf, plungeSpacing, plungesOf } from './passes.js';
import type { RailSetting, SetupCard } from './setup-card.js';
import { worstFigures } from './worst-figures.js';

/** What set-up cards are made from. */
export interface CardRequest {
  readonly design: Design;
  /** Of every mortise; as `holdingsOf` gives them. */
  readonly holdings: readonly Holding[];
  readonly aids: readonly Aid[];
  readonly jig: JigAtHand;
  readonly shop: Shop;
}

/** Pieces shorter than this are held by something longer when the shop file does not say, mm. Common practice, no source. */
const SHORT_PIECE = 300;

const STAGES: readonly StageName[] = ['milled blank', 'ends cut', 'outline cut'];

/**
 * One card for every set-up, in the order they are cut, with every mortise of every board that is cut with it. A mortise that
 * the tools at hand cannot cut is on none.
 */
export function setupCards(request: CardRequest): readonly SetupCard[] {
  const hands = handsOf(request.design);
  const stages = new Map<string, SeenStage>();
  const finished = new Map(request.design.boards.map(({ board }) => [board.id, faces(board)]));
  const stageOf = (board: Board, name: StageName): SeenStage => {
    const key = `${board.id} ${name}`;
    const known =
      stages.get(key) ??
      seenStage(stagesOf(board).find((one) => one.name === name)!, finished.get(board.id)!);
    stages.set(key, known);
    return known;
  };
  const seen = request.holdings
    .filter(({ broken }) => broken.length === 0)
    .map((holding) => laidIn(holding, request, stageOf))
    .filter((one) => one !== undefined);
  const groups: LaidIn[][] = [];
  for (const one of seen) {
    const same = groups.find(([first]) => sameSetting(first!, one));
    if (same) same.push(one);
    else groups.push([one]);
  }
  const outlines = slidingOutlines(request.jig, request.shop);
  return groups
    .toSorted(([a], [b]) => STAGES.indexOf(a!.holding.stage) - STAGES.indexOf(b!.holding.stage))
    .map((group, i) => cardOf(markOf('card', i), group, hands, { ...request, outlines }));
}

function cardOf(
  id: string,
  group: readonly LaidIn[],
  hands: ReadonlyMap<string, Hand>,
  request: CardRequest & Pick<FigureRequest, 'outlines'>,
): SetupCard {
  const { shop } = request;
  const first = group[0]!;
  const { holding } = first;
  const { width, length, depth } = holding.mortise;
  const slot = cardSlot(group, shop);
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
    zeroPoint: zeroPoint(group.map(({ board, mouth }) => ({ board, face: mouth.id }))),
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
    feed: feedWords(first),
    speedLimitRpm: speedOf(width),
    testCut: {
      depth: Math.min(deepestPass(width), depth),
      nearWall: walls[0],
      farWall: walls[1],
      correction: holding.marked ? TURNED_CORRECTION : correction(walls[0], walls[1], speaker(shop.units)),
      sawnFirst: sawnFirst(first),
    },
    figures: [slot.figure, ...worstFigures(group, request)],
    cuts: group.map((one) => cardCut(one, hands, shop)),
    aids: [...new Set(used)],
    cautions: [
      ...cautions(holding, shortest < (shop.shortest.saw ?? SHORT_PIECE), speaker(shop.units)),
      ...opensInto(group, request.design),
    ],
  };
}

/**
 * A wedge fits a blank only where it leans as the work does: in the face that is cut into, or in the one the rail bears on. All
 * boards of a card lean alike, or they would not share its setting.
 */
function sawnFirst({ holding, board, near, far }: LaidIn): readonly string[] {
  const wedged = [near, far].filter((rail) => rail?.wedge);
  const faces = wedged.length === 0 ? [] : [holding.mortise.face, ...wedged.map((rail) => rail!.face)];
  return [...new Set(faces)].flatMap((face) => {
    const sawn = sawnWords(board, face);
    return sawn === '' ? [] : [`the ${faceWords(board, face)} of the ${board.name}: ${sawn}`];
  });
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

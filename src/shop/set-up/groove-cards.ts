import type { Design } from '../../assembly/index.js';
import {
  type Board,
  type FaceId,
  faceFrame,
  fenceDistance,
  type Groove,
  meetingLine,
} from '../../board/index.js';
import { dot, scale, type Vec3 } from '../../frame/index.js';
import { forRouter, type Say, speaker } from '../../length/index.js';
import { NOISE, SAME_CUTTER } from '../../tolerances.js';
import type { CutterAtHand, Shop } from '../at-hand/index.js';
import { faceWords, markOf } from '../words/index.js';
import { feedPressing } from './feed.js';
import { atLeast } from './judged.js';
import { passesOf } from './passes.js';
import type { Figure, Pass } from './setup-card.js';
import { colletFigure, edgesFigure, overallFigure } from './tool-figures.js';

/** One setting of the router's edge guide, and every groove cut with it. Lengths mm, exact. */
export interface GrooveCard {
  /** `K1`, `K2` …: cards of mortises are `S`. */
  readonly id: string;
  readonly kind: 'groove' | 'rebate';
  readonly width: number;
  readonly depth: number;
  /** The widest at hand that is no wider than the groove; as wide as the groove when there is none. */
  readonly cutter: number;
  /** From the face the guide's fence follows to the near wall. */
  readonly distance: number;
  /** From the fence to the cutter's axis, for each cut side by side, in order. */
  readonly fence: readonly number[];
  readonly passes: readonly Pass[];
  readonly feed: string;
  readonly figures: readonly Figure[];
  readonly cautions: readonly string[];
  readonly cuts: readonly GrooveCut[];
}

/** One groove on the card, as it lies in front of the person: the fence's face towards them, the groove's face up. */
export interface GrooveCut {
  readonly board: string;
  readonly groove: string;
  readonly face: FaceId;
  readonly from: FaceId;
  /** The end of the board on the person's left, where the feed begins. */
  readonly leftEnd: FaceId;
  /** Where the groove stops, from the left end and from the right end, over its round ends; undefined where it runs out. */
  readonly stopLeft: number | undefined;
  readonly stopRight: number | undefined;
}

/** A cut is widened from the near wall by no more than this share of the cutter. Common practice, no source. */
const STEP_OVER = 0.5;

/** A card for every setting of the edge guide, in the order the design names the boards. */
export function grooveCards(design: Design, shop: Shop): readonly GrooveCard[] {
  const all = design.boards.flatMap(({ board }) => board.grooves.map((groove) => ({ board, groove })));
  const kinds: (typeof all)[] = [];
  for (const one of all) {
    const same = kinds.find(([first]) => sameSetting(first!, one));
    if (same) same.push(one);
    else kinds.push([one]);
  }
  return kinds.map((kind, i) => cardOf(markOf('groove card', i), kind, shop));
}

interface InBoard {
  readonly board: Board;
  readonly groove: Groove;
}

const settingOf = ({ board, groove }: InBoard): readonly number[] => [
  groove.width,
  groove.depth,
  fenceDistance(board, groove),
  groove.rebate ? 1 : 0,
  groove.stopped.length > 0 ? 1 : 0,
];

const sameSetting = (a: InBoard, b: InBoard): boolean =>
  settingOf(a).every((part, i) => Math.abs(part - settingOf(b)[i]!) < SAME_CUTTER);

function cardOf(id: string, kind: readonly InBoard[], shop: Shop): GrooveCard {
  const { board, groove } = kind[0]!;
  const { width, depth, rebate } = groove;
  const distance = Math.max(fenceDistance(board, groove), 0);
  const tool = widestUpTo(shop, width);
  const cutter = tool?.nominal ?? width;
  const say = speaker(forRouter(shop.units));
  const name = `${say.tool(cutter)} cutter`;
  const fence = cutsSideBySide(distance, width, cutter);
  const stops = kind.some(({ groove: one }) => one.stopped.length > 0);
  return {
    id,
    kind: rebate ? 'rebate' : 'groove',
    width,
    depth,
    cutter,
    distance,
    fence,
    passes: passesOf(depth, cutter, shop.router.turretSteps),
    feed: `lay the board with the fence's face towards you and the groove's face up, and feed ${feedPressing('away')} only: the cut then pulls the fence against the board; lift the cutter for the way back`,
    figures: [
      cutterFigure(tool, width, stops, say),
      edgesFigure(tool, depth, shop, name),
      overallFigure(tool, 0, depth, shop),
      colletFigure(tool, shop, name),
      atLeast(
        say,
        'plunge travel',
        depth,
        shop.router.plungeTravel,
        'the depth',
        'the plunge travel of the router',
      ),
      atLeast(
        say,
        'edge guide reaches',
        Math.max(...fence),
        shop.router.guideReach,
        'from the fence to the cutter',
        "the reach of the router's edge guide",
      ),
    ],
    cautions: cautionsOf(kind, stops),
    // across the grain first: what breaks out there is cut away along it
    cuts: kind.toSorted((a, b) => alongGrain(a) - alongGrain(b)).map(cutOf),
  };
}

const alongGrain = ({ groove }: InBoard): number => (Math.abs(groove.at.x[0]) > Math.SQRT1_2 ? 1 : 0);

const widestUpTo = (shop: Shop, width: number): CutterAtHand | undefined =>
  shop.cutters
    .filter(({ nominal }) => nominal <= width + SAME_CUTTER)
    .toSorted((a, b) => b.nominal - a.nominal)[0];

/** From the near wall outwards, the last against the far wall. */
function cutsSideBySide(distance: number, width: number, cutter: number): readonly number[] {
  const more = Math.ceil((width - cutter) / (cutter * STEP_OVER) - SAME_CUTTER);
  const count = Math.max(more, 0);
  return Array.from(
    { length: count + 1 },
    (_, i) => distance + cutter / 2 + (count === 0 ? 0 : ((width - cutter) * i) / count),
  );
}

/** A stopped groove is as wide as its round end, so only a cutter of its own width cuts it. */
function cutterFigure(tool: CutterAtHand | undefined, width: number, stops: boolean, say: Say): Figure {
  const exact = tool !== undefined && Math.abs(tool.nominal - width) < SAME_CUTTER;
  const verdict = tool === undefined || (stops && !exact) ? 'failed' : 'passed';
  const had = tool === undefined ? 'none is at hand' : `${say.length(tool.nominal)} is the nearest at hand`;
  return {
    name: 'cutter for the groove',
    needed: width,
    available: tool?.nominal,
    verdict,
    text: stops
      ? `${say.length(width)} wide, for its round ends; ${had}`
      : `no wider than ${say.length(width)}; ${had}${exact || tool === undefined ? '' : ': move the fence between cuts'}`,
  };
}

/** The board as it lies for its cut: which end is on the left, and where the groove stops. */
function cutOf({ board, groove }: InBoard): GrooveCut {
  const line = meetingLine(board, groove.face, groove.from)!;
  // y away from the person over the face, z up, so x is to the right
  const [left] = endsAlong(line.x);
  const forward = dot(groove.at.x, line.x) > 0;
  const whole = extentAlong(board, groove);
  const stops = (end: 'start' | 'end') => {
    if (!groove.stopped.includes(end)) return undefined;
    return end === 'start' ? whole.start : whole.end;
  };
  const [atLeft, atRight] = forward ? (['start', 'end'] as const) : (['end', 'start'] as const);
  return {
    board: board.id,
    groove: groove.id,
    face: groove.face,
    from: groove.from,
    leftEnd: left,
    stopLeft: stops(atLeft),
    stopRight: stops(atRight),
  };
}

/** Faces of the blank where a run begins and ends. */
function endsAlong(run: Vec3): readonly [FaceId, FaceId] {
  const axis = run.reduce((most, part, i) => (Math.abs(part) > Math.abs(run[most]!) + NOISE ? i : most), 0);
  const name = ['end', 'edge', 'face'][axis]!;
  const ends = [`reference-${name}`, `opposite-${name}`] as const;
  return run[axis]! > 0 ? ends : [ends[1], ends[0]];
}

/** From the blank's ends to the groove's, along it. */
function extentAlong({ blank }: Board, { at, length }: Groove): { start: number; end: number } {
  const size: Vec3 = [blank.length, blank.width, blank.thickness];
  const middle: Vec3 = scale(size, 1 / 2);
  const half = Math.abs(dot(at.x, size)) / 2;
  const centre = dot(at.x, at.origin) - dot(at.x, middle);
  return { start: half + centre - length / 2, end: half - centre - length / 2 };
}

function cautionsOf(kind: readonly InBoard[], stops: boolean): readonly string[] {
  const narrow = kind.some(({ board, groove }) => {
    const z = faceFrame(board, groove.face)?.z ?? [0, 0, 1];
    return Math.abs(z[2]) < Math.SQRT1_2;
  });
  const endGrain = kind.some((one) => alongGrain(one) === 0);
  return [
    'Pull the plug before you change the cutter, its height or the collet.',
    'Eye, ear and dust protection; draw the chips off between passes.',
    'No climb cuts: lift the cutter for the way back.',
    ...(narrow ? ['Narrow edge: clamp a board flush on each side of it, or the router rocks.'] : []),
    ...(stops
      ? [
          'Where it stops, clamp a block to the board for the base to run against; plunge at the stop, never lower the cutter while it is fed.',
        ]
      : []),
    ...(endGrain ? ['Across the grain: clamp an offcut behind the far edge, or it breaks out.'] : []),
  ];
}

/** Which way the feed goes along a board: from which end to which. */
export const grooveFeedWords = (board: Board, { leftEnd }: GrooveCut): string => {
  const other = leftEnd.startsWith('reference-')
    ? leftEnd.replace('reference-', 'opposite-')
    : leftEnd.replace('opposite-', 'reference-');
  const [from, to] = feedPressing('away') === 'from left to right' ? [leftEnd, other] : [other, leftEnd];
  return `from the ${faceWords(board, from)} to the ${faceWords(board, to)}`;
};

import type { Board } from '../board/index.js';
import { pointIn, pointOut, type Vec2 } from '../frame/index.js';
import { trimmed } from '../length/index.js';
import type { Region } from '../profile/index.js';
import { bounds } from '../profile/index.js';
import { holdOver } from './hold.js';
import type { Aid, Holding } from './holding.js';
import { COLLAR_AIR, COLLET_GRIP_DIAMETERS, HOLD } from './holding-practice.js';
import { inBoth } from './in-both.js';
import type { JigAtHand } from './jig-at-hand.js';
import type { Figure } from './setup-card.js';
import type { CutterAtHand, Shop } from './shop.js';
import { baseOf, plateOf } from './travelling.js';
import type { Work } from './work-at-stage.js';

/** Room for chips beside the cutter in a bush, each side. Common practice, no source. */
const CHIP_ROOM = 1;

/** A shank fits a collet of its own diameter; measured ones differ by this much, mm. */
const SAME_SHANK = 0.05;

/** Cutters are named to the hundredth of a millimetre. */
const SAME_CUTTER = 0.01;

/** What the figures of a set-up are worked out from. */
export interface FigureRequest {
  readonly holding: Holding;
  /** The board at its stage, seen from the mortise. */
  readonly work: Work;
  readonly jig: JigAtHand;
  /** What slides on the work, seen from above: the jig's plate and the router's bare base. */
  readonly outlines: Readonly<Record<Holding['travelling']['what'], readonly Vec2[]>>;
  readonly aids: readonly Aid[];
  readonly shop: Shop;
}

/** Outlines of what slides on the work: once for all set-ups of a shop. */
export const slidingOutlines = (jig: JigAtHand, shop: Shop): FigureRequest['outlines'] => ({
  'jig plate': plateOf(jig).outline,
  'router base': baseOf(shop.router).outline,
});

/** The cutter of the shop with a nominal diameter. */
export const cutterAtHand = (shop: Shop, nominal: number): CutterAtHand | undefined =>
  shop.cutters.find((one) => Math.abs(one.nominal - nominal) < SAME_CUTTER);

/** Every figure of a set-up that depends on the shop; what the shop file does not say is not verified. */
export function cardFigures(request: FigureRequest): readonly Figure[] {
  const { holding, shop } = request;
  const { width, depth } = holding.mortise;
  const cutter = cutterAtHand(shop, width);
  const through = throughOf(request);
  const name = `${trimmed(width, 2)} mm cutter`;
  return [
    overall(cutter, through, depth, shop),
    edges(cutter, depth, name),
    atLeast(
      'plunge travel',
      through + depth,
      shop.router.plungeTravel,
      `what is between base and work, ${inBoth(through)}, and the depth`,
      'the plunge travel of the router',
    ),
    collet(cutter, shop, name),
    ...(holding.way === 'guide board' ? [edgeGuide(request)] : []),
    ...(holding.window ? bushFigures(request, holding.window.bush) : []),
    ...(holding.way === 'both rails' ? [] : [support(request)]),
  ];
}

/** Thickness between the router's base and the work: the jig's plate, a template, or nothing. */
function throughOf({ holding, jig, aids }: FigureRequest): number {
  if (holding.travelling.what === 'jig plate') return jig.plate.thickness;
  return aids.find(({ board }) => board.id === holding.window?.aid)?.board.blank.thickness ?? 0;
}

function overall(cutter: CutterAtHand | undefined, through: number, depth: number, shop: Shop): Figure {
  const { baseThickness } = shop.router;
  const grip = cutter?.shank === undefined ? undefined : COLLET_GRIP_DIAMETERS * cutter.shank;
  const needed = (grip ?? 0) + (baseThickness ?? 0) + through + depth;
  const missing = [
    ...(grip === undefined ? ["the cutter's shank"] : []),
    ...(baseThickness === undefined ? ["the router's base thickness"] : []),
    ...(cutter?.overallLength === undefined ? ["the cutter's overall length"] : []),
  ];
  const parts = [
    ...(grip === undefined ? [] : [`grip in the collet ${inBoth(grip)}`]),
    ...(baseThickness === undefined ? [] : [`base ${inBoth(baseThickness)}`]),
    ...(through > 0 ? [`plate or template ${inBoth(through)}`] : []),
    `depth ${inBoth(depth)}`,
  ];
  return judged('cutter long enough', needed, cutter?.overallLength, missing, parts.join(' + '));
}

function edges(cutter: CutterAtHand | undefined, depth: number, name: string): Figure {
  const missing = cutter?.cuttingLength === undefined ? [`the cutting length of the ${name}`] : [];
  const figure = judged(
    'cutting edges long enough',
    depth,
    cutter?.cuttingLength,
    missing,
    'the edges reach the bottom',
  );
  const slim = cutter?.shank !== undefined && cutter.shank < cutter.nominal - SAME_SHANK;
  if (figure.verdict !== 'failed' || !slim) return figure;
  return {
    ...figure,
    verdict: 'passed',
    text: `the shank is thinner than the cutter and goes down freely above the edges; ${figure.text}`,
  };
}

function collet(cutter: CutterAtHand | undefined, shop: Shop, name: string): Figure {
  const { collets } = shop.router;
  const shank = cutter?.shank;
  const missing = [
    ...(shank === undefined ? [`the shank of the ${name}`] : []),
    ...(collets === undefined ? ["the router's collets"] : []),
  ];
  const nearest = collets?.toSorted((a, b) => Math.abs(a - (shank ?? 0)) - Math.abs(b - (shank ?? 0)))[0];
  const fits = shank !== undefined && nearest !== undefined && Math.abs(nearest - shank) < SAME_SHANK;
  return {
    name: 'collet fits the shank',
    needed: shank ?? 0,
    available: nearest,
    verdict: missing.length > 0 ? 'not verified' : fits ? 'passed' : 'failed',
    text:
      missing.length > 0
        ? lacking(missing)
        : fits
          ? `a collet of ${inBoth(nearest)} takes the shank`
          : `no collet takes a shank of ${inBoth(shank!)}; the nearest is ${nearest === undefined ? 'none' : inBoth(nearest)}`,
  };
}

/** Whether the router's own edge guide would do instead of a guide board. */
function edgeGuide({ work, shop }: FigureRequest): Figure {
  const besides = work.faces
    .filter(({ normal }) => Math.abs(normal[1]) > 1 - 1e-9)
    .map(({ offset }) => Math.abs(offset));
  const needed = besides.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...besides);
  const reach = shop.router.guideReach;
  if (!Number.isFinite(needed)) {
    return {
      name: 'edge guide instead of the guide board',
      needed: 0,
      available: reach,
      verdict: reach === undefined ? 'not verified' : 'failed',
      text: 'no edge of the work runs along the mortise: use the guide board',
    };
  }
  const figure = atLeast(
    'edge guide instead of the guide board',
    needed,
    reach,
    'from the cutter to the nearest edge along the mortise',
    "the reach of the router's edge guide",
  );
  const told = figure.verdict === 'passed' ? 'it may be used instead' : 'use the guide board';
  return { ...figure, text: `${figure.text}: ${told}` };
}

function bushFigures({ holding, aids, shop }: FigureRequest, outside: number): readonly Figure[] {
  const bush = shop.bushes.find((one) => Math.abs(one.outside - outside) < SAME_CUTTER);
  const template = aids.find(({ board }) => board.id === holding.window?.aid)?.board.blank.thickness;
  const missing = bush === undefined ? [`a bush of ${inBoth(outside)}`] : [];
  return [
    judged(
      'bush lets chips out',
      holding.mortise.width + 2 * CHIP_ROOM,
      bush?.bore,
      missing,
      `the cutter and ${inBoth(CHIP_ROOM)} on each side`,
    ),
    judged(
      'template thicker than the collar is long',
      (bush?.collarLength ?? 0) + COLLAR_AIR,
      template,
      [...missing, ...(template === undefined ? ["the template's thickness"] : [])],
      `the collar and ${inBoth(COLLAR_AIR)}`,
    ),
  ];
}

/** Wood under the plate or base beyond the cutter, at both ends of its travel, with the support blocks. */
function support({ holding, work, outlines, aids }: FigureRequest): Figure {
  const tops: Region = holding.supports.flatMap(({ aid, place }) => {
    const board = aids.find((one) => one.board.id === aid)?.board;
    return board ? topOf(board, place, holding) : [];
  });
  const travel = (holding.mortise.length - holding.mortise.width) / 2;
  const hold = holdOver([...work.mouth, ...tops], outlines[holding.travelling.what], travel);
  // a horn takes the place of a block at its end
  const sides = holding.horn ? [hold.near, hold.far] : [hold.near, hold.far, hold.start, hold.end];
  return judged(
    'support under the plate',
    HOLD,
    Math.max(0, Math.min(...sides)),
    [],
    "wood beyond the cutter's centre on the worst side, with the support blocks in place",
  );
}

/** The top of a support block, as its box in the mortise's x and y. */
function topOf(board: Board, place: Holding['supports'][number]['place'], holding: Holding): Region {
  const box = bounds(board.outline);
  const corners = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].flatMap((y) =>
      [0, board.blank.thickness].map((z) => pointIn(holding.mortise.at, pointOut(place, [x, y, z]))),
    ),
  );
  const highest = Math.max(...corners.map(([, , z]) => z));
  const top = corners.filter(([, , z]) => z > highest - SAME_SHANK);
  const xs = top.map(([x]) => x);
  const ys = top.map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const loop: readonly Vec2[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return [loop];
}

const atLeast = (
  name: string,
  needed: number,
  available: number | undefined,
  made: string,
  missing: string,
): Figure => judged(name, needed, available, available === undefined ? [missing] : [], made);

function judged(
  name: string,
  needed: number,
  available: number | undefined,
  missing: readonly string[],
  made: string,
): Figure {
  const verdict =
    missing.length > 0 || available === undefined
      ? 'not verified'
      : available >= needed - 1e-9
        ? 'passed'
        : 'failed';
  const had = available === undefined ? '' : `, ${inBoth(available)} had`;
  const short = verdict === 'failed' ? `: ${inBoth(needed - available!)} short` : '';
  return {
    name,
    needed,
    available,
    verdict,
    text: `${inBoth(needed)} needed (${made})${had}${short}${missing.length > 0 ? `; ${lacking(missing)}` : ''}`,
  };
}

const lacking = (missing: readonly string[]): string => `the shop file does not say ${missing.join(', ')}`;

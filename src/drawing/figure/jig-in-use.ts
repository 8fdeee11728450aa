import type { Board } from '../../board/index.js';
import { frame, frameIn, scale, type Vec2, WORLD } from '../../frame/index.js';
import { circle, type Profile, rectangle, regionOf } from '../../profile/index.js';
import { boardStates, type Holding, hornsOf, type SetupCard, type ShopPapers } from '../../shop/index.js';
import { type Body, boardOf, featureEdges, matrix, prism, type Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { type Colour, letters, SMALL, spread, stroke, textWidth } from '../sheet/index.js';
import {
  type Look,
  lookingFrom,
  type SeenPart,
  sceneOf,
  viewBox,
  viewIn,
  viewLines,
  viewPoint,
  visibleSpots,
} from '../view/index.js';
import { RAIL, STOP } from './set-up-size.js';

/** From the end of the mortise, you on the left and above: the cut surfaces look at the viewer. */
const FROM = lookingFrom([1, -0.62, 0.5]);

/** mm at full size, our own: thickness of plate and base, height of a rail, radii of base, body and rod. */
const [PLATE, BASE, TALL, ROUND, BODY, ROD] = [12, 8, 46, 70, 40, 5];

/** The router's body over its base when the cutter is down, how high it is, and how far out its stop rod stands. */
const [OVER, HIGH, OUT] = [14, 44, 54];

const COLOURS = {
  work: '#dcc9a3',
  wedge: '#c9773f',
  rail: '#a58f78',
  guide: '#a58f78',
  plate: '#6f6258',
  router: '#5f6b78',
  steel: '#aab2b8',
  stop: '#b9805a',
} as const satisfies Record<string, Colour>;

/** Between the picture and the words beside it, and from word to word, mm on the sheet. */
const [GAP, APART] = [2, 3.6];

/** Of the work nothing is shown farther below its mouth, mm. */
const DEEP = 85;

/**
 * The set-up that has most to show, cut away at the middle of its mortise and seen from there with the cutter down: work, rails or guide,
 * wedge, plate, router, stop, each with its name.
 *
 * @param room mm on the sheet
 * @returns undefined when no card is cut with rails or a guide board
 */
export function jigInUse(
  solids: Solids,
  papers: ShopPapers,
  room: { readonly width: number; readonly height: number },
): DrawnFigure | undefined {
  const most = shownCard(papers.cards);
  const shown = most && setUpParts(solids, papers, most);
  if (!shown) return undefined;
  const { parts, names } = shown;
  const scene = sceneOf(parts, FROM);
  const view = viewIn(scene, { hidden: false, toned: 'apart' });
  const spots = visibleSpots(scene, view);
  const box = viewBox(view);
  const words = Math.max(...[...names.values()].map((one) => textWidth(one, SMALL))) + GAP;
  const factor = Math.min(
    (room.width - 2 * words) / (box.maxX - box.minX),
    room.height / (box.maxY - box.minY),
  );
  const [wide, high] = [factor * (box.maxX - box.minX), factor * (box.maxY - box.minY)];
  return {
    kind: 'drawn',
    said: `Card ${most.id} in use, cut away at the middle of the mortise, the cutter down; you stand on the left. Named: ${[...new Set(names.values())].join(', ')}.`,
    width: wide + 2 * words,
    height: high,
    draw: ([x, y]) => {
      const on = { at: [x + words - factor * box.minX, y - factor * box.minY] as Vec2, factor };
      const named = [...names].flatMap(([id, name]) => {
        const spot = spots.get(id);
        return spot ? [{ words: name, spot: viewPoint(on, spot) }] : [];
      });
      const middle = x + words + wide / 2;
      return [
        ...viewLines(view, on),
        ...column(
          named.filter(({ spot }) => spot[0] < middle),
          x + words - GAP,
          'end',
          y,
        ),
        ...column(
          named.filter(({ spot }) => spot[0] >= middle),
          x + words + wide + GAP,
          'start',
          y,
        ),
      ];
    },
  };
}

/** Both rails with a wedge before both rails, before one, before a guide board: whatever shows most. */
function shownCard(cards: readonly SetupCard[]): SetupCard | undefined {
  const parts = ({ nearRail, farRail, guideOffset }: SetupCard) =>
    [nearRail, farRail, nearRail?.wedge, farRail?.wedge].filter((one) => one !== undefined).length * 2 +
    (guideOffset === undefined ? 0 : 1);
  return cards.filter((card) => parts(card) > 0).toSorted((a, b) => parts(b) - parts(a))[0];
}

interface SetUpParts {
  readonly parts: readonly SeenPart[];
  /** The word for each part that is named, by its id. */
  readonly names: ReadonlyMap<string, string>;
}

function setUpParts(
  { kernel, design }: Solids,
  { holdings, aids }: ShopPapers,
  card: SetupCard,
): SetUpParts | undefined {
  const { nearRail, farRail, guideOffset, cutter, depth, stopDistance, travelling } = card;
  const laid = card.cuts.flatMap((cut) => {
    const holding = holdings.find(({ board, mortise }) => board === cut.board && mortise.id === cut.mortise);
    const board = design.boards.find((placed) => placed.board.id === cut.board)?.board;
    if (!holding || !board) return [];
    const turned =
      cut.nearFace === undefined ? holding.guide?.side === 'near' : holding.near?.face !== cut.nearFace;
    // what is shown lies on the left of the mortise's middle: there the wood should carry the stop
    return [{ holding, board, turned, beyond: holding.stopsBeyond[turned ? 1 : 0] }];
  });
  const chosen = laid.toSorted((a, b) => a.beyond - b.beyond)[0];
  if (!chosen) return undefined;
  const { holding, board, turned, beyond } = chosen;
  const { at } = holding.mortise;
  const laidAt = turned ? frame(at.origin, at.z, scale(at.x, -1)) : at;
  const parts: SeenPart[] = [];
  const names = new Map<string, string>();
  const put = (id: string, body: Body, look: Look, words?: string) => {
    parts.push({ id, solid: featureEdges(body), look });
    if (words !== undefined) names.set(id, words);
    body.delete();
  };
  const halved = (body: Body): Body => {
    const half = body.trimByPlane([-1, 0, 0], 0);
    body.delete();
    return half;
  };
  const upperPart = (body: Body): Body => {
    const upper = body.trimByPlane([0, 0, 1], -DEEP);
    body.delete();
    return upper;
  };
  const solid = (outline: Profile, from: number, to: number) =>
    prism(kernel, regionOf(outline), from, to, undefined);
  const block = (x1: number, y1: number, x2: number, y2: number, from: number, to: number) =>
    solid(rectangle({ x: x1, y: y1, length: x2 - x1, width: y2 - y1 }), from, to);

  const state = stateAt(board, holding, papersHorns(board, holdings));
  const work = boardOf(kernel, { ...state, mortises: [holding.mortise] });
  const place = frameIn(laidAt, WORLD);
  put(
    'work',
    halved(upperPart(work.transform(matrix(place)))),
    {
      colour: COLOURS.work,
      wood: { frame: place, width: board.blank.width, thickness: board.blank.thickness },
    },
    'work',
  );
  for (const [id, rail] of [
    ['near', holding.near],
    ['far', holding.far],
  ] as const) {
    const aid = aids.find(({ board: one }) => one.id === rail?.wedge?.aid)?.board;
    if (!aid || !rail?.wedge) continue;
    const wedge = boardOf(kernel, aid).transform(matrix(frameIn(laidAt, rail.wedge.place)));
    put(
      `wedge ${id}`,
      halved(wedge),
      { colour: COLOURS.wedge },
      names.has('wedge near') ? undefined : 'wedge',
    );
  }
  const half = travelling.along / 2;
  if (nearRail)
    put(
      'near rail',
      block(-half, -nearRail.distance - RAIL, 0, -nearRail.distance, -TALL, 0),
      { colour: COLOURS.rail },
      'near rail',
    );
  if (farRail)
    put(
      'far rail',
      block(-half, farRail.distance, 0, farRail.distance + RAIL, -TALL, 0),
      { colour: COLOURS.rail },
      'far rail',
    );
  const [low, high] = [(nearRail?.distance ?? 42) + RAIL, (farRail?.distance ?? 42) + RAIL];
  if (guideOffset !== undefined)
    put(
      'guide board',
      block(-stopDistance - STOP, guideOffset, 0, guideOffset + 2 * RAIL, 0, 16),
      { colour: COLOURS.guide },
      'guide board',
    );
  const base = nearRail || farRail ? PLATE : 0;
  const hole = (body: Body, from: number, to: number): Body => {
    const bore = solid(circle({ diameter: cutter + 10 }), from - 1, to + 1);
    const rest = body.subtract(bore);
    bore.delete();
    body.delete();
    return halved(rest);
  };
  if (base > 0)
    put(
      'plate',
      hole(block(-half, -low - 2, 0, high + 2, 0, base), 0, base),
      { colour: COLOURS.plate },
      'plate',
    );
  const round = guideOffset === undefined ? Math.min(ROUND, half) : guideOffset;
  put(
    'base',
    hole(solid(circle({ diameter: 2 * round }), base, base + BASE), base, base + BASE),
    { colour: COLOURS.steel },
    "router's base",
  );
  const top = base + BASE;
  put(
    'router',
    solid(circle({ diameter: 2 * BODY }), top + OVER, top + OVER + HIGH),
    { colour: COLOURS.router },
    'router',
  );
  put('cutter', solid(circle({ diameter: cutter }), -depth, top + OVER), { colour: COLOURS.steel }, 'cutter');
  put(
    'turret',
    solid(circle({ diameter: 20, centre: [0, OUT] }), top, top + 5),
    { colour: COLOURS.router },
    'turret',
  );
  put(
    'stop rod',
    solid(circle({ diameter: 2 * ROD, centre: [0, OUT] }), top + 5, top + OVER + HIGH),
    { colour: COLOURS.steel },
    'stop rod',
  );
  if (beyond === 0)
    put(
      'stop',
      guideOffset === undefined
        ? block(
            -stopDistance - STOP,
            -(nearRail?.toWork ?? 12) + 1,
            -stopDistance,
            (farRail?.toWork ?? 14) - 1,
            0,
            base + 8,
          )
        : block(-stopDistance - STOP, -30, -stopDistance, guideOffset, 0, 14),
      { colour: COLOURS.stop },
      'stop',
    );
  return { parts, names };
}

const papersHorns = ({ id }: Board, holdings: readonly Holding[]) => hornsOf(id, holdings);

/** The board as it is when the mortise is cut, nothing in it yet. */
function stateAt(board: Board, { stage }: Holding, horns: ReturnType<typeof hornsOf>): Board {
  const states = boardStates(board, horns);
  const names = { 'milled blank': 0, 'ends cut': 1, 'outline cut': 2 } as const;
  const reached = states.filter(
    ({ name }) =>
      name === 'milled blank' ||
      (names[stage] >= 1 && (name === 'horns off' || name === 'ends cut')) ||
      (names[stage] >= 2 && name === 'outline cut'),
  );
  return reached.at(-1)!.board;
}

/** Words one below the other beside a picture, each led to its part. */
function column(
  named: readonly { readonly words: string; readonly spot: Vec2 }[],
  x: number,
  anchor: 'start' | 'end',
  low: number,
) {
  const ordered = named.toSorted((a, b) => a.spot[1] - b.spot[1]);
  const levels = spread(
    ordered.map(({ spot }) => spot[1]),
    APART,
  );
  const lift = Math.max(0, low + SMALL / 2 - (levels[0] ?? low + SMALL));
  return ordered.flatMap(({ words, spot }, i) => {
    const y = levels[i]! + lift;
    return [
      letters([x, y - SMALL / 2], words, { anchor }),
      stroke('dimension', [x + (anchor === 'end' ? 0.6 : -0.6), y], spot),
    ];
  });
}

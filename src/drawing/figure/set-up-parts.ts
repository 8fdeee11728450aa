import type { Board } from '../../board/index.js';
import { frame, frameIn, scale, WORLD } from '../../frame/index.js';
import { circle, type Profile, rectangle, regionOf } from '../../profile/index.js';
import { boardStates, type Holding, hornsOf, type SetupCard, type ShopPapers } from '../../shop/index.js';
import { type Body, boardOf, featureEdges, matrix, prism, type Solids } from '../../solid/index.js';
import type { Colour } from '../sheet/index.js';
import type { Look, SeenPart } from '../view/index.js';
import { RAIL, STOP } from './set-up-size.js';

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

/** Of the work nothing is shown farther below its mouth, mm. */
const DEEP = 85;

/** The solids of a set-up, cut away at the middle of its mortise, in the frame of the mortise. */
export interface SetUpParts {
  readonly parts: readonly SeenPart[];
  /** The word for each part that is named, by its id. */
  readonly names: ReadonlyMap<string, string>;
}

/** Work, rails or guide, wedges, plate, router and stop of a card, the cutter down; undefined when none of its cuts is held. */
export function setUpParts(
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

  const state = stateAt(board, holding, hornsOf(board.id, holdings));
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

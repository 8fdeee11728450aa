import type { Board } from '../../board/index.js';
import { type Frame, frame, frameIn, scale, type Vec2, type Vec3, WORLD } from '../../frame/index.js';
import { boardStates, type Holding, hornsOf, type SetupCard, type ShopPapers } from '../../shop/index.js';
import { boardOf, matrix, type Solids } from '../../solid/index.js';
import { routerParts, standsOn } from './router-parts.js';
import { COLOURS, SetUpBench } from './set-up-bench.js';
import { BASE, RAIL, STOP } from './set-up-size.js';

/** How far a rail reaches below the plate, and what is shown of work and what carries a stop, mm. */
const [TALL, DEEP] = [46, 80];

/** Work, wedges, rails or guide, plate or template, router and stop of a card; undefined when none of its cuts is held. */
export function setUpParts(
  { kernel, design }: Pick<Solids, 'kernel' | 'design'>,
  { holdings, aids }: Pick<ShopPapers, 'holdings' | 'aids'>,
  card: SetupCard,
): Pick<SetUpBench, 'parts' | 'names'> | undefined {
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
  const on = new SetUpBench(kernel);
  const place = frameIn(laidAt, WORLD);
  const work = boardOf(kernel, {
    ...stateAt(board, holding, hornsOf(board.id, holdings)),
    mortises: [],
  }).transform(matrix(place));
  const low: Vec3 = [-card.stopDistance - STOP - 15, -70, -DEEP];
  const high: Vec2 = [0, (card.guideOffset ?? 60) + RAIL];
  on.put('work', on.near(work, low, high), {
    colour: COLOURS.work,
    wood: { frame: place, width: board.blank.width, thickness: board.blank.thickness },
  });
  const aidAt = (id: string, where: Frame) => {
    const aid = aids.find((one) => one.board.id === id);
    return aid ? [boardOf(kernel, aid.board).transform(matrix(frameIn(laidAt, where)))] : [];
  };
  for (const wedge of [holding.near?.wedge, holding.far?.wedge])
    if (wedge)
      for (const body of aidAt(wedge.aid, wedge.place)) on.put('wedge', on.halved(body), COLOURS.aid);
  for (const { aid, place: where } of holding.supports)
    for (const body of aidAt(aid, where)) on.put('support', on.near(body, low, high), COLOURS.aid);
  guides(card, on);
  stop(card, beyond, on);
  routerParts(card, on);
  return on;
}

/** Rails or a guide board. */
function guides(
  { nearRail, farRail, guideOffset, travelling, stopDistance }: SetupCard,
  on: SetUpBench,
): void {
  const half = travelling.along / 2;
  if (nearRail) {
    const face = -nearRail.distance;
    on.put('near rail', on.block([-half, face - RAIL, -TALL], [0, face, 0]), COLOURS.rail);
  }
  if (farRail) {
    const face = farRail.distance;
    on.put('far rail', on.block([-half, face, -TALL], [0, face + RAIL, 0]), COLOURS.rail);
  }
  if (guideOffset !== undefined) {
    const long = -stopDistance - STOP - 10;
    on.put(
      'guide board',
      on.block([long, guideOffset, 0], [0, guideOffset + 2 * RAIL, BASE + 6]),
      COLOURS.rail,
    );
  }
}

/** The stop on the left, where what travels meets it, and the board that carries it when it stands beyond the wood. */
function stop(card: SetupCard, beyond: number, on: SetUpBench): void {
  const { nearRail, farRail, guideOffset, window, stopDistance } = card;
  if (window) return;
  const [from, to] = [-stopDistance - STOP, -stopDistance];
  if (guideOffset !== undefined) {
    on.put('stop', on.block([from, -30, 0], [to, guideOffset, BASE + 6]), COLOURS.aid);
    return;
  }
  const [near, far] = [-(nearRail?.toWork ?? 12) + 1, (farRail?.toWork ?? 14) - 1];
  const foot = beyond > 0 ? -DEEP : 0;
  on.put('stop', on.block([from, near, foot], [to, far, standsOn(card) + BASE]), COLOURS.aid);
  if (beyond > 0)
    on.put('carrier', on.block([from - 8, far + 1, -DEEP], [0, far + RAIL, -TALL - 6]), COLOURS.aid);
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

import type { Design } from '../../assembly/index.js';
import { type Board, faces, type Mortise } from '../../board/index.js';
import { type Say, speaker } from '../../length/index.js';
import { numberOf, remembered } from '../../remembered.js';
import type { JigAtHand, Shop } from '../at-hand/index.js';
import { type HeldDraft, namedAids } from './aid-draft.js';
import { heldDraft } from './held-draft.js';
import type { Aid, Holding, Refusal } from './holding.js';
import { measuredAt } from './measured.js';
import type { Stage } from './stage.js';
import { stagesOf } from './stages.js';
import { type AtHand, freeWays, railWays, type Way } from './ways.js';
import { type SeenStage, seenStage, workAtStage } from './work-at-stage.js';

/** How every mortise of a design is held, and the pieces made to hold them. */
export interface Holdings {
  readonly holdings: readonly Holding[];
  readonly aids: readonly Aid[];
}

/**
 * How every mortise of a design is held on a two-rail jig, or beside it.
 *
 * Of all stages and ways that break no limit the one that needs least is taken: both rails, one rail as a fence, both with
 * wedges, one with a wedge, a guide board, a windowed template; on a tie the earlier stage, so that mortises are cut before
 * tapering. When every way breaks a limit the one that breaks fewest is kept, with what it breaks.
 *
 * @param say voice of the messages; millimetres when left out
 */
export function holdingsOf(design: Design, jig: JigAtHand, shop: Shop, say: Say = speaker('mm')): Holdings {
  const boards = design.boards.map(({ board }) => board);
  const longest = Math.max(0, ...boards.flatMap((board) => board.mortises.map(({ length }) => length)));
  const hand: AtHand = { jig, shop, say, longest };
  const { design: _, ...figures } = jig;
  const atHand = `${numberOf(jig.design)} ${JSON.stringify(figures)} ${numberOf(shop)} ${say.rule} ${longest}`;
  return namedAids(
    boards.flatMap((board) => known(`${atHand} ${JSON.stringify(board)}`, () => heldIn(board, hand))),
    design.name,
  );
}

/** How boards are held depends on nothing else: while one dimension is tried, most boards stay as they are. */
const known = remembered<readonly HeldDraft[]>(200);

function heldIn(board: Board, hand: AtHand): readonly HeldDraft[] {
  if (board.mortises.length === 0) return [];
  const finished = faces(board);
  const stages = stagesOf(board).map((stage) => seenStage(stage, finished));
  return board.mortises.flatMap((mortise): HeldDraft[] => {
    const ways = waysOf(stages, mortise, hand);
    const best = ways.toSorted(leastFirst)[0];
    return best ? [heldDraft(best, refusedBefore(best, ways), board.material, hand)] : [];
  });
}

/** Ways are looked for until none that is left could need less. */
function waysOf(stages: readonly SeenStage[], mortise: Mortise, hand: AtHand): readonly Way[] {
  const works = stages.flatMap((stage) => workAtStage(stage, mortise) ?? []);
  const ways: Way[] = [];
  // a mouth bounded by arcs alone has no arris to measure from
  const measured = (way: Way) => measuredAt(way.work, way) !== undefined;
  for (const work of works) {
    ways.push(...railWays(work, hand).filter(measured));
    if (ways.some((way) => way.rank === 0 && way.broken.length === 0)) return ways;
  }
  for (const work of works) {
    if (ways.some((way) => way.broken.length === 0)) return ways;
    ways.push(...freeWays(work, hand).filter(measured));
  }
  return ways;
}

const STAGES: readonly Stage['name'][] = ['milled blank', 'ends cut', 'outline cut'];

function leastFirst(a: Way, b: Way): number {
  return (
    a.broken.length - b.broken.length ||
    a.rank - b.rank ||
    STAGES.indexOf(a.work.stage.name) - STAGES.indexOf(b.work.stage.name) ||
    nearest(a) - nearest(b)
  );
}

/** One rail bears on the nearer face. */
const nearest = (way: Way): number => (way.near?.toRail ?? 0) + (way.far?.toRail ?? 0);

/** Every simpler way some limit forbids, once, at the stage where it breaks fewest. */
function refusedBefore(best: Way, ways: readonly Way[]): readonly Refusal[] {
  const simpler = ways.filter((way) => way.rank < best.rank && way.broken.length > 0).toSorted(leastFirst);
  return simpler
    .filter((way, i) => simpler.findIndex((one) => one.rank === way.rank) === i)
    .map(({ way, wedged, work, broken }) => ({ way, wedged, stage: work.stage.name, broken }));
}

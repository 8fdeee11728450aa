import type { FaceId } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { bounds, type Region, rectangle, unite } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { CLAMP_ROOM, HOLD, HORN_STEP, LONGEST_HORN, STOP_FOOT } from '../practice/index.js';
import { holdAt, holdOver } from './hold.js';
import type { Stage } from './stage.js';
import { FREE_STRIP, type SupportBlock, type SupportSide, supportBlock } from './support.js';
import type { AtHand, Way } from './ways.js';

/** What lies under what travels: the wood, a horn left on it, blocks beside it. */
export interface Resting {
  readonly supports: readonly SupportBlock[];
  readonly horn?: { readonly end: FaceId; readonly length: number };
  /** How far each stop stands beyond all of it. */
  readonly stopsBeyond: readonly [start: number, end: number];
}

/**
 * What must be added so that the cutter's centre stays held by {@link HOLD} over the whole travel: a horn on the blank where
 * the mortise runs towards an end that can be left long, a block elsewhere. On the side of a rail the plate cannot tip: the
 * rail's foot would have to swing into the work.
 */
export function restingOf(way: Way, hand: AtHand): Resting {
  const { work, travelling } = way;
  const { mortise, stage } = work;
  if (way.broken.length > 0) return { supports: [], stopsBeyond: [0, 0] };
  const travel = (mortise.length - mortise.width) / 2;
  const lackingOn = (wood: Region): readonly SupportSide[] => {
    const hold = holdOver(wood, travelling.outline, travel);
    return SIDES.filter((side) => hold[side] < HOLD - SAME_POINT && !railOn(way, side));
  };
  const lacking = lackingOn(work.mouth);
  const horn = lacking.length === 1 ? hornFor(stage, way, lacking[0]!, travel) : undefined;
  // a block beside the work reaches past its ends, and often holds there too
  const beside = horn ? [] : lacking.filter(isAcross).map((side) => blockFor(way, side, hand));
  const ends = lackingOn(unite(work.mouth, ...beside.map(({ top }) => [top]))).filter(
    (side) => !isAcross(side),
  );
  const supports = horn ? [] : [...beside, ...ends.map((side) => blockFor(way, side, hand))];
  const hornWood = horn && hornRegion(way, horn.length, lacking[0]!);
  const wood = unite(work.mouth, ...(hornWood ? [hornWood] : []), ...supports.map((block) => [block.top]));
  const whole = holdAt(wood, ENDLESS, [0, 0]);
  const past = (reach: number) => Math.max(0, way.stopDistance + STOP_FOOT - reach);
  // on a guide board the stops stand on the guide itself, in a template the opening stops the bush
  const onWork = way.way === 'both rails' || way.way === 'one rail';
  return {
    supports,
    ...(horn && { horn }),
    stopsBeyond: onWork ? [past(whole.start), past(whole.end)] : [0, 0],
  };
}

/** Whether a rail keeps the plate from tipping over a side. */
const railOn = (way: Way, side: SupportSide): boolean =>
  (side === 'near' && way.near !== undefined) || (side === 'far' && way.far !== undefined);

const SIDES: readonly SupportSide[] = ['start', 'end', 'near', 'far'];

const isAcross = (side: SupportSide): boolean => side === 'near' || side === 'far';

const ENDLESS: readonly Vec2[] = [
  [-1e4, -1e4],
  [1e4, -1e4],
  [1e4, 1e4],
  [-1e4, 1e4],
];

/** A horn where the mortise runs with the grain towards an end of the untouched blank. */
function hornFor(stage: Stage, way: Way, side: SupportSide, travel: number): Resting['horn'] {
  const along = way.work.mortise.at.x[0];
  if (stage.name !== 'milled blank' || isAcross(side) || Math.abs(Math.abs(along) - 1) > SAME_POINT)
    return undefined;
  const hold = holdOver(way.work.mouth, way.travelling.outline, travel)[side];
  const length = HORN_STEP * Math.ceil((HOLD - hold) / HORN_STEP - SAME_POINT);
  if (length > LONGEST_HORN) return undefined;
  const towardsEnd = (side === 'end') === along > 0;
  return { end: towardsEnd ? 'opposite-end' : 'reference-end', length };
}

/** The horn's part of the mouth face, in the mortise's x and y. */
function hornRegion(way: Way, length: number, side: SupportSide): Region {
  const xs = way.work.mouth.flat().map(([x]) => x);
  const ys = way.work.mouth.flat().map(([, y]) => y);
  const [from, to] =
    side === 'end'
      ? [Math.max(...xs), Math.max(...xs) + length]
      : [Math.min(...xs) - length, Math.min(...xs)];
  return [
    [
      [from, Math.min(...ys)],
      [to, Math.min(...ys)],
      [to, Math.max(...ys)],
      [from, Math.max(...ys)],
    ],
  ];
}

/** A stage with the horn still on; its frame stays where the finished end will be. */
export function withHorn(stage: Stage, horn: Resting['horn']): Stage {
  if (!horn) return stage;
  const { minX, maxX, minY, maxY } = bounds(stage.board.outline);
  const start = horn.end === 'reference-end' ? horn.length : 0;
  const outline = rectangle({
    x: minX - start,
    y: minY,
    length: maxX - minX + horn.length,
    width: maxY - minY,
  });
  return { ...stage, board: { ...stage.board, outline } };
}

function blockFor(way: Way, side: SupportSide, { jig }: AtHand): SupportBlock {
  const { near, far, work, travelling } = way;
  const railed = near !== undefined || far !== undefined;
  const height = Math.min(work.below, (railed ? jig.near.height : 0) + CLAMP_ROOM);
  if (isAcross(side)) {
    return supportBlock(work, side, {
      from: -way.stopDistance,
      to: way.stopDistance,
      reach: travelling.across / 2,
      height,
    });
  }
  const strip =
    near && far
      ? { from: -near.toRail, to: far.toRail }
      : {
          from: Math.max(FREE_STRIP.from, near ? -near.toRail : FREE_STRIP.from),
          to: Math.min(FREE_STRIP.to, far ? far.toRail : FREE_STRIP.to),
        };
  return supportBlock(work, side, { ...strip, reach: way.stopDistance + (railed ? STOP_FOOT : 0), height });
}

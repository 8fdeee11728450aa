import { type Board, makeBoard } from '../../board/index.js';
import { type Frame, frame, frameOut, type Vec2 } from '../../frame/index.js';
import { intersectRegion, regionArea } from '../../profile/index.js';
import { guidedEdge, type RouterAtHand } from '../at-hand/index.js';
import { GUIDE, GUIDE_WOOD } from '../practice/index.js';
import { inTheWay, woodAbove } from './obstacle.js';
import type { Work } from './work-at-stage.js';

/** A straight board clamped on the mouth face, its working edge beside the router's base; mm. */
export interface Guide {
  readonly side: 'near' | 'far';
  /** Its working edge from the mortise's centre line. */
  readonly offset: number;
  readonly length: number;
  /** Board frame. */
  readonly place: Frame;
  /** Wood under it beside the mortise, as a mean width: what the clamps hold. */
  readonly wood: number;
}

/** The guide on both sides of a mortise, the one with more wood under it first; a side with wood in the way is left out. */
export function guides(work: Work, router: RouterAtHand, longest: number): readonly Guide[] {
  const offset = guidedEdge(router);
  const length = 10 * Math.ceil((longest + router.base.along + 2 * GUIDE.beyond) / 10);
  const above = woodAbove(work);
  return (['near', 'far'] as const)
    .flatMap((side): Guide[] => {
      const out = side === 'near' ? -1 : 1;
      const [inner, outer] = [out * offset, out * (offset + GUIDE.width)];
      const outline: readonly Vec2[] = [
        [-length / 2, Math.min(inner, outer)],
        [length / 2, Math.min(inner, outer)],
        [length / 2, Math.max(inner, outer)],
        [-length / 2, Math.max(inner, outer)],
      ];
      if (inTheWay(above, outline)) return [];
      const half = work.mortise.length / 2;
      const beside = outline.map(([x, y]): Vec2 => [x > 0 ? half : -half, y]);
      const under = Math.abs(regionArea(intersectRegion(work.mouth, [beside])));
      const place = frame([(-out * length) / 2, inner, 0], [0, 0, 1], [out, 0, 0]);
      return [{ side, offset, length, place: frameOut(work.mortise.at, place), wood: under / (2 * half) }];
    })
    .toSorted((a, b) => b.wood - a.wood);
}

/** Whether the clamps find enough wood under a guide. */
export const guideHolds = (guide: Guide): boolean => guide.wood >= GUIDE_WOOD;

/** The guide as a board: its reference edge guides, its reference face lies on the work. */
export const guideBoard = (id: string, guide: Guide, material: string): Board =>
  makeBoard({
    id,
    material,
    blank: { length: guide.length, width: GUIDE.width, thickness: GUIDE.thickness },
  });

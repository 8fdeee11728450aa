import type { Vec2 } from '../../frame/index.js';
import { baseOf, type JigAtHand, plateOf, type Shop } from '../at-hand/index.js';
import type { Aid, Holding, Work } from '../holding/index.js';

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

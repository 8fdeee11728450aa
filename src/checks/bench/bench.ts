import type { PlacedBoard } from '../../assembly/index.js';
import type { Say } from '../../length/index.js';
import type { ClampPlan, ProvedGlueUp } from '../../shop/index.js';
import type { Solids, TenonFigures, TenonMeasure } from '../../solid/index.js';
import type { Told } from '../../strength/index.js';
import type { Finding } from '../finding/index.js';
import type { Held } from './set-up-on-solids.js';

/** The figures of joints, measured or worked out from data, in the person's voice. */
export interface FigureBench {
  readonly tenons: readonly TenonFigures[];
  readonly solids: { readonly boards: ReadonlyMap<string, PlacedBoard> };
  readonly say: Say;
}

/** What every check works on: the solids, what was measured on them once, and the person's voice. */
export interface Bench extends FigureBench {
  readonly solids: Solids;
  readonly tenons: readonly TenonMeasure[];
  readonly say: Say;
  /** Outside diameter of the guide bush, when one is used, mm. */
  readonly bush?: number;
  /** How every mortise is held with the router and jig at hand; nothing is said of that without a shop. */
  readonly held?: Held;
  /** The order of glue-up when it is worked out already. */
  readonly glueUp?: ProvedGlueUp;
  /** What the shop tells of the piece's place and of joints made there; the usual when left out. */
  readonly told?: Told;
  /** The clamps of every stage, judged by those of the shop. */
  readonly clamps?: ClampPlan;
}

/** A check looks at the bench and says what it found; nothing found is an empty list. */
export type Check = (bench: Bench) => readonly Finding[];

import type { Finding } from '../../checks/index.js';
import type { Ranges } from '../../range/index.js';
import type { ShopPapers } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import type { DrawingUnits, PrintScale, Projection } from '../sheet/index.js';

/** Everything a plan is made from; it works nothing out that a paper of the bench does not say too. */
export interface PlanParts {
  readonly solids: Solids;
  /** Of the model: one sentence, what it makes. */
  readonly summary: string;
  readonly papers: ShopPapers;
  readonly findings: readonly Finding[];
  /** Names of the checks that ran. */
  readonly checks: readonly string[];
  /** For each layout of the stock, for each of its pieces, the rows below its drawing. */
  readonly layoutRows: readonly (readonly (readonly string[])[])[];
  readonly ranges?: Ranges;
  readonly units: DrawingUnits;
  readonly projection: Projection;
  readonly revision: string;
  /** Outside diameter of the guide bush the templates are made for, when one is used, mm. */
  readonly bush?: number;
  readonly printScale?: PrintScale;
  /** Written over every page: `FAILED CHECKS`. */
  readonly stamp?: string;
  readonly owner?: string;
  readonly date?: string;
}

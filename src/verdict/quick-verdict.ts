import { quickVerdict } from '../checks/index.js';
import { TenonwrightError } from '../errors.js';
import { speaker } from '../length/index.js';
import { designFor } from '../shop/index.js';
import type { Question, Values, Verdict } from './verdict.js';

/** A verdict from the data alone; no solid is made. */
export interface ByData extends Verdict {
  /** What only the full verdict can tell; nothing when the design cannot be built. */
  readonly open: readonly string[];
}

/** Builds a design and tells what its data alone say of it. */
export function quickVerdictOf({ model, shop }: Question, values: Values): ByData {
  try {
    const design = designFor(model, values, shop);
    return { ...quickVerdict(design, speaker(shop.units)), refused: undefined };
  } catch (error) {
    if (!(error instanceof TenonwrightError)) throw error;
    return { findings: [], open: [], refused: error };
  }
}

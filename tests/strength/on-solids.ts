import type { Design } from '../../src/assembly/index.js';
import { type Solids, solidsOf, startKernel } from '../../src/solid/index.js';
import { type Margin, type Strength, strengthOn, type Told } from '../../src/strength/index.js';

/** What a design bears, and whatever else is looked at on its solids, which are freed again. */
export async function borne<T>(
  design: Design,
  look: (strength: Strength, solids: Solids) => T,
  told?: Told,
): Promise<T> {
  const kernel = await startKernel();
  try {
    const solids = solidsOf(kernel, design);
    return look(strengthOn(solids, told)!, solids);
  } finally {
    kernel.dispose();
  }
}

/** The one margin whose words hold all that is asked for. */
export function margin({ margins }: Strength, ...words: readonly string[]): Margin {
  const found = margins.filter(({ what }) => words.every((word) => what.includes(word)));
  if (found.length !== 1) throw new Error(`${found.length} margins tell ${words.join(' and ')}`);
  return found[0]!;
}

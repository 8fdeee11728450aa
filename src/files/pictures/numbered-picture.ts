import type { Design } from '../../assembly/index.js';
import { finishSheets, numberedDrafts } from '../../drawing/index.js';
import type { Rule } from '../../length/index.js';
import { type Solids, solidsOf, startKernel } from '../../solid/index.js';
import { sheetSvg } from '../svg/index.js';

/**
 * A design put together, its boards numbered and listed, on one sheet of A4: how it was understood, before anything is checked.
 *
 * @returns SVG
 */
export async function numberedPicture(design: Design, units: Rule): Promise<string> {
  const kernel = await startKernel();
  try {
    return drawn(solidsOf(kernel, design), units);
  } finally {
    kernel.dispose();
  }
}

function drawn(solids: Solids, units: Rule): string {
  const { design } = solids;
  const [sheet] = finishSheets(numberedDrafts(solids, units), {
    design: design.title,
    number: design.name.slice(0, 10),
    revision: '-',
    units,
    projection: 'first-angle',
  });
  return sheetSvg(sheet!);
}

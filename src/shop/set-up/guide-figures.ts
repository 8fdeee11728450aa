import { COLLAR_AIR } from '../practice/index.js';
import { inBoth } from '../words/index.js';
import type { FigureRequest } from './figure-request.js';
import { SAME_CUTTER } from './figure-request.js';
import { atLeast, judged } from './judged.js';
import type { Figure } from './setup-card.js';

/** Room for chips beside the cutter in a bush, each side. Common practice, no source. */
const CHIP_ROOM = 1;

/** Whether the router's own edge guide would do instead of a guide board. */
export function edgeGuideFigure({ work, shop }: FigureRequest): Figure {
  const besides = work.faces
    .filter(({ normal }) => Math.abs(normal[1]) > 1 - 1e-9)
    .map(({ offset }) => Math.abs(offset));
  const needed = besides.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...besides);
  const reach = shop.router.guideReach;
  if (!Number.isFinite(needed)) {
    return {
      name: 'edge guide instead of the guide board',
      needed: 0,
      available: reach,
      verdict: reach === undefined ? 'not verified' : 'failed',
      text: 'no edge of the work runs along the mortise: use the guide board',
    };
  }
  const figure = atLeast(
    'edge guide instead of the guide board',
    needed,
    reach,
    'from the cutter to the nearest edge along the mortise',
    "the reach of the router's edge guide",
  );
  const told = figure.verdict === 'passed' ? 'it may be used instead' : 'use the guide board';
  return { ...figure, text: `${figure.text}: ${told}` };
}

/** The bush against cutter and template. */
export function bushFigures({ holding, aids, shop }: FigureRequest, outside: number): readonly Figure[] {
  const bush = shop.bushes.find((one) => Math.abs(one.outside - outside) < SAME_CUTTER);
  const template = aids.find(({ board }) => board.id === holding.window?.aid)?.board.blank.thickness;
  const missing = bush === undefined ? [`a bush of ${inBoth(outside)}`] : [];
  return [
    judged(
      'bush lets chips out',
      holding.mortise.width + 2 * CHIP_ROOM,
      bush?.bore,
      missing,
      `the cutter and ${inBoth(CHIP_ROOM)} on each side`,
    ),
    judged(
      'template thicker than the collar is long',
      (bush?.collarLength ?? 0) + COLLAR_AIR,
      template,
      [...missing, ...(template === undefined ? ["the template's thickness"] : [])],
      `the collar and ${inBoth(COLLAR_AIR)}`,
    ),
  ];
}

import { forRouter, speaker } from '../../length/index.js';
import { SAME_SHANK } from '../../tolerances.js';
import type { CutterAtHand, Shop } from '../at-hand/index.js';
import { COLLET_GRIP_DIAMETERS } from '../practice/index.js';
import { judged, lacking } from './judged.js';
import type { Figure } from './setup-card.js';

/** Grip, base, what is below it, and depth against the cutter's length. */
export function overallFigure(
  cutter: CutterAtHand | undefined,
  through: number,
  depth: number,
  shop: Shop,
): Figure {
  const { baseThickness } = shop.router;
  const say = speaker(forRouter(shop.units));
  const grip = cutter?.shank === undefined ? undefined : COLLET_GRIP_DIAMETERS * cutter.shank;
  const needed = (grip ?? 0) + (baseThickness ?? 0) + through + depth;
  const missing = [
    ...(grip === undefined ? ["the cutter's shank"] : []),
    ...(baseThickness === undefined ? ["the router's base thickness"] : []),
    ...(cutter?.overallLength === undefined ? ["the cutter's overall length"] : []),
  ];
  const parts = [
    ...(grip === undefined ? [] : [`grip in the collet ${say.length(grip)}`]),
    ...(baseThickness === undefined ? [] : [`base ${say.length(baseThickness)}`]),
    ...(through > 0 ? [`plate or template ${say.length(through)}`] : []),
    `depth ${say.length(depth)}`,
  ];
  return judged(say, 'cutter long enough', needed, cutter?.overallLength, missing, parts.join(' + '));
}

/** Depth against the cutting edges. */
export function edgesFigure(
  cutter: CutterAtHand | undefined,
  depth: number,
  shop: Shop,
  name: string,
): Figure {
  const missing = cutter?.cuttingLength === undefined ? [`the cutting length of the ${name}`] : [];
  const figure = judged(
    speaker(forRouter(shop.units)),
    'cutting edges long enough',
    depth,
    cutter?.cuttingLength,
    missing,
    'to reach the bottom',
  );
  const slim = cutter?.shank !== undefined && cutter.shank < cutter.nominal - SAME_SHANK;
  if (figure.verdict !== 'failed' || !slim) return figure;
  return {
    ...figure,
    verdict: 'passed',
    text: `the shank is thinner than the cutter and goes freely into the mortise above the edges; ${figure.text}`,
  };
}

/** The shank against the collets. */
export function colletFigure(cutter: CutterAtHand | undefined, shop: Shop, name: string): Figure {
  const { collets } = shop.router;
  const say = speaker(forRouter(shop.units));
  const shank = cutter?.shank;
  const missing = [
    ...(shank === undefined ? [`the shank of the ${name}`] : []),
    ...(collets === undefined ? ["the router's collets"] : []),
  ];
  const nearest = collets?.toSorted((a, b) => Math.abs(a - (shank ?? 0)) - Math.abs(b - (shank ?? 0)))[0];
  const fits = shank !== undefined && nearest !== undefined && Math.abs(nearest - shank) < SAME_SHANK;
  return {
    name: 'collet fits the shank',
    needed: shank ?? 0,
    available: nearest,
    verdict: missing.length > 0 ? 'not verified' : fits ? 'passed' : 'failed',
    text:
      missing.length > 0
        ? lacking(missing)
        : fits
          ? `a collet of ${say.tool(nearest)} takes the shank`
          : `no collet takes a shank of ${say.tool(shank!)}${nearest === undefined ? '' : `; the nearest is ${say.tool(nearest)}`}`,
  };
}

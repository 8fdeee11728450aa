import { forRouter, speaker } from '../../length/index.js';
import { cutterAtHand } from '../at-hand/index.js';
import type { FigureRequest } from './figure-request.js';
import { bushFigures, edgeGuideFigure } from './guide-figures.js';
import { atLeast } from './judged.js';
import type { Figure } from './setup-card.js';
import { supportFigure } from './support-figure.js';
import { colletFigure, edgesFigure, overallFigure } from './tool-figures.js';

/** Every figure of a set-up that depends on the shop; what the shop file does not say is not verified. */
export function cardFigures(request: FigureRequest): readonly Figure[] {
  const { holding, shop } = request;
  const { width, depth } = holding.mortise;
  const say = speaker(forRouter(shop.units));
  const cutter = cutterAtHand(shop, width);
  const through = throughOf(request);
  const name = `${say.tool(width)} cutter`;
  return [
    overallFigure(cutter, through, depth, shop),
    edgesFigure(cutter, depth, shop, name),
    atLeast(
      say,
      'plunge travel',
      through + depth,
      shop.router.plungeTravel,
      `what is between base and work, ${say.length(through)}, and the depth`,
      'the plunge travel of the router',
    ),
    colletFigure(cutter, shop, name),
    ...(holding.way === 'guide board' ? [edgeGuideFigure(request)] : []),
    ...(holding.window ? bushFigures(request, holding.window.bush) : []),
    ...(holding.way === 'both rails' ? [] : [supportFigure(request)]),
  ];
}

/** Thickness between the router's base and the work: the jig's plate, a template, or nothing. */
function throughOf({ holding, jig, aids }: FigureRequest): number {
  if (holding.travelling.what === 'jig plate') return jig.plate.thickness;
  return aids.find(({ board }) => board.id === holding.window?.aid)?.board.blank.thickness ?? 0;
}

import type { FaceId } from '../../board/index.js';
import { forRouter, speaker } from '../../length/index.js';
import { regionBounds } from '../../profile/index.js';
import { SAME_CUTTER, UPRIGHT } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';
import type { LaidIn } from '../holding/index.js';
import { COLLAR_AIR } from '../practice/index.js';
import type { FigureRequest } from './figure-request.js';
import { atLeast, judged } from './judged.js';
import type { EdgeGuide, Figure } from './setup-card.js';

/** Room for chips beside the cutter in a bush, each side. Common practice, no source. */
const CHIP_ROOM = 1;

/** The nearest edge an edge guide's fence could run along: parallel to the mortise, upright, and there beside all of it. */
function nearestEdge({ work }: Pick<FigureRequest, 'work'>): EdgeGuide | undefined {
  const half = work.mortise.length / 2;
  return work.faces
    .filter(({ normal, fromTheSide }) => {
      const { minX, maxX } = regionBounds(fromTheSide);
      return Math.abs(normal[1]) > 1 - UPRIGHT && minX <= -half && maxX >= half;
    })
    .map(({ id, offset }) => ({ face: id, distance: Math.abs(offset) }))
    .toSorted((a, b) => a.distance - b.distance)[0];
}

/**
 * The edge that the router's own edge guide reaches; undefined where it does not, or its reach is not known.
 *
 * @param hornBeyond length left on beyond an end for now: there the fence runs along the horn's own end, mm
 */
export function edgeGuideFor(
  { holding, work }: Pick<LaidIn, 'holding' | 'work'>,
  { router: { guideReach = 0 } }: Shop,
  hornBeyond: (face: FaceId) => number,
): EdgeGuide | undefined {
  const edge = holding.way === 'guide board' ? nearestEdge({ work }) : undefined;
  if (!edge) return undefined;
  const distance = edge.distance + hornBeyond(edge.face);
  return distance <= guideReach ? { ...edge, distance } : undefined;
}

/** Whether the router's own edge guide would do instead of a guide board. */
export function edgeGuideFigure({ work, shop }: FigureRequest): Figure {
  const name = 'edge guide instead of the guide board';
  const edge = nearestEdge({ work });
  const reach = shop.router.guideReach;
  if (!edge) {
    return {
      name,
      needed: 0,
      available: reach,
      verdict: reach === undefined ? 'not verified' : 'failed',
      text: 'no edge of the work runs along the mortise: use the guide board',
    };
  }
  const figure = atLeast(
    speaker(forRouter(shop.units)),
    name,
    edge.distance,
    reach,
    'from the cutter to the nearest edge along the mortise',
    "the reach of the router's edge guide",
  );
  const told =
    figure.verdict === 'passed'
      ? 'you may use it instead, where the row of a mortise names an edge for it'
      : 'use the guide board';
  return { ...figure, text: `${figure.text}: ${told}` };
}

/** The bush against cutter and template. */
export function bushFigures({ holding, aids, shop }: FigureRequest, outside: number): readonly Figure[] {
  const say = speaker(forRouter(shop.units));
  const bush = shop.bushes.find((one) => Math.abs(one.outside - outside) < SAME_CUTTER);
  const template = aids.find(({ board }) => board.id === holding.window?.aid)?.board.blank.thickness;
  const missing = bush === undefined ? [`a bush of ${say.tool(outside)}`] : [];
  return [
    judged(
      say,
      'bush lets chips out',
      holding.mortise.width + 2 * CHIP_ROOM,
      bush?.bore,
      missing,
      `the cutter and ${say.length(CHIP_ROOM)} on each side`,
    ),
    judged(
      say,
      'template thicker than the collar is long',
      (bush?.collarLength ?? 0) + COLLAR_AIR,
      template,
      [...missing, ...(template === undefined ? ["the template's thickness"] : [])],
      `the collar and ${say.length(COLLAR_AIR)}`,
    ),
  ];
}

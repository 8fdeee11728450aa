import { printAngle, trimmed } from '../../length/index.js';
import { bounds } from '../../profile/index.js';
import type { RouterAtHand } from '../at-hand/index.js';
import type { Aid } from '../holding/index.js';
import {
  EDGE_GUIDE_FEED,
  type Pass,
  type RailSetting,
  type SetupCard,
  thickEndWords,
} from '../set-up/index.js';
import { inBoth } from '../words/index.js';

/** Whether a set-up uses the rails of the jig. */
export const hasRails = ({ nearRail, farRail }: SetupCard): boolean =>
  nearRail !== undefined || farRail !== undefined;

/** What is set on router and jig for a card: name and value. */
export function settings(
  card: SetupCard,
  aids: readonly Aid[],
  { base, eccentricity = 0 }: RouterAtHand,
): readonly (readonly string[])[] {
  const purpose = (id: string) => {
    const aid = aids.find(({ board }) => board.id === id);
    return aid ? `${id} (${aid.kind})` : id;
  };
  return [
    [
      'cutter',
      `${inBoth(card.cutter)}; unplug before you change it; ${card.speedLimitRpm === undefined ? 'no speed limit is known: see the mark on it' : `at most ${trimmed(card.speedLimitRpm, 0)} rpm`}`,
    ],
    ...railRow('near rail', card.nearRail),
    ...railRow('far rail', card.farRail),
    ...(hasRails(card) && (!card.nearRail || !card.farRail)
      ? [[card.nearRail ? 'far rail' : 'near rail', 'taken off the jig']]
      : []),
    ...(card.guideOffset === undefined
      ? []
      : [
          [
            'guide board',
            `beyond the mortise, its working edge ${inBoth(card.guideOffset)} from the centre line; router off the jig${base.flats ? flatsWords(base.flats) : ''}${eccentricity === 0 || base.flats?.far !== undefined ? '' : turnedBase(card.guideOffset, eccentricity, base)}`,
          ],
        ]),
    ...(card.window
      ? [
          [
            'template',
            `${card.window.aid}${openingOf(card, aids)}; guide bush of ${inBoth(card.window.bush)}; centre the opening on both centre lines`,
          ],
        ]
      : []),
    ...(card.window
      ? []
      : [
          [
            'stops',
            `${inBoth(card.stopDistance)} from the mortise's centre line, both ways: half the mortise and half the ${card.travelling.what} (${inBoth(card.travelling.along)}) less half the cutter; ${card.guideOffset === undefined ? STOPS_ON_WORK : 'clamped to the guide board, which reaches past both'}`,
          ],
        ]),
    ...(card.stopsBeyond > 0
      ? [
          [
            'stops stand',
            `up to ${inBoth(card.stopsBeyond)} beyond the wood: clamp a straight board alongside, lower than the rails reach, to carry them`,
          ],
        ]
      : []),
    ...(card.raised > 0
      ? [
          [
            'raise the work',
            `at least ${inBoth(card.raised)} off the bench, so that the rails hang free beside it`,
          ],
        ]
      : []),
    ['depth, zero', card.zeroPoint],
    [
      'depth, stop',
      `${inBoth(card.depth)}: block ${card.depthBlock} between the stop rod and the lowest step of the turret`,
    ],
    ['passes', card.passes.map(passWords).join('; ')],
    ['plunges', plungeWords(card)],
    ['feed', card.feed],
    ...(card.cuts.some(({ edgeGuide }) => edgeGuide)
      ? [
          [
            'or by edge guide',
            `instead of the guide board, where the row of a mortise names an edge for it: ${EDGE_GUIDE_FEED}`,
          ],
        ]
      : []),
    [
      'test cut',
      `in its test blank from the cut list${card.testCut.sawnFirst.map((like) => `, sawn first like ${like}`).join('')}; ${inBoth(card.testCut.depth)} deep${wallWords(card)}; ${card.testCut.correction}`,
    ],
    ['pieces needed', card.aids.map(purpose).join(', ')],
  ];
}

/** The rails hang down beside the work and are longer than the plate: what stops it stands between them. */
const STOPS_ON_WORK =
  'clamped to the work, or screwed to its supports, between the rails: blocks no thicker than the work and taller than the plate, so that the plate meets them and the rails pass on either side';

/** A flat that comes to lie on another side brings the cutter nearer to the guide or a stop. */
const flatsWords = (flats: NonNullable<RouterAtHand['base']['flats']>): string => {
  const lie = { near: 'towards you', far: 'along the guide board', sides: 'towards the stops' } as const;
  const told = (['near', 'far', 'sides'] as const).filter((side) => flats[side] !== undefined);
  return `, its ${told.map((side) => `flat${side === 'sides' ? 's' : ''} of ${inBoth(flats[side]!)} ${lie[side]}`).join(', its ')}`;
};

/** An edge of the base that stands farther from the cutter than the others has to be the one that runs along the guide. */
const turnedBase = (offset: number, eccentricity: number, { flats }: RouterAtHand['base']): string =>
  `; turn the base until the edge that runs along it stands that far from the cutter: the cutter is ${inBoth(eccentricity)} off the middle${flats ? '' : `, and ${inBoth(offset - 2 * eccentricity)} from the opposite edge`}`;

/** The opening a template is given, over its round ends. */
function openingOf({ window }: SetupCard, aids: readonly Aid[]): string {
  const outline = aids.find(({ board }) => board.id === window?.aid)?.board.openings[0]?.outline;
  if (!outline) return '';
  const { minX, maxX, minY, maxY } = bounds(outline);
  return `, opening ${inBoth(maxX - minX)} × ${inBoth(maxY - minY)}`;
}

function railRow(name: string, rail: RailSetting | undefined): readonly (readonly string[])[] {
  if (!rail) return [];
  const { distance, toWork, wedge } = rail;
  const taped =
    wedge === undefined
      ? ''
      : `; between them, taped to the work at the middle of the mortise, ${printAngle(wedge.angleDeg)} wedge ${wedge.aid}, thick end ${thickEndWords(wedge.thickEnd)}, ${inBoth(wedge.thicknessAtMouth)} thick at the mouth, so that the wood is ${inBoth(toWork)} from the cutter's centre`;
  return [[name, `${inBoth(distance)} from the cutter's centre to its inner face${taped}`]];
}

const passWords = ({ number, depth, turretStep, spacer }: Pass): string => {
  const by = spacer
    ? ` (step ${spacer.onStep} with a spacer of about ${inBoth(spacer.thickness)} under the stop rod)`
    : turretStep === undefined
      ? ''
      : ` (turret step ${turretStep})`;
  return `${number}. ${inBoth(depth)}${by}`;
};

function plungeWords({ plunges, plungeSpacing, mortiseLength, cutter }: SetupCard): string {
  const [first] = plunges;
  if (plunges.length === 1) return 'one for each pass, on the centre line';
  const reach = inBoth(Math.abs(first!));
  const between = plunges.length - 2;
  return `for each pass in turn: set its depth, plunge at both ends, the cutter's centre ${reach} from the centre line against the stops, then ${between} times between, ${inBoth(plungeSpacing)} apart; then sweep the whole ${inBoth(mortiseLength - cutter)} from end to end at that depth`;
}

function wallWords({ testCut: { nearWall, farWall } }: SetupCard): string {
  const walls = [
    ...(nearWall === undefined ? [] : [`near wall ${inBoth(nearWall)}`]),
    ...(farWall === undefined ? [] : [`far wall ${inBoth(farWall)}`]),
  ];
  return walls.length === 0 ? '' : `; it is right with ${walls.join(' and ')}`;
}

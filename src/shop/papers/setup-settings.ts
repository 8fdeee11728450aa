import { INCH, printAngle, type Say, speaker, stepOf, trimmed } from '../../length/index.js';
import { bounds } from '../../profile/index.js';
import type { RouterAtHand, Shop } from '../at-hand/index.js';
import type { Aid } from '../holding/index.js';
import {
  EDGE_GUIDE_FEED,
  FEED_OF,
  type Pass,
  type RailSetting,
  type SetupCard,
  thickEndWords,
} from '../set-up/index.js';

/** Whether a set-up uses the rails of the jig. */
export const hasRails = ({ nearRail, farRail }: SetupCard): boolean =>
  nearRail !== undefined || farRail !== undefined;

/** What explains itself the same way on every card: said once, before them. */
export const howToSet = (cards: readonly SetupCard[], say: Say): readonly string[] => [
  'Rails: lay a rule from the flank of the cutter to the inner face of the rail, the router unplugged and the cutter turned by hand until an edge points at that rail; or set the rail against an offcut planed to it.',
  'Stops: measured from the centre line of the mortise, both ways: half the mortise and half of what travels, less half the cutter. Between rails they are blocks clamped to the work or screwed to its supports, no thicker than the work and taller than the plate, so that the plate meets them and the rails pass on either side. Beyond the wood a carrier holds them: a straight board clamped alongside, lower than the rails.',
  'Test cut: between two rails measure both walls; shift = half of what near wall − far wall differs from the card. A positive shift moves the slot towards the near face: set the near rail closer by it and the far rail farther; negative the other way. With one rail move the rail by the difference, towards the cutter when the wall is too thick.',
  `Depth: zero the cutter on the wood where the mortise will be, then set the depth block between the stop rod and the lowest step of the turret. "Step 2 + ${say.setting(say.units === 'in' ? INCH / 8 : 3)}" is a spacer about as thick on that step: any scrap, for it only shares the depth out, and the last pass is on the lowest step without one.`,
  ...(say.units === 'in'
    ? [
        `Inches: what is set on router, jig and stops is told in thousandths, as a caliper or depth gauge shows it; marks on wood to the nearest ${nearest(say)}, as on a rule. A setting and a mark that seem to differ by less than half of that are the same size: trust the setting.`,
      ]
    : []),
  ...new Set(cards.map(({ way }) => FEED_OF[way])),
  ...(cards.some(byEdgeGuide) ? [EDGE_GUIDE_FEED] : []),
  'Plunges: for each pass set its depth, plunge at both ends against the stops, then between, then sweep from end to end.',
];

const byEdgeGuide = ({ cuts }: SetupCard): boolean => cuts.some(({ edgeGuide }) => edgeGuide !== undefined);

/** The finest line of the rule that wood is marked with. */
const nearest = (say: Say): string => say.length(stepOf(say.rule));

/** What is set on router and jig for a card: name and value. */
export function settings(
  card: SetupCard,
  aids: readonly Aid[],
  { router: { base, eccentricity = 0 }, units }: Shop,
): readonly (readonly string[])[] {
  const say = speaker(units);
  const { stopDistance, travelling, window, guideOffset } = card;
  const row = (name: string, value: string | undefined) => (value === undefined ? [] : [[name, value]]);
  const turned =
    eccentricity === 0 || base.flats?.far !== undefined
      ? ''
      : turnedBase(guideOffset ?? 0, eccentricity, base, say);
  return [
    ...row(
      'cutter',
      `${say.tool(card.cutter)}; ${card.speedLimitRpm === undefined ? 'no speed limit is known: see the mark on it' : `at most ${trimmed(card.speedLimitRpm, 0)} rpm`}`,
    ),
    ...row('near rail', railWords(card, card.nearRail, say)),
    ...row('far rail', railWords(card, card.farRail, say)),
    ...row(
      'guide board',
      guideOffset === undefined
        ? undefined
        : `beyond the mortise, its working edge ${say.setting(guideOffset)} from the centre line; router off the jig${base.flats ? flatsWords(base.flats, say) : ''}${turned}`,
    ),
    ...row(
      'template',
      window &&
        `${window.aid}${openingOf(card, aids, say)}; guide bush of ${say.tool(window.bush)}; centre the opening on both centre lines`,
    ),
    ...row(
      'stops',
      window
        ? undefined
        : `${say.setting(stopDistance)} each way (${travelling.what} ${say.setting(travelling.along)})${guideOffset === undefined ? '' : '; clamped to the guide board'}${card.stopsBeyond > 0 ? `; up to ${say.length(card.stopsBeyond)} beyond the wood, on a carrier` : ''}`,
    ),
    ...row(
      'depth',
      `${say.setting(card.depth)} by ${card.depthBlock}, zeroed ${card.zeroPoint}${card.raised > 0 ? `; ${say.length(card.raised)} or more off the bench` : ''}`,
    ),
    ...row('plunges', plungeWords(card, say)),
    ...row('feed', card.nearRail && card.farRail ? undefined : card.feed),
    ...row(
      'test cut',
      `in its test blank${card.testCut.sawnFirst.map((like) => `, sawn first like ${like}`).join('')}; ${say.setting(card.testCut.depth)} deep${wallWords(card, say)}${hasRails(card) ? '' : `; ${card.testCut.correction}`}`,
    ),
  ];
}

/** Pieces to hold the work that no other row names. */
export const heldWith = ({ aids, depthBlock, nearRail, farRail, window }: SetupCard): readonly string[] => {
  const named = [depthBlock, nearRail?.wedge?.aid, farRail?.wedge?.aid, window?.aid, 'guide-board'];
  return aids.filter((aid) => !named.includes(aid));
};

/** A flat that comes to lie on another side brings the cutter nearer to the guide or a stop. */
const flatsWords = (flats: NonNullable<RouterAtHand['base']['flats']>, say: Say): string => {
  const lie = { near: 'towards you', far: 'along the guide board', sides: 'towards the stops' } as const;
  const told = (['near', 'far', 'sides'] as const).filter((side) => flats[side] !== undefined);
  return `, its ${told.map((side) => `flat${side === 'sides' ? 's' : ''} of ${say.setting(flats[side]!)} ${lie[side]}`).join(', its ')}`;
};

/** An edge of the base that stands farther from the cutter than the others has to be the one that runs along the guide. */
const turnedBase = (
  offset: number,
  eccentricity: number,
  { flats }: RouterAtHand['base'],
  say: Say,
): string =>
  `; turn the base until the edge that runs along it stands that far from the cutter: the cutter is ${say.setting(eccentricity)} off the middle${flats ? '' : `, and ${say.setting(offset - 2 * eccentricity)} from the opposite edge`}`;

/** The opening a template is given, over its round ends. */
function openingOf({ window }: SetupCard, aids: readonly Aid[], say: Say): string {
  const outline = aids.find(({ board }) => board.id === window?.aid)?.board.openings[0]?.outline;
  if (!outline) return '';
  const { minX, maxX, minY, maxY } = bounds(outline);
  return `, opening ${say.setting(maxX - minX)} × ${say.setting(maxY - minY)}`;
}

function railWords(card: SetupCard, rail: RailSetting | undefined, say: Say): string | undefined {
  if (!rail) return undefined;
  const { distance, toWork, wedge } = rail;
  const [toRail, wood] = [distance, toWork].map((from) => say.setting(from - card.cutter / 2));
  const taped =
    wedge === undefined
      ? ''
      : `; ${wedge.aid} (${printAngle(wedge.angleDeg)}) taped to the work at the middle of the mortise, thick end ${thickEndWords(wedge.thickEnd)}: ${say.setting(wedge.thicknessAtMouth)} at the mouth, ${wood} to the flank`;
  const alone = card.nearRail && card.farRail ? '' : '; the other rail taken off the jig';
  return `${toRail} from the flank of the cutter${taped}${alone}`;
}

/** The passes of every depth, for each the cards it is for. */
export const passRows = (cards: readonly SetupCard[], say: Say): readonly (readonly string[])[] =>
  cards.map(({ id, depth, passes }) => [
    id,
    say.setting(depth),
    passes.map((pass) => passWords(pass, say)).join('; '),
  ]);

const passWords = ({ number, depth, turretStep, spacer }: Pass, say: Say): string => {
  const by = spacer
    ? ` (step ${spacer.onStep} + ${say.setting(spacer.thickness)})`
    : turretStep === undefined
      ? ''
      : ` (step ${turretStep})`;
  return `${number}. ${say.setting(depth)}${by}`;
};

function plungeWords({ plunges, plungeSpacing, mortiseLength, cutter }: SetupCard, say: Say): string {
  const [first] = plunges;
  if (plunges.length === 1) return 'one for each pass, on the centre line';
  const between = plunges.length - 2;
  return `${say.setting(Math.abs(first!))} from the centre line both ways, ${between} between, ${say.setting(plungeSpacing)} apart; sweep ${say.setting(mortiseLength - cutter)}`;
}

function wallWords({ testCut: { nearWall, farWall } }: SetupCard, say: Say): string {
  const walls = [
    ...(nearWall === undefined ? [] : [`near wall ${say.setting(nearWall)}`]),
    ...(farWall === undefined ? [] : [`far wall ${say.setting(farWall)}`]),
  ];
  return walls.length === 0 ? '' : `; right with ${walls.join(' and ')}`;
}

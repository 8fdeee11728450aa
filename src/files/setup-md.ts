import type { Design } from '../assembly/index.js';
import { closedChain, fixed, printAngle, printLength, trimmed } from '../length/index.js';
import { bounds } from '../profile/index.js';
import {
  type Aid,
  boardMarks,
  type CardCut,
  faceWords,
  inBoth,
  type Pass,
  type RailSetting,
  type SetupCard,
  type Shop,
  type StoryStick,
} from '../shop/index.js';
import { table } from './md-table.js';

/** What the paper of the set-ups is made from. */
export interface SetupPaper {
  readonly design: Design;
  readonly cards: readonly SetupCard[];
  readonly sticks: readonly StoryStick[];
  readonly aids: readonly Aid[];
  readonly shop: Shop;
  readonly revision: string;
}

/** Every set-up card as Markdown: what to set, what to cut with it, and how to tell that it is right. */
export function setupMd(paper: SetupPaper): string {
  const { design, cards, shop, revision } = paper;
  const shared = sharedCautions(cards);
  return `${[
    `# ${design.title}: set-up cards`,
    '',
    `Revision ${revision}. Shop: ${shop.name}. Lengths in mm and in inches to the nearest 1/64; what a 1/64 leaves over is told in mm when it is more than 0.1 mm.`,
    '',
    ...(cards.length === 0 ? ['There is no mortise to cut.', ''] : [...overview(paper), ...before(shared)]),
    ...cards.flatMap((card) => cardLines(card, shared, paper)),
    ...chains(paper),
  ].join('\n')}\n`;
}

const WHEN = {
  'milled blank': 'on the milled blank',
  'ends cut': 'after the ends are cut',
  'outline cut': 'after the outline is cut',
} as const;

const sharedCautions = (cards: readonly SetupCard[]): readonly string[] =>
  (cards[0]?.cautions ?? []).filter((caution) => cards.every(({ cautions }) => cautions.includes(caution)));

function overview({ cards, design }: SetupPaper): readonly string[] {
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  return [
    ...table(
      ['card', 'when', 'held by', 'cutter', 'mortise', 'boards', 'mortises'],
      cards.map((card) => [
        card.broken.length > 0 ? `${card.id} (cannot be cut so)` : card.id,
        WHEN[card.stage],
        card.way,
        inBoth(card.cutter),
        `${fixed(card.mortiseLength, 1)} long, ${fixed(card.depth, 1)} deep`,
        [...new Set(card.cuts.map(({ board }) => marks.get(board) ?? board))].join(', '),
        String(card.cuts.length),
      ]),
    ),
    '',
    'Cut every mortise of a card before you move anything. Marks on the boards: ' +
      `${[...marks].map(([id, mark]) => `${mark} ${id.replaceAll('-', ' ')}`).join(', ')}.`,
    '',
  ];
}

const before = (shared: readonly string[]): readonly string[] => [
  '## Before every set-up',
  '',
  ...shared.map((caution) => `- ${caution}`),
  '- Stand where the near rail is towards you: left and right on the cards are yours.',
  '- Measure the depth of the first and the last mortise of a card: they may differ by 0.3 mm at most, or the cutter creeps (from memory: no source).',
  '',
];

function cardLines(
  card: SetupCard,
  shared: readonly string[],
  { design, aids }: SetupPaper,
): readonly string[] {
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  return [
    `## ${card.id}: ${card.way}, ${WHEN[card.stage]}`,
    '',
    ...broken(card),
    ...table(['set', 'to'], settings(card, aids)),
    '',
    ...table(
      [
        'board',
        'mortise',
        'plate on',
        ...(hasRails(card) ? ['near rail on', 'far rail on'] : []),
        'measured from',
        'centre',
        'ends',
        ...(card.cuts.some(({ across }) => across) ? ['across, from'] : []),
      ],
      card.cuts.map((cut) => cutRow(cut, card, design, marks)),
    ),
    '',
    ...measuring(card),
    ...table(
      ['checked', 'verdict', 'figures'],
      card.figures.map(({ name, verdict, text }) => [
        name,
        verdict === 'passed' ? 'passed' : `**${verdict}**`,
        text,
      ]),
    ),
    '',
    ...card.cautions.filter((caution) => !shared.includes(caution)).map((caution) => `- ${caution}`),
    '',
  ];
}

/** What the jig, router or cutter cannot do, once each. */
const broken = ({ broken: limits }: SetupCard): readonly string[] =>
  limits.length === 0
    ? []
    : [
        '**This set-up cannot cut its mortises:**',
        '',
        ...[...new Set(limits.map(({ message, remedy }) => `- ${message}: ${remedy}`))],
        '',
      ];

const hasRails = ({ nearRail, farRail }: SetupCard): boolean =>
  nearRail !== undefined || farRail !== undefined;

function settings(card: SetupCard, aids: readonly Aid[]): readonly (readonly string[])[] {
  const purpose = (id: string) => {
    const aid = aids.find(({ board }) => board.id === id);
    return aid ? `${id} (${aid.kind})` : id;
  };
  return [
    [
      'cutter',
      `${inBoth(card.cutter)}; plug out while you change it; ${card.speedLimitRpm === undefined ? 'no speed limit is known: see its mark' : `at most ${trimmed(card.speedLimitRpm, 0)} rpm`}`,
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
            `beyond the mortise, its working edge ${inBoth(card.guideOffset)} from the centre line; router without the jig`,
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
            `${inBoth(card.stopDistance)} from the mortise's centre line, both ways: half the mortise and half the ${card.travelling.what} (${inBoth(card.travelling.along)}) less half the cutter`,
          ],
        ]),
    ...(card.stopsBeyond > 0
      ? [
          [
            'stops stand',
            `up to ${inBoth(card.stopsBeyond)} beyond the wood: clamp a straight board alongside to carry them`,
          ],
        ]
      : []),
    ...(card.raised > 0
      ? [
          [
            'raise the work',
            `${inBoth(card.raised)} off the bench at least, so that the rails hang free beside it`,
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
    [
      'test cut',
      `in an offcut of the same section, ${inBoth(card.testCut.depth)} deep${wallWords(card)}; ${card.testCut.correction}`,
    ],
    ['pieces needed', card.aids.map(purpose).join(', ')],
  ];
}

/** The opening a template is given, over its round ends. */
function openingOf({ window }: SetupCard, aids: readonly Aid[]): string {
  const outline = aids.find(({ board }) => board.id === window?.aid)?.board.openings[0]?.outline;
  if (!outline) return '';
  const { minX, maxX, minY, maxY } = bounds(outline);
  return `, opening ${fixed(maxX - minX, 1)} × ${fixed(maxY - minY, 1)} mm`;
}

function railRow(name: string, rail: RailSetting | undefined): readonly (readonly string[])[] {
  if (!rail) return [];
  const { distance, toWork, wedge } = rail;
  const taped =
    wedge === undefined
      ? ''
      : `; between them ${printAngle(wedge.angleDeg)} wedge ${wedge.aid}, thick end ${END[wedge.thickEnd]}, ${inBoth(wedge.thicknessAtMouth)} thick at the mouth, so that the wood is ${inBoth(toWork)} from the cutter's centre`;
  return [[name, `${inBoth(distance)} from the cutter's centre to its inner face${taped}`]];
}

const END = {
  up: 'up, towards the router',
  down: 'down',
  start: 'to your left',
  end: 'to your right',
} as const;

const passWords = ({ number, depth, turretStep }: Pass): string =>
  `${number}. ${fixed(depth, 1)} mm${turretStep === undefined ? '' : ` (turret step ${turretStep})`}`;

function plungeWords({ plunges, plungeSpacing, mortiseLength, cutter }: SetupCard): string {
  const [first] = plunges;
  if (plunges.length === 1) return 'one, on the centre line';
  const reach = inBoth(Math.abs(first!));
  const between = plunges.length - 2;
  return `first at both ends, the cutter's centre ${reach} from the centre line against the stops; then ${between} between, ${inBoth(plungeSpacing)} apart; each pass deep; then sweep the whole ${fixed(mortiseLength - cutter, 1)} mm from end to end, pass by pass`;
}

function wallWords({ testCut: { nearWall, farWall } }: SetupCard): string {
  const walls = [
    ...(nearWall === undefined ? [] : [`near wall ${inBoth(nearWall)}`]),
    ...(farWall === undefined ? [] : [`far wall ${inBoth(farWall)}`]),
  ];
  return walls.length === 0 ? '' : `; right are ${walls.join(' and ')}`;
}

function cutRow(
  cut: CardCut,
  card: SetupCard,
  design: Design,
  marks: ReadonlyMap<string, string>,
): readonly string[] {
  const { board } = design.boards.find((placed) => placed.board.id === cut.board)!;
  const say = (id: string | undefined) => (id === undefined ? 'none' : faceWords(board, id));
  const number = board.mortises.findIndex(({ id }) => id === cut.mortise) + 1;
  const horn = cut.horn > 0 ? `, from the end of its ${fixed(cut.horn, 1)} mm horn` : '';
  const skew = cut.outOfSquareDeg > 0 ? ', along the centre line' : '';
  const guide =
    cut.guideEdge === undefined
      ? ''
      : `; guide's edge at ${inBoth(cut.guideEdge)}${cut.guideEdge < 0 ? ', outside the board' : ''}`;
  return [
    `${marks.get(cut.board) ?? cut.board}${cut.hand ? ` (${cut.hand})` : ''}`,
    `M${number} ${cut.mortise}`,
    say(cut.face),
    ...(hasRails(card) ? [say(cut.nearFace), say(cut.farFace)] : []),
    `${say(cut.from)}${horn}${skew}`,
    inBoth(cut.centre),
    `${inBoth(cut.ends[0])} and ${inBoth(cut.ends[1])}`,
    ...(card.cuts.some(({ across }) => across)
      ? [cut.across ? `${inBoth(cut.across.centre)} from the ${say(cut.across.from)}${guide}` : '']
      : []),
  ];
}

const measuring = ({ cuts }: SetupCard): readonly string[] =>
  cuts.some(({ outOfSquareDeg }) => outOfSquareDeg > 0)
    ? [
        'Along the centre line: lay the rule on the face the plate lies on, along the middle of the mortise, its zero at the arris with the named face.',
        '',
      ]
    : [];

/** Distances between the marks of each stick, rounded so that they add up to the board in both units. */
function chains({ sticks }: SetupPaper): readonly string[] {
  if (sticks.length === 0) return [];
  const rows = sticks.map((stick) => {
    const places = [...new Set(stick.marks.map(({ at }) => Number(at.toFixed(4))))].toSorted((a, b) => a - b);
    const parts = places.slice(1).map((at, i) => at - places[i]!);
    const [mm, inches] = [closedChain(parts, 'mm'), closedChain(parts, 'in')];
    const told = (list: readonly number[], units: 'mm' | 'in') =>
      list.map((part) => (units === 'mm' ? fixed(part, 1) : printLength(part, { units }))).join(' + ');
    return [
      stick.boards.map(({ mark }) => mark).join(', '),
      `${stick.direction}, from the ${stick.from}`,
      `${told(mm.parts, 'mm')} = ${fixed(mm.total, 1)} mm`,
      `${told(inches.parts, 'in')} = ${printLength(inches.total, { units: 'in' })}`,
      `${fixed(mm.error, 2)} mm / ${fixed(inches.error, 2)} mm`,
    ];
  });
  return [
    '## Chains',
    '',
    'From mark to mark of each story stick, rounded so that every chain adds up. Mark from one end, never from mark to mark; the last column is the most a part was rounded by, in mm and in inches.',
    '',
    ...table(['boards', 'direction', 'mm', 'inches', 'rounded by'], rows),
    '',
  ];
}

import type { Design } from '../../assembly/index.js';
import type { Shop } from '../at-hand/index.js';
import { boardMarks } from '../boards/index.js';
import type { Aid, Uncut } from '../holding/index.js';
import type { StoryStick } from '../marks/index.js';
import type { GrooveCard, SetupCard } from '../set-up/index.js';
import {
  type Block,
  cautions,
  figure,
  heading,
  inBoth,
  list,
  NEW_PAGE,
  paragraph,
  strong,
  table,
} from '../words/index.js';
import { grooveBlocks } from './groove-blocks.js';
import { chains } from './setup-chains.js';
import { cutRow, measuring } from './setup-cuts.js';
import { hasRails, settings } from './setup-settings.js';

/** What the paper of the set-ups is made from. */
export interface SetupPaper {
  readonly design: Design;
  readonly cards: readonly SetupCard[];
  readonly uncut: readonly Uncut[];
  readonly grooves?: readonly GrooveCard[];
  readonly sticks: readonly StoryStick[];
  readonly aids: readonly Aid[];
  readonly shop: Shop;
  readonly revision: string;
}

/** Every set-up card: what to set, what to cut with it, and how to tell that it is right. */
export function setupPaper(paper: SetupPaper): readonly Block[] {
  const { design, cards, shop, revision } = paper;
  const shared = sharedCautions(cards);
  return [
    heading(`${design.title}: set-up cards`, 1),
    paragraph(
      `Revision ${revision}. Shop: ${shop.name}. Lengths in mm, and in inches to the nearest 1/64; a remainder of more than 0.1 mm is added in mm.`,
    ),
    ...cannotBeCut(paper.uncut),
    ...(cards.length === 0
      ? paper.uncut.length === 0
        ? [paragraph('There are no mortises to cut.')]
        : []
      : [...overview(paper), ...before(shared)]),
    ...cards.flatMap((card) => cardBlocks(card, shared, paper)),
    ...(paper.grooves ?? []).flatMap((card) => grooveBlocks(card, design)),
    ...chains(paper.sticks),
  ];
}

const WHEN = {
  'milled blank': 'on the milled blank',
  'ends cut': 'after the ends are cut',
  'outline cut': 'after the outline is cut',
} as const;

const sharedCautions = (cards: readonly SetupCard[]): readonly string[] =>
  (cards[0]?.cautions ?? []).filter((caution) => cards.every(({ cautions }) => cautions.includes(caution)));

function overview({ cards, design }: SetupPaper): readonly Block[] {
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  return [
    table(
      ['card', 'when', 'held by', 'cutter', 'mortise', 'boards', 'mortises'],
      cards.map((card) => [
        card.id,
        WHEN[card.stage],
        card.way,
        inBoth(card.cutter),
        `${inBoth(card.mortiseLength)} long, ${inBoth(card.depth)} deep`,
        [...new Set(card.cuts.map(({ board }) => marks.get(board) ?? board))].join(', '),
        String(card.cuts.length),
      ]),
    ),
    paragraph(
      `Cut every mortise on a card before you change the set-up. Marks on the boards: ${[...marks]
        .map(([id, mark]) => `${mark} ${id.replaceAll('-', ' ')}`)
        .join(', ')}.`,
    ),
  ];
}

const before = (shared: readonly string[]): readonly Block[] => [
  heading('Before every set-up'),
  cautions(shared),
  list([
    'Hold the work in a vice or clamp it to the bench, the face that is cut up and level, the clamps clear of rails and router: the work stands still, and the router travels on it.',
    'Stand with the near rail towards you: left and right on the cards are yours.',
    'Steps of the turret are counted from the lowest. A spacer is any scrap about as thick: it only shares the depth out among the passes, and the last pass is on the lowest step without one.',
    'Measure the depth of the first and the last mortise of a card: if they differ by more than 0.3 mm, the cutter is creeping (from memory: no source).',
  ]),
];

function cardBlocks(
  card: SetupCard,
  shared: readonly string[],
  { design, aids, shop }: SetupPaper,
): readonly Block[] {
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  const own = card.cautions.filter((caution) => !shared.includes(caution));
  return [
    NEW_PAGE,
    heading(`${card.id}: ${card.way}, ${WHEN[card.stage]}`),
    figure({ of: 'card', card: card.id }),
    ...card.cuts
      .filter(({ marked }) => marked)
      .map(({ board, mortise }) => figure({ of: 'marking out', card: card.id, board, mortise })),
    table(['set', 'to'], settings(card, aids, shop.router)),
    table(
      [
        'board',
        'mortise',
        'plate on',
        ...(hasRails(card) ? ['near rail on', 'far rail on'] : []),
        'measured from',
        'centre',
        'ends',
        ...(card.cuts.some(({ across, marked }) => across ?? marked) ? ['across, from'] : []),
      ],
      card.cuts.map((cut) => cutRow(cut, card, design, marks)),
    ),
    ...measuring(card),
    table(
      ['checked', 'verdict', 'figures'],
      card.figures.map(({ name, verdict, text }) => [
        name,
        verdict === 'passed' ? verdict : strong(verdict),
        text,
      ]),
    ),
    ...(own.length > 0 ? [cautions(own)] : []),
  ];
}

/** The mortises on no card, and what would put each right. */
const cannotBeCut = (uncut: readonly Uncut[]): readonly Block[] =>
  uncut.length === 0
    ? []
    : [
        heading('Mortises that cannot be cut'),
        paragraph(
          strong(
            'No card and no step cuts these. Put them right first: the parts do not go together without them.',
          ),
        ),
        list(uncut.map(({ message, remedy }) => `${message}: ${remedy}`)),
      ];

import type { Design } from '../../assembly/index.js';
import { type Say, speaker } from '../../length/index.js';
import type { Shop } from '../at-hand/index.js';
import { boardMarks } from '../boards/index.js';
import type { Aid, Uncut } from '../holding/index.js';
import type { StoryStick } from '../marks/index.js';
import type { GrooveCard, SetupCard } from '../set-up/index.js';
import {
  alikeRows,
  type Block,
  cautions,
  figure,
  heading,
  list,
  markedSides,
  NEW_PAGE,
  paragraph,
  strong,
  table,
} from '../words/index.js';
import { grooveBlocks } from './groove-blocks.js';
import { chains } from './setup-chains.js';
import { commonTo, type Told, toldBy, without } from './setup-common.js';
import { cutRow, measuring } from './setup-cuts.js';
import { hasRails, heldWith, howToSet, passRows } from './setup-settings.js';

/** What the paper of the set-ups is made from. */
export interface SetupPaper {
  readonly design: Design;
  readonly cards: readonly SetupCard[];
  readonly uncut: readonly Uncut[];
  readonly grooves?: readonly GrooveCard[];
  readonly sticks: readonly StoryStick[];
  readonly aids: readonly Aid[];
  readonly shop: Shop;
  /** '' where the page tells it. */
  readonly revision: string;
}

/** The cards of a job: what is said once before them, each card, and what stands behind them. */
export interface SetupParts {
  readonly before: readonly Block[];
  readonly cards: readonly (readonly Block[])[];
  readonly behind: readonly Block[];
}

/** Every set-up card: what to set, what to cut with it, and how to tell that it is right; what all share is said once. */
export function setupParts(paper: SetupPaper): SetupParts {
  const { design, cards, shop, revision } = paper;
  const told = cards.map((card) => toldBy(card, paper.aids, shop));
  const common = commonTo(told);
  return {
    before: [
      heading(`${design.title}: set-up cards`, 1),
      ...(revision === '' ? [] : [paragraph(`Revision ${revision}. Shop: ${shop.name}.`)]),
      ...cannotBeCut(paper.uncut),
      ...(cards.length > 0
        ? [...overview(paper), ...before(common, paper)]
        : paper.uncut.length === 0
          ? [paragraph('There are no mortises to cut.')]
          : []),
    ],
    cards: [
      ...cards.map((card, i) => cardBlocks(card, without(told[i]!, common), paper)),
      ...(paper.grooves ?? []).map((card) => grooveBlocks(card, design, shop.units)),
    ],
    behind: [...passedChecks(paper), ...chains(paper.sticks, shop.units)],
  };
}

export function setupPaper(paper: SetupPaper): readonly Block[] {
  const { before: first, cards, behind } = setupParts(paper);
  return [...first, ...cards.flatMap((card) => [NEW_PAGE, ...card]), ...behind];
}

const WHEN = {
  'milled blank': 'on the milled blank',
  'ends cut': 'after the ends are cut',
  'outline cut': 'after the outline is cut',
} as const;

function overview({ cards, design, shop, revision }: SetupPaper): readonly Block[] {
  const say = speaker(shop.units);
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  return [
    table(
      ['card', 'when', 'held by', 'cutter', 'mortise', 'boards', 'mortises'],
      cards.map((card) => [
        card.id,
        WHEN[card.stage],
        card.way,
        say.tool(card.cutter),
        `${say.length(card.mortiseLength)}, ${say.setting(card.depth)} deep`,
        [...new Set(card.cuts.map(({ board }) => marks.get(board) ?? board))].join(', '),
        String(card.cuts.length),
      ]),
    ),
    paragraph(
      `Cut every mortise on a card before you change the set-up. Marks on the boards: ${[...marks]
        .map(
          ([id, mark]) =>
            `${mark} ${id.replaceAll('-', ' ')}${revision === '' ? '' : inBrackets(markedSides(design, [id]))}`,
        )
        .join('; ')}.`,
    ),
  ];
}

/** More than this between first and last mortise is a cutter that creeps, mm: from memory, no source. */
const CREEP = 0.3;

const inBrackets = (words: string): string => (words === '' ? '' : ` (${words})`);

const before = (common: Told, { cards, shop }: SetupPaper): readonly Block[] => [
  heading('Before every set-up'),
  cautions(common.cautions),
  list([
    'Hold the work in a vice or clamp it to the bench, the face that is cut up and level, the clamps clear of rails and router, as far off the bench as a card says for the rails to hang free: the work stands still, the router travels on it.',
    'Stand with the near rail towards you: left and right on the cards are yours.',
    ...howToSet(cards, speaker(shop.units)),
    `Measure the depth of the first and the last mortise of a card: if they differ by more than ${speaker(shop.units).setting(CREEP)}, the cutter is creeping (from memory: no source).`,
  ]),
  heading('For all cards'),
  ...common.settings.map(([name, to]) => paragraph(`${name}: ${to}.`)),
  table(['cards', 'depth', 'passes'], alikeRows(passRows(cards, speaker(shop.units)))),
  ...unknown(cards),
];

/** What nobody knows until the shop file says it: told once for all cards. */
function unknown(cards: readonly SetupCard[]): readonly Block[] {
  const rows = cards.flatMap(({ id, figures }) =>
    figures.filter(({ verdict }) => verdict === 'not verified').map(({ name, text }) => [id, name, text]),
  );
  const said = alikeRows(rows).map(([ids, name, why]) => `${ids}: ${name}: ${why}.`);
  return said.length === 0 ? [] : [paragraph(strong('Not verified:')), list(said)];
}

const doubts = (rows: readonly (readonly string[])[]): readonly Block[] =>
  rows.length === 0
    ? []
    : [
        table(
          ['check', 'verdict', 'why'],
          rows.map(([name, verdict, why]) => [name!, strong(verdict!), why!]),
        ),
      ];

function cardBlocks(card: SetupCard, own: Told, { design, shop }: SetupPaper): readonly Block[] {
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  const { head, rows, alikeForAll } = cutTable(card, design, marks, speaker(shop.units));
  return [
    heading(`${card.id}: ${card.way}, ${WHEN[card.stage]}`),
    figure({ of: 'card', card: card.id }),
    ...card.cuts
      .filter(({ marked }) => marked)
      .map(({ board, mortise }) => figure({ of: 'marking out', card: card.id, board, mortise })),
    ...(head.length > 1
      ? [
          table(head, rows),
          table(['set', 'to'], [...(alikeForAll === '' ? [] : [['work', alikeForAll]]), ...own.settings]),
        ]
      : [table(['set', 'to'], [[rows[0]![0]!, alikeForAll], ...own.settings])]),
    ...measuring(card),
    ...doubts(own.doubtful),
    ...(own.cautions.length > 0 ? [cautions(own.cautions)] : []),
  ];
}

/** The mortises of a card; what is the same for all of them stands with what is set. */
function cutTable(card: SetupCard, design: Design, marks: ReadonlyMap<string, string>, say: Say) {
  const across = card.cuts.some(({ across: one, marked }) => one ?? marked);
  const names = [
    'mortise',
    'plate on',
    ...(hasRails(card) ? ['near rail on', 'far rail on'] : []),
    'measured from',
    'centre',
    'ends',
    ...(across ? ['across, from'] : []),
  ];
  const cells = card.cuts.map((cut) => cutRow(cut, card, design, marks, say));
  const said = names.map((_, c) => c > 0 && new Set(cells.map((row) => row[c])).size === 1);
  const varied = (row: readonly string[]) => row.filter((_, c) => !said[c]);
  return {
    head: varied(names),
    rows: alikeRows(cells.map(varied)),
    alikeForAll: [
      ...names.flatMap((name, c) => (said[c] && cells[0]![c] !== 'none' ? [`${name} ${cells[0]![c]!}`] : [])),
      ...heldWith(card).map((aid) => `${aid} beside it`),
    ].join('; '),
  };
}

/** Every figure that passed, for whoever wants to see how near it came. */
function passedChecks({ cards }: SetupPaper): readonly Block[] {
  const rows = cards.flatMap(({ id, figures }) =>
    figures.filter(({ verdict }) => verdict === 'passed').map(({ name, text }) => [id, name, text]),
  );
  return rows.length === 0
    ? []
    : [heading('Set-up cards: what passed'), table(['cards', 'check', 'figures'], alikeRows(rows))];
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

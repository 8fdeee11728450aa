import type { Design } from '../assembly/index.js';
import { type Board, type FaceId, faceFrame, faces } from '../board/index.js';
import type { Vec3 } from '../frame/index.js';
import { sheetNames } from '../tables/index.js';
import { PARALLEL_DEG } from '../tolerances.js';
import { boardEnds } from './board-ends.js';
import { type BoardState, boardStates, facesIn } from './board-states.js';
import { boardsToFit } from './boards-to-fit.js';
import { faceWords } from './face-words.js';
import { type Hand, handsOf } from './handed.js';
import type { Holding, StageName } from './holding.js';
import { hornsOf } from './horns.js';
import type { SetupCard } from './setup-card.js';

export type WorkKind =
  | 'mill'
  | 'mortise'
  | 'trim horn'
  | 'cut ends'
  | 'outline'
  | 'bevel'
  | 'opening'
  | 'hole'
  | 'slot'
  | 'ease'
  | 'dry fit';

/** One thing done to one board; lengths mm, exact. */
export interface WorkStep {
  /** `left-side.3`: the third thing done to that board. */
  readonly id: string;
  /** Its place in the whole order, from 1. */
  readonly number: number;
  /** Undefined for a dry fit, which is done with several. */
  readonly board: string | undefined;
  readonly hand: Hand | undefined;
  readonly kind: WorkKind;
  /** What is done, without lengths. */
  readonly what: string;
  /** Faces that must be there and true: what the work is held by and measured from. */
  readonly uses: readonly FaceId[];
  /** Faces that are there afterwards and were not before. */
  readonly makes: readonly FaceId[];
  /** Ids of what is cut: mortises, holes, slots, openings, bevels. */
  readonly cuts: readonly string[];
  readonly figures: readonly { readonly name: string; readonly value: number; readonly unit: 'mm' | 'deg' }[];
  /** The set-up card, for a mortise. */
  readonly setup: string | undefined;
}

/** The whole work, board by board and in one order. */
export interface OrderOfWork {
  readonly steps: readonly WorkStep[];
  /** Boards cut to fit the work, with the number of the step that must be done first. */
  readonly fitAfter: ReadonlyMap<string, number>;
}

/**
 * Steps from milled boards to finished ones, so that no step takes away a face that a later one is held by or measured from:
 * mortises that want the whole blank first, then ends, then mortises that want cut ends, then outline, openings and holes.
 * Mortises are cut card by card, all boards of a card one after another. Boards that close a gap between others are made last,
 * after those were fitted together dry.
 */
export function orderOfWork(
  design: Design,
  holdings: readonly Holding[],
  cards: readonly SetupCard[],
): OrderOfWork {
  const hands = handsOf(design);
  const toFit = boardsToFit(design);
  const fitted = design.boards.filter(({ board }) => toFit.has(board.id));
  const others = design.boards.filter(({ board }) => !toFit.has(board.id));
  const draftsOf = (group: typeof design.boards) =>
    inOrder(
      group.map(({ board }) => board),
      holdings,
      cards,
    );
  const drafts: readonly Draft[] = [
    ...draftsOf(others),
    ...(fitted.length > 0
      ? [
          dryFit(
            others.map(({ board }) => board),
            fitted.map(({ board }) => board),
          ),
        ]
      : []),
    ...draftsOf(fitted),
  ];
  const counts = new Map<string, number>();
  const steps = drafts.map((draft, i): WorkStep => {
    const owner = draft.board ?? 'dry-fit';
    const nth = (counts.get(owner) ?? 0) + 1;
    counts.set(owner, nth);
    return {
      ...draft,
      id: `${owner}.${nth}`,
      number: i + 1,
      hand: draft.board === undefined ? undefined : hands.get(draft.board),
    };
  });
  const after = steps.find(({ kind }) => kind === 'dry fit')?.number ?? 0;
  return { steps, fitAfter: new Map(fitted.map(({ board }) => [board.id, after])) };
}

type Draft = Omit<WorkStep, 'id' | 'number' | 'hand'>;

interface Making {
  readonly board: Board;
  readonly states: readonly BoardState[];
  /** Names of the faces there are in each state. */
  readonly names: readonly (readonly FaceId[])[];
}

/** Steps of some boards: stage by stage, and within a stage the mortises card by card. */
function inOrder(
  boards: readonly Board[],
  holdings: readonly Holding[],
  cards: readonly SetupCard[],
): readonly Draft[] {
  const makings = boards.map((board): Making => {
    const states = boardStates(board, hornsOf(board.id, holdings));
    const known = faces(board);
    return { board, states, names: states.map((state) => facesIn(state.board, known)) };
  });
  const shaping = (name: BoardState['name']) =>
    makings.flatMap((making) => {
      const at = making.states.findIndex((state) => state.name === name);
      return at < 0 ? [] : [shape(making, at)];
    });
  const cutting = (stage: StageName) => mortises(boards, cards, stage);
  return [
    ...shaping('milled blank'),
    ...cutting('milled blank'),
    ...shaping('horns off'),
    ...shaping('ends cut'),
    ...cutting('ends cut'),
    ...shaping('outline cut'),
    ...shaping('bevels cut'),
    ...shaping('openings cut'),
    ...cutting('outline cut'),
    ...boards.flatMap((board) => unheldMortises(board, cards)),
    ...boards.flatMap(bored),
    ...boards.map(eased),
  ];
}

const MILLED =
  'mill it: reference face flat, reference edge square to it, then thickness and width, both ends square';

const FROM_SHEET =
  'saw it from the sheet: reference edge straight, then width and length, all four corners square';

/** The step that brings a board into one of its states. */
function shape({ board, states, names }: Making, at: number): Draft {
  const state = states[at]!;
  const before = names[at - 1] ?? [];
  const made = names[at]!.filter((id) => !before.includes(id));
  const common = { board: board.id, cuts: state.cuts, setup: undefined, makes: made };
  const { length, width, thickness } = board.blank;
  const has = (id: FaceId) => before.includes(id);
  switch (state.name) {
    case 'milled blank': {
      const horns = state.horns.map(({ end, length: extra }) => ({
        name: `horn beyond the ${end.replace('-', ' ')}`,
        value: extra,
        unit: 'mm' as const,
      }));
      return {
        ...common,
        kind: 'mill',
        what: `${sheetNames.includes(board.material) ? FROM_SHEET : MILLED}; mark face, edge and end${horns.length > 0 ? '; leave the horns on, and square a knife line round where each finished end will be' : ''}`,
        uses: [],
        figures: [
          { name: 'thickness', value: thickness, unit: 'mm' },
          { name: 'width', value: width, unit: 'mm' },
          { name: horns.length > 0 ? 'length without horns' : 'length', value: length, unit: 'mm' },
          ...horns,
        ],
      };
    }
    case 'horns off':
      return {
        ...common,
        kind: 'trim horn',
        what: `saw the horn off at its knife line: ${made.map((id) => faceWords(board, id)).join(' and ')}`,
        uses: ['reference-face', 'reference-edge'],
        figures: [{ name: 'length', value: length, unit: 'mm' }],
      };
    case 'ends cut':
      return { ...common, kind: 'cut ends', ...endCuts(board, made) };
    case 'outline cut':
      return {
        ...common,
        kind: 'outline',
        what: 'saw close to the outline, then rout it to the template, laid on the reference edge',
        uses: ['reference-face', ...['reference-edge', 'reference-end'].filter(has)],
        figures: [],
      };
    case 'bevels cut':
      return {
        ...common,
        kind: 'bevel',
        what: `saw ${state.cuts.map((id) => `'${id}'`).join(' and ')} between its lines on both faces`,
        uses: ['reference-face'],
        figures: state.cuts.map((id) => ({
          name: `tilt of '${id}'`,
          value: tiltDeg(board, id),
          unit: 'deg' as const,
        })),
      };
    case 'openings cut':
      return {
        ...common,
        kind: 'opening',
        what: `drill and saw inside the line, then rout ${state.cuts.join(', ')} to the template`,
        uses: ['reference-face'],
        figures: [],
      };
  }
}

/** Both ends: the words, the angles and the three lengths between them. */
function endCuts(board: Board, made: readonly FaceId[]): Pick<Draft, 'what' | 'uses' | 'figures'> {
  const ends = boardEnds(board);
  return {
    what: `saw ${made.map((id) => faceWords(board, id)).join(' and ')}, reference edge against the fence; ends ${ends.ends}; stop set to: ${ends.stopTo}`,
    uses: ['reference-face', 'reference-edge'],
    figures: [
      ...made
        .flatMap((id) => [
          { name: `mitre of ${faceWords(board, id)}`, value: mitreDeg(board, id), unit: 'deg' as const },
          { name: `blade tilt of ${faceWords(board, id)}`, value: tiltDeg(board, id), unit: 'deg' as const },
        ])
        .filter(({ value }) => value > PARALLEL_DEG),
      { name: 'long point to long point', value: ends.longPoint, unit: 'mm' },
      { name: 'short point to short point', value: ends.shortPoint, unit: 'mm' },
      { name: 'centre line', value: ends.centreLine, unit: 'mm' },
    ],
  };
}

const normalOf = (board: Board, id: FaceId): Vec3 => faceFrame(board, id)?.z ?? [1, 0, 0];

const DEG = 180 / Math.PI;

/** Out of square across the board, degrees. */
const mitreDeg = (board: Board, id: FaceId): number => {
  const [x, y] = normalOf(board, id);
  return Math.atan2(Math.abs(y), Math.abs(x)) * DEG;
};

/** Out of square through the thickness, degrees. */
const tiltDeg = (board: Board, id: FaceId): number =>
  Math.asin(Math.min(1, Math.abs(normalOf(board, id)[2]))) * DEG;

/** Mortises of a stage, card by card. */
function mortises(boards: readonly Board[], cards: readonly SetupCard[], stage: StageName): readonly Draft[] {
  return cards
    .filter((card) => card.stage === stage)
    .flatMap((card) =>
      boards.flatMap((board): Draft[] => {
        const cuts = card.cuts.filter((cut) => cut.board === board.id);
        if (cuts.length === 0) return [];
        const uses = cuts.flatMap((cut) => [
          cut.face,
          cut.nearFace,
          cut.farFace,
          // with a horn on, the rule starts at the horn's own end
          cut.horn > 0 ? undefined : cut.from,
          cut.across?.from,
        ]);
        return [
          {
            board: board.id,
            kind: 'mortise',
            what: `cut ${cuts.length === 1 ? 'a mortise' : `${cuts.length} mortises`} in the ${[...new Set(cuts.map(({ face }) => faceWords(board, face)))].join(' and the ')} by card ${card.id}`,
            uses: [...new Set(uses.filter((id) => id !== undefined))],
            makes: [],
            cuts: cuts.map(({ mortise }) => mortise),
            figures: [],
            setup: card.id,
          },
        ];
      }),
    );
}

/** Mortises no card tells how to cut. */
function unheldMortises(board: Board, cards: readonly SetupCard[]): readonly Draft[] {
  const held = new Set(
    cards.flatMap(({ cuts }) => cuts.filter((cut) => cut.board === board.id).map((cut) => cut.mortise)),
  );
  const left = board.mortises.filter(({ id }) => !held.has(id));
  if (left.length === 0) return [];
  return [
    {
      board: board.id,
      kind: 'mortise',
      what: 'chop by hand the mortises that have no set-up card',
      uses: [...new Set(left.map(({ face }) => face))],
      makes: [],
      cuts: left.map(({ id }) => id),
      figures: [],
      setup: undefined,
    },
  ];
}

/** Holes, then slots, by the template. */
function bored(board: Board): readonly Draft[] {
  const step = (kind: 'hole' | 'slot', features: readonly { id: string; face: FaceId }[]): Draft[] =>
    features.length === 0
      ? []
      : [
          {
            board: board.id,
            kind,
            what: `${kind === 'hole' ? 'drill' : 'rout'} ${features.length === 1 ? `the ${kind}` : `${features.length} ${kind}s`} by the template`,
            uses: [...new Set(features.map(({ face }) => face))],
            makes: [],
            cuts: features.map(({ id }) => id),
            figures: [],
            setup: undefined,
          },
        ];
  return [...step('hole', board.holes), ...step('slot', board.slots)];
}

const eased = (board: Board): Draft => ({
  board: board.id,
  kind: 'ease',
  what: 'ease the arrises with sandpaper, but none that meets another board, and no mouth of a mortise',
  uses: [],
  makes: [],
  cuts: [],
  figures: [],
  setup: undefined,
});

const dryFit = (others: readonly Board[], fitted: readonly Board[]): Draft => ({
  board: undefined,
  kind: 'dry fit',
  what: `put ${others.map(({ name }) => name).join(', ')} together with their tenons, without glue, and measure the gap for ${fitted.map(({ name }) => name).join(', ')}; cut to what you measure where it differs from the list`,
  uses: [],
  makes: [],
  cuts: [],
  figures: fitted.map((board) => ({
    name: `length of ${board.name} by the list, long point to long point`,
    value: boardEnds(board).longPoint,
    unit: 'mm',
  })),
  setup: undefined,
});

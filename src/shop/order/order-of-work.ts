import type { Design } from '../../assembly/index.js';
import { type Board, faces } from '../../board/index.js';
import { boardsToFit, handsOf } from '../boards/index.js';
import {
  type BoardState,
  boardStates,
  facesIn,
  type Holding,
  hornsOf,
  type StageName,
  uncutMortises,
} from '../holding/index.js';
import type { SetupCard } from '../set-up/index.js';
import { boredSteps, grooveSteps, mortiseSteps } from './cutting-steps.js';
import { dryFit } from './dry-fit.js';
import { type Making, shapingStep } from './shaping-steps.js';
import {
  edgeJoint,
  firstSteps,
  followerFigures,
  lastSteps,
  milledInLength,
  tenonSteps,
  testCutStep,
  type WholeJob,
} from './whole-job.js';
import type { StepDraft, WorkStep } from './work-step.js';

/** The whole work, board by board and in one order. */
export interface OrderOfWork {
  readonly steps: readonly WorkStep[];
  /** Boards cut to fit the work, with the number of the step that must be done first. */
  readonly fitAfter: ReadonlyMap<string, number>;
  /** Mortises that cannot be cut with what is at hand, and why: no step orders them. */
  readonly notOrdered: readonly NotOrdered[];
}

export interface NotOrdered {
  readonly board: string;
  readonly mortise: string;
  /** What forbids it and what would cure it, a sentence each. */
  readonly because: readonly string[];
}

/**
 * Steps from milled boards to finished ones, so that no step takes away a face that a later one is held by or measured from:
 * mortises that want the whole blank first, then ends, then mortises that want cut ends, then outline, openings, grooves and holes.
 * Mortises are cut card by card, all boards of a card one after another. Boards that close a gap between others are made last,
 * after those were fitted together dry, with the tenons made before.
 *
 * @param job what else belongs to the job: its steps stand where they are needed
 */
export function orderOfWork(
  design: Design,
  holdings: readonly Holding[],
  cards: readonly SetupCard[],
  job: WholeJob = {},
): OrderOfWork {
  const notOrdered = uncuttable(design, holdings);
  const before = new Set<string>();
  const hands = handsOf(design);
  const toFit = boardsToFit(design);
  const fitted = design.boards.filter(({ board }) => toFit.has(board.id));
  const others = design.boards.filter(({ board }) => !toFit.has(board.id));
  // a dry fit is of what is joined
  const panels = new Set((design.captives ?? []).map(({ panel }) => panel));
  const draftsOf = (group: typeof design.boards) =>
    inOrder(
      group.map(({ board }) => board),
      holdings,
      cards,
      job,
      design.cutter,
    ).flatMap((draft) => withBefore(draft, cards, job, before));
  const drafts: readonly StepDraft[] = [
    ...firstSteps(design, job),
    ...draftsOf(others),
    ...tenonSteps(design, job),
    ...(fitted.length > 0
      ? [
          dryFit(
            design,
            others.filter(({ board }) => !panels.has(board.id)),
            fitted,
          ),
        ]
      : []),
    ...draftsOf(fitted),
    ...lastSteps(design, job),
  ];
  const counts = new Map<string, number>();
  const steps = drafts.map((draft, i): WorkStep => {
    const owner = draft.board ?? draft.kind.replace(' ', '-');
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
  return { steps, fitAfter: new Map(fitted.map(({ board }) => [board.id, after])), notOrdered };
}

/**
 * A step with what has to be done right before it: a wide blank glued up, the first mortise of a card tried.
 *
 * @param before marks and cards of which that is done
 */
function withBefore(
  draft: StepDraft,
  cards: readonly SetupCard[],
  job: WholeJob,
  before: Set<string>,
): readonly StepDraft[] {
  if (draft.kind === 'mill' && draft.board !== undefined) {
    const { board } = draft;
    const glued = job.gluedUp?.find(({ boards }) => boards.includes(board));
    const length = job.milledIn?.get(board);
    const mill = length === undefined ? draft : milledInLength(draft, length);
    if (!glued || before.has(glued.mark)) return [mill];
    before.add(glued.mark);
    return [edgeJoint(glued), mill];
  }
  const card = cards.find(({ id }) => id === draft.setup);
  if (!card || before.has(card.id)) return [draft];
  before.add(card.id);
  return [testCutStep(card, job), draft];
}

/** Mortises that cannot be cut with what is at hand, each with all its reasons. */
function uncuttable(design: Design, holdings: readonly Holding[]): readonly NotOrdered[] {
  const found = new Map<string, NotOrdered>();
  for (const { board, mortise, why, remedy } of uncutMortises(design, holdings)) {
    const key = `${board} ${mortise.id}`;
    const because = [...new Set([...(found.get(key)?.because ?? []), `${why}: ${remedy}`])];
    found.set(key, { board, mortise: mortise.id, because });
  }
  return [...found.values()];
}

/** Steps of some boards: stage by stage, and within a stage the mortises card by card. */
function inOrder(
  boards: readonly Board[],
  holdings: readonly Holding[],
  cards: readonly SetupCard[],
  job: WholeJob,
  cutter: number,
): readonly StepDraft[] {
  const { grooves = [], cutters = [], templates = [] } = job;
  const follower = (id: string) => {
    const own = templates.filter(({ boards: serves }) => serves.includes(id));
    return own.length > 0 ? followerFigures(job, cutter, own) : [];
  };
  const makings = boards.map((board): Making => {
    const states = boardStates(board, hornsOf(board.id, holdings));
    const known = faces(board);
    return { board, states, names: states.map((state) => facesIn(state.board, known)) };
  });
  const shaping = (name: BoardState['name']) =>
    makings.flatMap((making) => {
      const at = making.states.findIndex((state) => state.name === name);
      return at < 0 ? [] : [shapingStep(making, at, follower(making.board.id))];
    });
  const cutting = (stage: StageName) => mortiseSteps(boards, cards, stage);
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
    ...grooveSteps(boards, grooves),
    ...boards.flatMap((board) => boredSteps(board, cutters)),
    ...boards.map(eased),
  ];
}

const eased = (board: Board): StepDraft => ({
  board: board.id,
  kind: 'ease',
  what: 'ease the arrises with sandpaper, but not where they meet another board or at the mouth of a mortise',
  uses: [],
  makes: [],
  cuts: [],
  figures: [],
  setup: undefined,
});

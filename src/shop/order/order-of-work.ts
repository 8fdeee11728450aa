import type { Design } from '../../assembly/index.js';
import { type Board, faces } from '../../board/index.js';
import { boardEnds, boardsToFit, handsOf } from '../boards/index.js';
import {
  type BoardState,
  boardStates,
  facesIn,
  type Holding,
  hornsOf,
  type StageName,
} from '../holding/index.js';
import type { SetupCard } from '../set-up/index.js';
import { boredSteps, mortiseSteps, unheldSteps } from './cutting-steps.js';
import { type Making, shapingStep } from './shaping-steps.js';
import type { StepDraft, WorkStep } from './work-step.js';

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
 * after those were fitted together dry, with the tenons made before.
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
  const drafts: readonly StepDraft[] = [
    ...draftsOf(others),
    // a dry fit needs the tenons
    ...(design.joints.length > 0 ? [tenons(design.joints)] : []),
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
  return { steps, fitAfter: new Map(fitted.map(({ board }) => [board.id, after])) };
}

/** Steps of some boards: stage by stage, and within a stage the mortises card by card. */
function inOrder(
  boards: readonly Board[],
  holdings: readonly Holding[],
  cards: readonly SetupCard[],
): readonly StepDraft[] {
  const makings = boards.map((board): Making => {
    const states = boardStates(board, hornsOf(board.id, holdings));
    const known = faces(board);
    return { board, states, names: states.map((state) => facesIn(state.board, known)) };
  });
  const shaping = (name: BoardState['name']) =>
    makings.flatMap((making) => {
      const at = making.states.findIndex((state) => state.name === name);
      return at < 0 ? [] : [shapingStep(making, at)];
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
    ...boards.flatMap((board) => unheldSteps(board, cards)),
    ...boards.flatMap(boredSteps),
    ...boards.map(eased),
  ];
}

const eased = (board: Board): StepDraft => ({
  board: board.id,
  kind: 'ease',
  what: 'ease the arrises with sandpaper, but none that meets another board, and no mouth of a mortise',
  uses: [],
  makes: [],
  cuts: [],
  figures: [],
  setup: undefined,
});

const tenons = (joints: Design['joints']): StepDraft => ({
  board: undefined,
  kind: 'tenons',
  what: `make the ${joints.reduce((sum, joint) => sum + joint.tenons.length, 0)} tenons by the tenon schedule, from strips tried in a test mortise`,
  uses: [],
  makes: [],
  cuts: [],
  figures: [],
  setup: undefined,
});

const dryFit = (others: readonly Board[], fitted: readonly Board[]): StepDraft => ({
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

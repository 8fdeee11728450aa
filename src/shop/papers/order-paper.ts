import type { Design } from '../../assembly/index.js';
import type { Board } from '../../board/index.js';
import { printAngle } from '../../length/index.js';
import type { Shop } from '../at-hand/index.js';
import { boardEnds, boardMarks, markWords } from '../boards/index.js';
import type { OrderOfWork, WorkStep } from '../order/index.js';
import {
  type Block,
  cautions,
  faceWords,
  heading,
  inBoth,
  list,
  paragraph,
  strong,
  table,
} from '../words/index.js';

/** What the paper of the order of work is made from. */
export interface OrderPaper {
  readonly design: Design;
  readonly order: OrderOfWork;
  readonly shop: Shop;
  readonly revision: string;
}

/** The order of work: what is cut now and what later, the lengths of angled boards, and every step. */
export function orderPaper({ design, order, shop, revision }: OrderPaper): readonly Block[] {
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  return [
    heading(`${design.title}: order of work`, 1),
    paragraph(
      `Revision ${revision}. Shop: ${shop.name}. Keep to this order: no step cuts away a face that a later step is held by or measured from.`,
    ),
    ...boards(design, order, marks),
    ...notOrdered(design, order, marks),
    heading('Steps'),
    table(
      ['step', 'board', 'do', 'sizes', 'held by and measured from'],
      order.steps.map((step) => stepRow(step, design, marks)),
    ),
    cautions([
      'Unplug the router before you change a cutter.',
      'Wear eye, ear and dust protection.',
      'Cut short pieces from longer ones, or clamp them; never hold them by hand.',
      'No climb cuts.',
    ]),
  ];
}

function boards(design: Design, order: OrderOfWork, marks: ReadonlyMap<string, string>): readonly Block[] {
  const rows = design.boards.map(({ board }) => {
    const ends = boardEnds(board);
    const after = order.fitAfter.get(board.id);
    const square = ends.ends === 'square';
    const hand = order.steps.find((step) => step.board === board.id)?.hand;
    return [
      named(board, { hand }, marks),
      `${inBoth(board.blank.thickness)} × ${inBoth(board.blank.width)} × ${inBoth(board.blank.length)}`,
      after === undefined ? 'cut now' : `cut to fit after step ${after}`,
      `ends ${ends.ends}`,
      square ? '' : inBoth(ends.longPoint),
      square ? '' : inBoth(ends.shortPoint),
      square ? '' : inBoth(ends.centreLine),
      square ? '' : ends.stopTo,
    ];
  });
  const [first] = marks.values();
  return [
    heading('Boards'),
    table(
      [
        'board',
        'milled: thickness × width × length',
        'when',
        'ends',
        'long points',
        'short points',
        'centre line',
        'set the stop to',
      ],
      rows,
    ),
    paragraph(`Mark every board as soon as it is milled, like this: ${markWords(first ?? 'A')}.`),
  ];
}

/** Mortises no step orders, with their reasons: told before anything is cut. */
function notOrdered(
  design: Design,
  { notOrdered: left }: OrderOfWork,
  marks: ReadonlyMap<string, string>,
): readonly Block[] {
  if (left.length === 0) return [];
  return [
    paragraph(
      strong(
        `${left.length === 1 ? 'A mortise cannot' : `${left.length} mortises cannot`} be cut with the tools at hand, and no step below cuts ${left.length === 1 ? 'it' : 'them'}. Change the design or the tools before you begin:`,
      ),
    ),
    list(
      left.map(({ board: id, mortise, because }) => {
        const board = design.boards.find((placed) => placed.board.id === id)!.board;
        const number = board.mortises.findIndex((one) => one.id === mortise) + 1;
        return `${marks.get(id)} ${board.name}, M${number} ${mortise}: ${because.join('; ')}`;
      }),
    ),
  ];
}

/** In which steps all boards made so far take part. */
const TOGETHER: readonly WorkStep['kind'][] = ['dry fit', 'dry assembly', 'glue-up', 'finish'];

const belongsTo = ({ kind }: WorkStep): string =>
  kind === 'tenons' ? 'tenons' : TOGETHER.includes(kind) ? 'all so far' : '';

function stepRow(step: WorkStep, design: Design, marks: ReadonlyMap<string, string>): readonly string[] {
  const board = design.boards.find((placed) => placed.board.id === step.board)?.board;
  const sizes = step.figures.map(
    ({ name, value, unit }) => `${name} ${unit === 'mm' ? inBoth(value) : printAngle(value)}`,
  );
  return [
    String(step.number),
    board ? named(board, step, marks) : belongsTo(step),
    step.what,
    sizes.join('; '),
    board ? step.uses.map((id) => faceWords(board, id)).join(', ') : '',
  ];
}

/** `LS left side`; the hand is added where the name does not say it. */
const named = (board: Board, { hand }: Pick<WorkStep, 'hand'>, marks: ReadonlyMap<string, string>): string =>
  `${marks.get(board.id)} ${board.name}${hand && !board.name.includes(hand) ? ` (${hand})` : ''}`;

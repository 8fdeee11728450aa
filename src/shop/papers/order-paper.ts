import type { Design } from '../../assembly/index.js';
import type { Board } from '../../board/index.js';
import { printAngle, type Say, speaker } from '../../length/index.js';
import type { Shop } from '../at-hand/index.js';
import { boardMarks, markWords } from '../boards/index.js';
import type { OrderOfWork, WorkStep } from '../order/index.js';
import {
  type Block,
  cautions,
  type FigureSlot,
  faceWords,
  figure,
  heading,
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

/** The order of work: every step, those that equal boards share in one row, and a picture wherever a board changes. */
export function orderPaper({ design, order, shop, revision }: OrderPaper): readonly Block[] {
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  const say = speaker(shop.units);
  const [first] = marks.values();
  return [
    heading(`${design.title}: order of work`, 1),
    paragraph(
      `${revision === '' ? '' : `Revision ${revision}. Shop: ${shop.name}. `}Keep to this order: no step cuts away a face that a later step is held by or measured from. Mark every board as soon as it is milled, like this: ${markWords(first ?? 'A')}.`,
    ),
    ...notOrdered(design, order, marks),
    ...stepBlocks(order, design, marks, say),
    cautions([
      'Unplug the router before you change a cutter. Wear eye, ear and dust protection. No climb cuts.',
      'Cut short pieces from longer ones, or clamp them; never hold them by hand.',
    ]),
  ];
}

/** Steps whose picture shows something new. */
const PICTURED: ReadonlySet<WorkStep['kind']> = new Set([
  'mill',
  'mortise',
  'trim horn',
  'cut ends',
  'outline',
  'bevel',
  'opening',
  'hole',
  'slot',
  'groove',
  'dry fit',
]);

/** Pictures in a row. */
const IN_ROW = 4;

function stepBlocks(
  { steps }: OrderOfWork,
  design: Design,
  marks: ReadonlyMap<string, string>,
  say: Say,
): readonly Block[] {
  const shared: WorkStep[][] = [];
  for (const step of steps) {
    const last = shared.at(-1);
    if (last && step.board !== undefined && likeWork(last[0]!) === likeWork(step)) last.push(step);
    else shared.push([step]);
  }
  const found: Block[] = [];
  let rows: (readonly string[])[] = [];
  let pictures: FigureSlot[] = [];
  const set = () => {
    if (rows.length > 0) found.push(table(['step', 'board', 'do'], rows));
    found.push(...pictures);
    [rows, pictures] = [[], []];
  };
  for (const alike of shared) {
    const numbers = alike.map(({ number }) => number).join(', ');
    rows.push([numbers, ...stepCells(alike, design, marks, say)]);
    const { kind, number } = alike[0]!;
    const own = alike.flatMap(({ board }) => (board === undefined ? [] : [marks.get(board)!])).join(', ');
    if (PICTURED.has(kind))
      pictures.push(figure({ of: 'work step', step: number, said: `${numbers}: ${own || 'boards so far'}` }));
    if (pictures.length === IN_ROW) set();
  }
  set();
  return found;
}

/** What two steps must have in common to be told in one row. */
const likeWork = ({ kind, what, figures, uses, setup }: WorkStep): string =>
  JSON.stringify([kind, what, figures.map(({ name, value }) => [name, value.toFixed(3)]), uses, setup]);

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

function stepCells(
  alike: readonly WorkStep[],
  design: Design,
  marks: ReadonlyMap<string, string>,
  say: Say,
): readonly string[] {
  const [step] = alike as readonly [WorkStep];
  const boards = alike.flatMap(({ board: id, hand }) => {
    const board = design.boards.find((placed) => placed.board.id === id)?.board;
    return board ? [{ board, hand }] : [];
  });
  const sizes = step.figures.map(
    ({ name, value, unit }) =>
      `${name} ${unit === 'deg' ? printAngle(value) : unit === 'tool' ? say.tool(value) : say.length(value)}`,
  );
  const [first] = boards;
  return [
    first ? boards.map(({ board, hand }) => named(board, { hand }, marks)).join(', ') : belongsTo(step),
    [
      step.what,
      ...sizes,
      // a card names the faces itself
      ...(first && step.setup === undefined && step.uses.length > 0
        ? [`held by and measured from ${step.uses.map((id) => faceWords(first.board, id)).join(', ')}`]
        : []),
    ].join('; '),
  ];
}

/** `LS left side`; the hand is added where the name does not say it. */
const named = (board: Board, { hand }: Pick<WorkStep, 'hand'>, marks: ReadonlyMap<string, string>): string =>
  `${marks.get(board.id)} ${board.name}${hand && !board.name.includes(hand) ? ` (${hand})` : ''}`;

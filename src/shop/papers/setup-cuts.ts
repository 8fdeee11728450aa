import type { Design } from '../../assembly/index.js';
import type { Say } from '../../length/index.js';
import { type CardCut, MARKING_OUT, markedWords, type SetupCard } from '../set-up/index.js';
import { type Block, faceWords, paragraph } from '../words/index.js';
import { hasRails } from './setup-settings.js';

/** One mortise of a card as the cells of its row. */
export function cutRow(
  cut: CardCut,
  card: SetupCard,
  design: Design,
  marks: ReadonlyMap<string, string>,
  say: Say,
): readonly string[] {
  const { board } = design.boards.find((placed) => placed.board.id === cut.board)!;
  const face = (id: string | undefined) => (id === undefined ? 'none' : faceWords(board, id));
  const number = board.mortises.findIndex(({ id }) => id === cut.mortise) + 1;
  const horn = cut.horn > 0 ? `, from the end of its ${say.length(cut.horn)} horn` : '';
  const skew = cut.outOfSquareDeg > 0 || cut.marked ? ', along the centre line' : '';
  const guide =
    cut.guideEdge === undefined
      ? ''
      : `; guide's edge at ${say.length(cut.guideEdge)}${cut.guideEdge < 0 ? ', outside the board' : ''}`;
  const edge = cut.edgeGuide
    ? `; or edge guide on the ${face(cut.edgeGuide.face)}, its fence ${say.setting(cut.edgeGuide.distance - card.cutter / 2)} from the flank of the cutter`
    : '';
  return [
    `${marks.get(cut.board) ?? cut.board}${cut.hand ? ` (${cut.hand})` : ''} M${number}`,
    face(cut.face),
    ...(hasRails(card) ? [face(cut.nearFace), face(cut.farFace)] : []),
    `${face(cut.from)}${horn}${skew}`,
    say.length(cut.centre),
    `${say.length(cut.ends[0])} and ${say.length(cut.ends[1])}`,
    ...(card.cuts.some(({ across, marked }) => across ?? marked)
      ? [
          cut.marked
            ? markedWords(board, cut.marked, say)
            : cut.across
              ? `${say.length(cut.across.centre)} from the ${face(cut.across.from)}${cut.across.horn > 0 ? ', horn and all' : ''}${guide}${edge}`
              : '',
        ]
      : []),
  ];
}

/** How to lay the rule where a face is out of square to the mortise, and how to mark out a turned one. */
export const measuring = ({ cuts }: SetupCard): readonly Block[] => [
  ...(cuts.some(({ outOfSquareDeg }) => outOfSquareDeg > 0)
    ? [
        paragraph(
          'Along the centre line: lay the rule on the face under the plate, along the middle of the mortise, with its zero at the arris with the named face.',
        ),
      ]
    : []),
  ...(cuts.some(({ marked }) => marked) ? [paragraph(MARKING_OUT)] : []),
];

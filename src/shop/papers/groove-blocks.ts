import type { Design } from '../../assembly/index.js';
import { type Rule, speaker } from '../../length/index.js';
import { boardMarks } from '../boards/index.js';
import { type GrooveCard, grooveFeedWords } from '../set-up/index.js';
import { type Block, cautions, faceWords, heading, strong, table } from '../words/index.js';

/** The card of one setting of the edge guide. */
export function grooveBlocks(card: GrooveCard, design: Design, units: Rule): readonly Block[] {
  const say = speaker(units);
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  const boards = new Map(design.boards.map(({ board }) => [board.id, board]));
  const stops = card.cuts.some(
    ({ stopLeft, stopRight }) => stopLeft !== undefined || stopRight !== undefined,
  );
  return [
    heading(`${card.id}: ${card.kind} along a fence, after the mortises`),
    table(
      ['set', 'to'],
      [
        ['cutter', say.tool(card.cutter)],
        [`${card.kind}`, `${say.setting(card.width)} wide, ${say.setting(card.depth)} deep`],
        ...(card.kind === 'groove' ? [['fence to near wall', say.setting(card.distance)]] : []),
        ...card.fence.map((at, i) => [
          card.fence.length === 1 ? "fence to the cutter's axis" : `cut ${i + 1}: fence to the cutter's axis`,
          say.setting(at),
        ]),
        ['depth of each pass', card.passes.map(({ depth }) => say.setting(depth)).join(', ')],
        ['feed', card.feed],
      ],
    ),
    table(
      ['board', 'into', 'fence on', 'feed', ...(stops ? ['stops, over its round end'] : [])],
      card.cuts.map((cut) => {
        const board = boards.get(cut.board)!;
        const at = (mm: number | undefined, side: string) =>
          mm === undefined ? [] : [`${say.length(mm)} from the ${side} end`];
        const told = [...at(cut.stopLeft, 'left'), ...at(cut.stopRight, 'right')].join(', ');
        return [
          `${marks.get(cut.board) ?? ''} ${board.name}`.trim(),
          faceWords(board, cut.face),
          faceWords(board, cut.from),
          grooveFeedWords(board, cut),
          ...(stops ? [told === '' ? 'through' : told] : []),
        ];
      }),
    ),
    table(
      ['checked', 'verdict', 'figures'],
      card.figures.map(({ name, verdict, text }) => [
        name,
        verdict === 'passed' ? verdict : strong(verdict),
        text,
      ]),
    ),
    cautions(card.cautions),
  ];
}

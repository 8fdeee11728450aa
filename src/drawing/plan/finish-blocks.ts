import { type DrawingUnits, systemOf } from '../../length/index.js';
import { type Block, faceWords, heading, list, table } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';

/** Arrises that stay sharp, board by board. */
export function sharpBlocks(solids: Solids): readonly Block[] {
  const boards = solids.design.boards.map(({ board }) => board);
  const named = (id: string) => boards.find((board) => board.id === id)?.name ?? id;
  const joints = new Map(solids.design.joints.map((joint) => [joint.id, joint]));
  const sharp = new Map<string, string[]>();
  for (const board of boards) {
    const seats = new Map<string, Set<string>>();
    for (const mortise of board.mortises) {
      const joint = joints.get(mortise.joint);
      const other = joint?.a === board.id ? joint.b : joint?.a;
      const face = faceWords(board, mortise.face);
      if (other !== undefined) seats.set(face, (seats.get(face) ?? new Set()).add(named(other)));
    }
    const words = [...seats]
      .map(([face, others]) => `arrises of the ${face} where it meets the ${[...others].join(' and the ')}`)
      .join('; ');
    if (words !== '') sharp.set(words, [...(sharp.get(words) ?? []), board.name]);
  }
  return sharp.size === 0
    ? []
    : [
        heading('Arrises that stay sharp'),
        table(
          ['board', 'leave sharp'],
          [...sharp].map(([words, names]) => [names.join(', '), words]),
        ),
      ];
}

/** How arrises are eased, and the finish. Common practice, no source. */
export const finishBlocks = (units: DrawingUnits): readonly Block[] => [
  heading('Finishing', 1),
  list([
    `Leave arrises sharp where boards meet. Ease all others: ${systemOf(units) === 'in' ? '1/32" with sandpaper; 1/8"' : '1 mm with sandpaper; 3 mm'} or more where a hand or a foot reaches, and at openings. Ease feet on their lower arrises too, or they splinter when the piece is dragged.`,
    'Wait 3 to 7 days after the glue-up before you give a joint its last sanding: glue swells the wood, and a joint sanded flush too soon sinks later.',
    'Take off pencil marks and dried glue before the finish, and graphite in a joint before the glue.',
    'On a step use a matt finish, with fine sand in the last coat on the tread: gloss is slippery in socks.',
    'Let an oil or film finish cure as its label says, about 30 days for most, before children use the piece. Lay oily rags flat outdoors to dry: in a heap they can catch fire. (All of this: common practice, no source.)',
  ]),
];

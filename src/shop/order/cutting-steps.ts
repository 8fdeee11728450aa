import type { Board, FaceId } from '../../board/index.js';
import type { StageName } from '../holding/index.js';
import type { GrooveCard, SetupCard } from '../set-up/index.js';
import { faceWords } from '../words/index.js';
import type { StepDraft } from './work-step.js';

/** Mortises of a stage, card by card; those nobody can cut are on no card. */
export function mortiseSteps(
  boards: readonly Board[],
  cards: readonly SetupCard[],
  stage: StageName,
): readonly StepDraft[] {
  return cards
    .filter((card) => card.stage === stage)
    .flatMap((card) =>
      boards.flatMap((board): StepDraft[] => {
        const cuts = card.cuts.filter((cut) => cut.board === board.id);
        if (cuts.length === 0) return [];
        const uses = cuts.flatMap((cut) => [
          cut.face,
          cut.nearFace,
          cut.farFace,
          // with a horn on, the rule starts at the horn's own end
          cut.horn > 0 ? undefined : cut.from,
          cut.across?.horn ? undefined : cut.across?.from,
          ...[cut.marked?.centreLine, cut.marked?.guideEdge]
            .flatMap((line) => line ?? [])
            .flatMap(({ on, from, onHorn, fromHorn }) => [
              onHorn > 0 ? undefined : on,
              fromHorn > 0 ? undefined : from,
            ]),
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

/** Grooves card by card; a rail of the jig bears on whole edges, so they come after the mortises. */
export function grooveSteps(boards: readonly Board[], cards: readonly GrooveCard[]): readonly StepDraft[] {
  return cards.flatMap((card) =>
    boards.flatMap((board): StepDraft[] => {
      const cuts = card.cuts.filter((cut) => cut.board === board.id);
      if (cuts.length === 0) return [];
      return [
        {
          board: board.id,
          kind: 'groove',
          what: `rout ${cuts.length === 1 ? `the ${card.kind}` : `${cuts.length} ${card.kind}s`} along the fence in the ${[...new Set(cuts.map(({ face }) => faceWords(board, face)))].join(' and the ')} by card ${card.id}`,
          uses: [...new Set(cuts.flatMap(({ face, from }) => [face, from]))],
          makes: [],
          cuts: cuts.map(({ groove }) => groove),
          figures: [],
          setup: card.id,
        },
      ];
    }),
  );
}

/** Holes, then slots, by the template. */
export function boredSteps(board: Board): readonly StepDraft[] {
  const step = (kind: 'hole' | 'slot', features: readonly { id: string; face: FaceId }[]): StepDraft[] =>
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

import type { Board, Hole, Slot } from '../../board/index.js';
import type { CutterAtHand } from '../at-hand/index.js';
import type { StageName } from '../holding/index.js';
import type { GrooveCard, SetupCard } from '../set-up/index.js';
import { faceWords } from '../words/index.js';
import { mm, type StepDraft, tool } from './work-step.js';

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

/**
 * Holes, then slots, by the template, their sizes beside them. A slot no cutter at hand is as wide as is drilled at its ends and sawn
 * out between; a hole sunk at its mouth is sunk before it is drilled through, for then the drill's point still has its wood.
 */
export function boredSteps(board: Board, cutters: readonly CutterAtHand[]): readonly StepDraft[] {
  const same = <T extends Hole | Slot>(features: readonly T[]): readonly (readonly T[])[] => {
    const groups = new Map<string, T[]>();
    for (const one of features) {
      const { id: _, at: __, ...shape } = one;
      const key = JSON.stringify(shape);
      groups.set(key, [...(groups.get(key) ?? []), one]);
    }
    return [...groups.values()];
  };
  const step = (
    kind: 'hole' | 'slot',
    features: readonly (Hole | Slot)[],
    told: Pick<StepDraft, 'what' | 'figures'>,
  ): StepDraft => ({
    board: board.id,
    kind,
    ...told,
    uses: [...new Set(features.map(({ face }) => face))],
    makes: [],
    cuts: features.map(({ id }) => id),
    setup: undefined,
  });
  return [
    ...same(board.holes).map((holes) => step('hole', holes, drilled(holes))),
    ...same(board.slots).map((slots) => step('slot', slots, slotted(slots, cutters))),
  ];
}

function drilled(holes: readonly Hole[]): Pick<StepDraft, 'what' | 'figures'> {
  const [{ diameter, depth, counterbore, countersink }] = holes as readonly [Hole, ...Hole[]];
  const count = holes.length === 1 ? 'the hole' : `${holes.length} holes`;
  const through = depth === 'through' ? 'through, on waste so that it does not break out' : 'to depth';
  const sunk = counterbore ? 'counterbore ' : '';
  return {
    what: `mark ${count} by the template with a centre punch; ${sunk ? `${sunk}first, then ` : ''}drill ${through}${countersink ? ', then countersink and try a screw in it' : ''}`,
    figures: [
      ...(counterbore ? [tool('counterbore', counterbore.diameter), mm('its depth', counterbore.depth)] : []),
      tool('drill', diameter),
      ...(depth === 'through' ? [] : [mm('depth', depth)]),
      ...(countersink
        ? [
            tool('countersink across its mouth', countersink.diameter),
            { name: 'its angle', value: countersink.angleDeg, unit: 'deg' as const },
          ]
        : []),
    ],
  };
}

function slotted(
  slots: readonly Slot[],
  cutters: readonly CutterAtHand[],
): Pick<StepDraft, 'what' | 'figures'> {
  const [{ width, length, depth, openAt }] = slots as readonly [Slot, ...Slot[]];
  const count = slots.length === 1 ? 'the slot' : `${slots.length} slots`;
  const routed = cutters.some(({ nominal }) => Math.abs(nominal - width) < SAME_SLOT);
  const out = openAt ? '; it runs out at one edge, so it has one end' : '';
  const figures = [
    tool(routed ? 'cutter' : 'drill', width),
    mm('slot over its ends', length),
    ...(openAt ? [] : [mm('from centre to centre of its ends', length - width)]),
    ...(depth === 'through' ? [] : [mm('depth', depth)]),
  ];
  if (routed || depth !== 'through')
    return { what: `rout ${count} by the template along a straight edge, in shallow passes${out}`, figures };
  return {
    what: `mark ${count} by the template: drill through at ${openAt ? 'its end' : 'both ends'}, saw out between on the waste side of both lines, then file to the lines until the bolt slides freely from end to end${out}`,
    figures,
  };
}

/** A cutter within this of a slot's width routs it in one pass, mm: the play of a clearance hole is ten times that. */
const SAME_SLOT = 0.1;

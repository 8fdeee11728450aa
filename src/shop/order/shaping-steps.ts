import type { Board, FaceId } from '../../board/index.js';
import { sheetNames } from '../../tables/index.js';
import type { BoardState } from '../holding/index.js';
import { feedRound } from '../set-up/index.js';
import { faceWords } from '../words/index.js';
import { endCuts, longWords, tiltDeg } from './end-cuts.js';
import type { StepDraft } from './work-step.js';

/** A board on its way through its states. */
export interface Making {
  readonly board: Board;
  readonly states: readonly BoardState[];
  /** Names of the faces there are in each state. */
  readonly names: readonly (readonly FaceId[])[];
}

const MILLED =
  'mill it: reference face flat, reference edge square to it, then thickness and width, both ends square';

const FROM_SHEET =
  'saw it from the sheet: reference edge straight, then width and length, all four corners square';

/**
 * The step that brings a board into one of its states.
 *
 * @param follower the cutter that follows the board's template; empty for a board that has none
 */
export function shapingStep(
  { board, states, names }: Making,
  at: number,
  follower: StepDraft['figures'],
): StepDraft {
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
        what:
          follower.length > 0
            ? `saw close to the outline, then rout it to the template, laid on the reference edge: ${feedRound('inside')} round the board, seen from above`
            : 'mark the outline, saw close to its lines, then plane to them, square to the reference face',
        uses: ['reference-face', ...['reference-edge', 'reference-end'].filter(has)],
        figures: follower,
      };
    case 'bevels cut':
      return {
        ...common,
        kind: 'bevel',
        what: `saw ${state.cuts.map((id) => `the ${faceWords(board, id)}`).join(' and ')} between its lines on both faces${longWords(board, state.cuts)}`,
        uses: ['reference-face'],
        figures: state.cuts.map((id) => ({
          name: `tilt of the ${faceWords(board, id)}`,
          value: tiltDeg(board, id),
          unit: 'deg' as const,
        })),
      };
    case 'openings cut':
      return {
        ...common,
        kind: 'opening',
        what: `drill and saw inside the line, then rout ${state.cuts.join(', ')} to the template: ${feedRound('outside')} round the inside, seen from above`,
        uses: ['reference-face'],
        figures: follower,
      };
  }
}

import type { LaidIn } from '../holding/index.js';
import { cardFigures } from './card-figures.js';
import type { FigureRequest } from './figure-request.js';
import type { Figure } from './setup-card.js';

const VERDICTS: readonly Figure['verdict'][] = ['failed', 'not verified', 'passed'];

/** Of every figure the least favourable one of all cuts: a card passes only when each of them does. */
export function worstFigures(
  group: readonly LaidIn[],
  { jig, aids, shop, outlines }: Omit<FigureRequest, 'holding' | 'work'>,
): readonly Figure[] {
  const all = group.map(({ holding, work }) => cardFigures({ holding, work, jig, aids, shop, outlines }));
  const spare = ({ available, needed, verdict }: Figure) =>
    VERDICTS.indexOf(verdict) * 1e6 + (available ?? needed) - needed;
  return all[0]!.map((figure, at) =>
    all
      .map((figures) => figures[at] ?? figure)
      .reduce((worst, one) => (spare(one) < spare(worst) ? one : worst)),
  );
}

import { type BrokenLimit, uncutMortises } from '../../shop/index.js';
import type { Bench, Held } from '../bench/index.js';
import { FINDING_KINDS, type Finding } from '../finding/index.js';

/** Mortises no way at hand can cut, with the limit each breaks, and those held a longer way because of a limit of the jig. */
export const heldMortises = (bench: Bench, held: Held): readonly Finding[] => [
  ...uncut(bench, held),
  ...longerWay(held),
];

const uncut = ({ solids, say }: Bench, held: Held): readonly Finding[] =>
  uncutMortises(solids.design, held.holdings, say).map(
    ({ board, mortise, code, ...limit }): Finding => ({
      ...limit,
      code,
      level: 'error',
      subjects: [board, mortise.id],
      unit: 'mm',
      basis: FINDING_KINDS[code].basis,
    }),
  );

/** One note for all mortises of a board that one limit keeps from the jig. */
function longerWay(held: Held): readonly Finding[] {
  const notes = new Map<string, Finding & { readonly mortises: readonly string[] }>();
  for (const holding of held.holdings) {
    if (holding.broken.length > 0) continue;
    const least = holding.refused.toSorted((a, b) => a.broken.length - b.broken.length)[0];
    const limit = least?.broken[0];
    if (!least || !limit || !worthTelling(limit)) continue;
    const key = `${holding.board} ${limit.code} ${holding.way}`;
    const mortises = [...(notes.get(key)?.mortises ?? []), holding.mortise.id];
    notes.set(key, {
      code: `held-another-way-${limit.code}`,
      level: 'note',
      subjects: [holding.board, ...mortises],
      measured: limit.measured,
      limit: limit.limit,
      unit: 'mm',
      message: `${mortises.length === 1 ? `mortise ${mortises[0]}` : `${mortises.length} mortises`} in ${holding.board}: ${WAY[holding.way]}, because ${limit.message}`,
      remedy: limit.remedy,
      basis: FINDING_KINDS[`held-another-way-${limit.code}`].basis,
      mortises,
    });
  }
  return [...notes.values()].map(({ mortises: _, ...finding }) => finding);
}

/** A jig twice as large is another jig. */
const worthTelling = ({ measured, limit }: BrokenLimit): boolean => measured <= 2 * limit;

const WAY = {
  'both rails': 'held between both rails, with packing or wedges',
  'one rail': 'held against one rail',
  'guide board': 'cut along a guide board',
  'windowed template': 'cut in a windowed template',
} as const;

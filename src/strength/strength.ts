import { type Design, USUAL_USER } from '../assembly/index.js';
import { USUAL_SEASON } from '../movement/index.js';
import type { Solids } from '../solid/index.js';
import type { Asked, Told } from './asked.js';
import { bending } from './bending.js';
import { together, type Worked } from './margin.js';
import { openings } from './openings.js';
import { racking } from './racking.js';
import { type Resting, restingOf } from './resting.js';
import { standing } from './standing.js';
import { stockIn } from './stock-state.js';
import { usedSurfaces } from './used-surface.js';

/** What a piece bears, how it stands, and what was not worked out. */
export interface Strength extends Worked {
  readonly asked: Asked;
}

/** One part of the work: standing, boards in bending, … A new part is added to {@link PARTS}. */
type Part = (asked: Asked) => Worked;

const PARTS: readonly Part[] = [standing, bending, racking, openings];

/**
 * Everything that is worked out of a piece's strength and standing, from its plain data and how it rests on the floor.
 *
 * @param atOnce leaves out warnings that take long
 * @returns undefined when nothing says what any surface is for
 */
export function strengthOf(
  design: Design,
  resting: () => Resting,
  told: Told = USUAL,
  atOnce = false,
): Strength | undefined {
  const user = design.user ?? USUAL_USER;
  const surfaces = usedSurfaces(design, user);
  if (surfaces.length === 0) return undefined;
  const asked: Asked = { design, user, surfaces, resting: resting(), ...told, atOnce };
  return { asked, ...together(PARTS.map((part) => part(asked))) };
}

/** Nothing is told. */
const USUAL: Told = { season: USUAL_SEASON, stock: stockIn(USUAL_SEASON) };

const known = new WeakMap<Solids, { readonly told: Told; readonly found: Strength | undefined }>();

/** The same from a design's solids, worked out once for checks and papers. */
export function strengthOn(solids: Solids, told: Told = USUAL): Strength | undefined {
  const before = known.get(solids);
  if (before?.told === told) return before.found;
  const found = strengthOf(solids.design, () => restingOf(solids), told);
  known.set(solids, { told, found });
  return found;
}

import { SAME_POINT } from '../../tolerances.js';
import type { Pass } from './setup-card.js';

/** Deepest pass whatever the cutter. Common practice, no source: published advice runs from 3 to 9 mm. */
const DEEPEST_PASS = 6;

/** Deepest pass by the cutter's diameter. From memory: no source. */
const PASS_SHARE = 1 / 2;

/** The deepest pass a cutter should take, mm. @example deepestPass(8) // 4 */
export const deepestPass = (cutter: number): number => Math.min(cutter * PASS_SHARE, DEEPEST_PASS);

/**
 * Depths a mortise is cut to, one after another, down to the whole depth.
 *
 * Every depth a turret step gives is one of them; between two of those, and above the highest, the way is divided into equal
 * passes, none deeper than {@link deepestPass}.
 *
 * @param depth of the mortise, mm, more than 0
 * @param cutter diameter, mm, more than 0
 * @param turretSteps heights above the lowest step, ascending from 0; none known when left out
 * @example passesOf(14, 8, [0, 6, 12]).map(({ depth }) => depth) // [2, 5, 8, 11, 14]
 */
export function passesOf(
  depth: number,
  cutter: number,
  turretSteps: readonly number[] = [],
): readonly Pass[] {
  const most = deepestPass(cutter);
  const stops = turretSteps
    .map((height, at) => ({ depth: depth - height, turretStep: at + 1 }))
    .filter((stop) => stop.depth > SAME_POINT)
    .toReversed();
  const held = stops.length > 0 ? stops : [{ depth, turretStep: undefined }];
  const passes: Pass[] = [];
  let above = 0;
  for (const stop of held) {
    const count = Math.ceil((stop.depth - above) / most - SAME_POINT);
    for (let i = 1; i <= count; i += 1) {
      passes.push({
        number: passes.length + 1,
        depth: i === count ? stop.depth : above + ((stop.depth - above) * i) / count,
        turretStep: i === count ? stop.turretStep : undefined,
        spacer:
          i === count
            ? undefined
            : { onStep: stop.turretStep ?? 1, thickness: ((stop.depth - above) * (count - i)) / count },
      });
    }
    above = stop.depth;
  }
  return passes;
}

/**
 * Where the cutter is plunged along a mortise, from its centre line: both ends first, then between them, so that each bite is
 * half a cutter at most. Common practice, no source.
 *
 * @param length of the mortise over its round ends, mm
 * @param cutter diameter, mm
 * @example plungesOf(16, 8) // [-4, 4, 0]
 */
export function plungesOf(length: number, cutter: number): readonly number[] {
  const run = Math.max(length - cutter, 0);
  if (run < SAME_POINT) return [0];
  const bites = Math.ceil(run / (cutter * PASS_SHARE) - SAME_POINT);
  const between = Array.from({ length: bites - 1 }, (_, i) => -run / 2 + (run * (i + 1)) / bites);
  return [-run / 2, run / 2, ...between];
}

/** Between two neighbouring plunges, mm; 0 when there is only one. */
export const plungeSpacing = (plunges: readonly number[]): number =>
  plunges.length < 2 ? 0 : (plunges[1]! - plunges[0]!) / (plunges.length - 1);

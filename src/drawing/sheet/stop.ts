import type { Vec2 } from '../../frame/index.js';
import type { DrawingUnits } from '../../length/index.js';
import { SAME_STOP } from '../../tolerances.js';

/** A place a dimension leads to. */
export interface Stop {
  /** From the reference, mm of the model. */
  readonly value: number;
  /** `M1 centre`. */
  readonly what: string;
  /** On the sheet, where its extension line begins. */
  readonly point: Vec2;
  /** How the part of a chain that ends here is told, when it is a cutter or held to a fit. */
  readonly rows?: (mm: number, units: DrawingUnits) => readonly string[];
}

/** Stops in order, those at one place made one that names them all; `near` decides whose point it keeps. */
export function inOrder(stops: readonly Stop[], near: (point: Vec2) => number): readonly Stop[] {
  const kept: Stop[] = [];
  for (const stop of [...stops].sort((a, b) => a.value - b.value)) {
    const last = kept.at(-1);
    if (last === undefined || stop.value - last.value > SAME_STOP) {
      kept.push(stop);
      continue;
    }
    const what = last.what === stop.what ? last.what : `${last.what}, ${stop.what}`;
    kept[kept.length - 1] = {
      ...last,
      what,
      point: near(stop.point) > near(last.point) ? stop.point : last.point,
    };
  }
  return kept;
}

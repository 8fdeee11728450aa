import type { Vec3 } from '../frame/index.js';
import type { StrengthCode } from './codes.js';

export type MarginUnit = 'mm' | 'N' | 'N·m' | 'MPa' | 'deg' | '%' | '';

/**
 * One computed figure and what it is held against: findings, the bars of the paper, of the plan and of the page all come from
 * it. Texts hold no figures; what it rests on stands with its code.
 */
export interface Margin {
  /** Of the finding it becomes when it is past a limit. */
  readonly code: StrengthCode;
  /** Ids of boards and joints, the one that must be looked at first. */
  readonly subjects: readonly string[];
  /** What the figure is, without it: `room inside the foot line at the front edge of tread`. */
  readonly what: string;
  readonly figure: number;
  readonly unit: MarginUnit;
  /** Whether more of the figure is better, or less. */
  readonly better: 'more' | 'less';
  /** Past it the design fails, or gives cause to worry, or is worth a word; a figure for information has none. */
  readonly error?: number;
  readonly warning?: number;
  readonly note?: number;
  /** Which side, edge, board or tenon governs; left out when there is only one. */
  readonly governs?: string;
  /** What can be done, when no dimension of the design is known that does it. */
  readonly remedy: string;
  /** Where to look, assembly frame, mm. */
  readonly at?: Vec3;
}

/** What could not be worked out for this design, and why. */
export interface NotComputed {
  readonly what: string;
  readonly why: string;
}

/** What one part of the work found. */
export interface Worked {
  readonly margins: readonly Margin[];
  readonly notComputed: readonly NotComputed[];
}

export const NOTHING: Worked = { margins: [], notComputed: [] };

export const together = (all: readonly Worked[]): Worked => ({
  margins: all.flatMap(({ margins }) => margins),
  notComputed: all.flatMap(({ notComputed }) => notComputed),
});

/** Figures this near to a limit have met it: the last bits of a sum. */
const ROUNDING = 1e-6;

const past = ({ figure, better }: Margin, limit: number | undefined): boolean =>
  limit !== undefined && (better === 'more' ? limit - figure : figure - limit) > ROUNDING;

/** The worst limit that is passed, and which it is; undefined when the margin is kept. */
export function passed(
  margin: Margin,
): { readonly level: 'error' | 'warning' | 'note'; readonly limit: number } | undefined {
  for (const level of ['error', 'warning', 'note'] as const) {
    const limit = margin[level];
    if (past(margin, limit)) return { level, limit: limit! };
  }
  return undefined;
}

/** The first limit the figure comes to as it gets worse; undefined for information alone. */
export const nearestLimit = (margin: Margin): number | undefined =>
  margin.note ?? margin.warning ?? margin.error;

import type { Vec3 } from '../../frame/index.js';
import type { MarginUnit } from '../../strength/index.js';
import type { FindingCode, Level } from './finding-kinds.js';

/** What a check has to say. `measured` and `limit` are in `unit`. */
export interface Finding {
  readonly code: FindingCode;
  readonly level: Level;
  /** Ids of boards, joints, tenons, hardware. */
  readonly subjects: readonly string[];
  readonly measured: number;
  readonly limit: number;
  /** What the figure is, where pieces have more than one of a kind. */
  readonly of?: string;
  /** What is wanted beyond the limit: a cure goes as far. */
  readonly wanted?: number;
  readonly unit: MarginUnit | 'mm³';
  /** Where to look, assembly frame, mm, where that is not the middle of its subjects. */
  readonly at?: Vec3;
  /** What, where, received, allowed. */
  readonly message: string;
  readonly remedy: string;
  /** One dimension that ends it and was tried, as it is typed: `--rake 8.5deg`; empty when none of those tried ends it. */
  readonly cure?: string;
  /** A published source, or `common practice, no source`. */
  readonly basis: string;
}

/** What helps, and which one dimension was tried and ends it, or that none was found. */
export const remedyWords = ({ remedy, cure }: Pick<Finding, 'remedy' | 'cure'>): string =>
  cure === undefined
    ? remedy
    : cure === ''
      ? `${remedy}; each dimension was tried by itself, and none was found that ends it`
      : `${remedy}; tried, and this cures it: ${cure}`;

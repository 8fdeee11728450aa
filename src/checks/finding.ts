export type Level = 'error' | 'warning' | 'note';

/** What a check has to say. `measured` and `limit` are in `unit`. */
export interface Finding {
  /** Stable: `tenon-bottoms-out`. */
  readonly code: string;
  readonly level: Level;
  /** Ids of boards, joints, tenons, hardware. */
  readonly subjects: readonly string[];
  readonly measured: number;
  readonly limit: number;
  readonly unit: 'mm' | 'mm³' | 'deg' | '';
  /** What, where, received, allowed. */
  readonly message: string;
  readonly remedy: string;
  /** One dimension that ends it and was tried, as it is typed: `--rake 8.5deg`. */
  readonly cure?: string;
  /** A published source, or `common practice, no source`. */
  readonly basis: string;
}

export type Level = 'error' | 'warning' | 'note';

/** What there is to know of a kind of finding before one is met. */
export interface FindingKind {
  /** The worst it can be. */
  readonly level: Level;
  readonly meaning: string;
  readonly limit: string;
  readonly basis: string;
  readonly cure: string;
}

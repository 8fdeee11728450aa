/** The dimensions that are moved from the chosen values, by camelCase name; mm, degrees or counts. */
export type At = Readonly<Record<string, number>>;

/** What a full verdict said. */
export type Answer = { readonly sound: true } | Unsound;

/** It has an error, or cannot be built. */
export interface Unsound {
  readonly sound: false;
  /** Code of the worst error, or of the refusal. */
  readonly code: string;
  /** What is wrong and what helps, a sentence. */
  readonly text: string;
  /** What else was changed, and then it is sound: `stretcher width 101.0 mm`; empty when nothing was found. */
  readonly cure?: string;
}

/** Asks for a full verdict. */
export type Judge = (at: At) => Promise<Answer>;

/** What the data alone say, in a word that stays the same while nothing changes. */
export type Glance = (at: At) => string;

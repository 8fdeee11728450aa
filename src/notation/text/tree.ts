import type { Place, Told } from './told.js';

/** Words as they were written; numbers and yes or no too. */
export type Phrase = Told<string>;

/** What stands behind a key: a phrase, a list, or further keys. `undefined` where nothing follows the colon. */
export type Said = Told<string | readonly Said[] | Keys | undefined>;

/** A key of a file and what stands behind it. */
export interface Entry {
  /** Of the key. */
  readonly at: Place;
  readonly said: Said;
}

/** Keys in the order they were written. */
export type Keys = ReadonlyMap<string, Entry>;

/** `width: 800 from 400 to 1000; Outside, left to right` */
export interface DimensionLine {
  readonly name: Phrase;
  readonly said: Phrase;
}

/** `mortise: leg - 10` */
export interface WorkedOutLine {
  readonly name: Phrase;
  readonly formula: Phrase;
}

/** `foot <= leg: the taper takes wood away` */
export interface MustLine {
  readonly left: Phrase;
  readonly relation: '<' | '<=' | '>' | '>=' | '=';
  readonly right: Phrase;
  readonly cure: Phrase;
}

/** `shelf: { grain: left-right, … }` */
export interface BoardEntry {
  readonly name: Phrase;
  readonly keys: Keys;
}

/** `apron and rail to leg: { tenons: 2 }`, of a joint or of what is held without glue. */
export interface PairEntry {
  /** A name or several joined by `and`. */
  readonly a: Phrase;
  readonly b: Phrase;
  /** Empty when nothing follows the colon. */
  readonly options: Keys;
}

/** A piece as its file tells it, every word with its place; nothing is worked out yet. */
export interface PieceTree {
  /** Folder name: `side-table`. */
  readonly design: Phrase;
  readonly title: Phrase;
  readonly about?: Phrase;
  readonly notes: readonly Phrase[];
  /** What bare numbers are. */
  readonly units: 'mm' | 'in';
  /** A name of the table of woods, or of a dimension that is `one of` them. */
  readonly wood: Phrase;
  /** Left to right, front to back, floor to top. */
  readonly piece: readonly [across: Phrase, deep: Phrase, high: Phrase];
  readonly dimensions: readonly DimensionLine[];
  readonly workedOut: readonly WorkedOutLine[];
  readonly must: readonly MustLine[];
  readonly boards: readonly BoardEntry[];
  readonly joints: readonly PairEntry[];
  readonly held: readonly PairEntry[];
  /** `used by: { heaviest: 110 kg, children: yes }` */
  readonly usedBy?: Keys;
}

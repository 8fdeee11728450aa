import { type Texts, toldApart } from './told-apart.js';

/** The part of a person's voice that error texts need: src/length makes one for each unit. Takes mm and degrees. */
export interface Voice {
  /** As read off a rule: `57.5 mm`. */
  length(mm: number): string;
  /** Finer than a rule: `0.05 mm`. */
  fine(mm: number): string;
  /** Lengths of one sentence, a figure and its limit for one: as `length` says them, or finer where two would read alike. */
  lengths<T extends readonly number[]>(...mm: T): Texts<T>;
  /** Lengths of one sentence: as `fine` says them, or finer where two would read alike. */
  fines<T extends readonly number[]>(...mm: T): Texts<T>;
  angle(degrees: number): string;
}

/** What an error says; lengths and angles are put into words by the person's voice. */
export type ErrorText = string | ((say: Voice) => string);

/** Words of the millimetre voice for stack traces and logs: the lowest layer cannot ask src/length for it. */
const IN_MM: Voice = {
  length: (mm) => inMm(mm, 1),
  fine: (mm) => `${plain(mm.toFixed(3)).replace(/\.?0+$/, '')} mm`,
  lengths: (...all) => toldApart(all, [IN_MM.length, ...FINER]),
  fines: (...all) => toldApart(all, [IN_MM.fine, ...FINER]),
  angle: (degrees) => `${plain(degrees.toFixed(2)).replace(/\.?0+$/, '')}°`,
};

const inMm = (mm: number, decimals: number): string => `${plain(mm.toFixed(decimals))} mm`;

const FINER = [2, 3, 4, 5, 6].map((decimals) => (mm: number) => inMm(mm, decimals));

const plain = (digits: string): string => digits.replace(/^-(0\.?0*)$/, '$1');

/**
 * The errors a person can cause. `code` is stable; the text says what, where, received, allowed and the remedy.
 * Anything that is not a TenonwrightError is a fault of the program.
 */
export class TenonwrightError extends Error {
  readonly code: string;
  readonly #text: ErrorText;

  /** @param text plain words, or words made of lengths and angles for {@link explain} */
  constructor(code: string, text: ErrorText) {
    super(typeof text === 'string' ? text : text(IN_MM));
    this.name = new.target.name;
    this.code = code;
    this.#text = text;
  }

  /** The text in the person's units; `message` is the same in mm. */
  explain(say: Voice): string {
    return typeof this.#text === 'string' ? this.#text : this.#text(say);
  }
}

/** Where a form shows what is wrong: at a parameter, by its option, or at a path in the shop file, `cutters[1].shank`. */
export interface Place {
  readonly of: 'size' | 'shop';
  readonly name: string;
}

/** Words about one place. */
export interface Misplaced extends Place {
  readonly text: string;
}

/** Text or a value given by the person that cannot be used. */
export class InputError extends TenonwrightError {
  readonly #at: Place | readonly InputError[];

  /** @param at its one place, or what it is made of */
  constructor(code: string, text: ErrorText, at: Place | readonly InputError[] = []) {
    super(code, text);
    this.#at = at;
  }

  /** What of it belongs to a place, in the person's units. */
  places(say: Voice): readonly Misplaced[] {
    const at = this.#at;
    return 'of' in at ? [{ ...at, text: this.explain(say) }] : at.flatMap((one) => one.places(say));
  }
}

/** An outline that is not a closed, simple loop of lines and arcs. */
export class ProfileError extends TenonwrightError {}

/** A board that cannot exist: a feature off its face, a blank without thickness. */
export class BoardError extends TenonwrightError {}

/** Two boards that cannot be joined as asked. */
export class JoinError extends TenonwrightError {}

/** A body the kernel refused, or one that is not the closed solid its data promise. */
export class SolidError extends TenonwrightError {}

/** A file or folder that cannot be written without losing something. */
export class OutputError extends TenonwrightError {}

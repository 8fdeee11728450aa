/**
 * One block of a paper: what is told, never how a writer sets it.
 *
 * Texts are plain: they hold no signs of any format, and whatever a person gave (a name, a note) stands in them as given.
 * Every writer walks the blocks and escapes for its own format; none reads them back from text.
 */
export type Block = Heading | Paragraph | List | Cautions | BlockTable | Bars | FigureSlot | NewPage;

/** Plain words, or words that must not be overlooked. */
export type Words = string | { readonly strong: string };

export interface Heading {
  readonly kind: 'heading';
  readonly text: string;
  readonly level: 1 | 2;
}

export interface Paragraph {
  readonly kind: 'paragraph';
  readonly text: Words;
}

/** Items in no order of their own; what must be done in order stands in a numbered table. */
export interface List {
  readonly kind: 'list';
  readonly items: readonly Words[];
}

/** What keeps hands and eyes whole: set so that it is seen. */
export interface Cautions {
  readonly kind: 'cautions';
  readonly items: readonly string[];
}

export interface BlockTable {
  readonly kind: 'table';
  readonly head: readonly string[];
  /** Each as long as the head. */
  readonly rows: readonly (readonly Words[])[];
}

/** How much of what is allowed each of some figures takes, side by side. */
export interface Bars {
  readonly kind: 'bars';
  readonly rows: readonly BarRow[];
}

export interface BarRow {
  readonly label: string;
  /** The figure and its limit, said. */
  readonly figure: string;
  readonly limit: string;
  /** Of the limit: 1 is all of it; more than 1 when it is passed. */
  readonly share: number;
}

/** The place of a drawing, for writers that draw. */
export interface FigureSlot {
  readonly kind: 'figure';
  readonly figure: FigureKey;
}

/** What a drawing shows, by the id of the thing itself: no title or heading is ever looked up. */
export type FigureKey =
  /** The set-up of a card, seen from above. */
  | { readonly of: 'card'; readonly card: string }
  /** A turned mortise of a card marked out on the face it enters. */
  | {
      readonly of: 'marking out';
      readonly card: string;
      readonly board: string;
      readonly mortise: string;
    }
  /** A board, or the boards so far, as a step of the work leaves them. */
  | { readonly of: 'work step'; readonly step: number; readonly said: string }
  /** A step of the glue-up. */
  | { readonly of: 'glue-up step'; readonly step: string }
  /** The feet, the surfaces over them and where they are worst, seen from above. */
  | { readonly of: 'feet' }
  /** All clamps of a stage of the glue-up. */
  | { readonly of: 'clamps'; readonly stage: number }
  /** A piece of stock with the parts cut from it; both counted from 0. */
  | { readonly of: 'layout'; readonly layout: number; readonly piece: number };

/** What follows begins a page, where there are pages. */
export interface NewPage {
  readonly kind: 'new page';
}

export const strong = (text: string): Words => ({ strong: text });

/** The words alone, without their emphasis. */
export const wordsOf = (text: Words): string => (typeof text === 'string' ? text : text.strong);

export const heading = (text: string, level: 1 | 2 = 2): Heading => ({ kind: 'heading', text, level });

export const paragraph = (text: Words): Paragraph => ({ kind: 'paragraph', text });

export const list = (items: readonly Words[]): List => ({ kind: 'list', items });

export const cautions = (items: readonly string[]): Cautions => ({ kind: 'cautions', items });

export const table = (head: readonly string[], rows: readonly (readonly Words[])[]): BlockTable => ({
  kind: 'table',
  head,
  rows,
});

/** `62 %`, or that the limit is passed. */
export const shareWords = ({ share }: BarRow): string =>
  share > 1 ? 'past it' : `${Math.round(100 * share)} %`;

export const figure = (key: FigureKey): FigureSlot => ({ kind: 'figure', figure: key });

export const NEW_PAGE: NewPage = { kind: 'new page' };

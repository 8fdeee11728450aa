import type { Misplaced } from '../errors.js';
import type { LivingData, LivingDesign, LivingState, OutputFile, SizeRow } from '../files/index.js';
import type { ShopField } from '../shop/index.js';
import type { PreviewData } from '../viewer/index.js';

/** What the worker is given once, before anything is asked of it. */
export interface Outfit {
  readonly kind: 'outfit';
  readonly version: string;
  readonly designs: readonly LivingDesign[];
  /** How the page was published: what changed is told against it. */
  readonly start: LivingState;
  readonly written: LivingData['written'];
  readonly kernel: ArrayBuffer;
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
  /** What draws PNG pictures, a ZIP as text, where the page holds it. */
  readonly renderer: string | undefined;
  /** The preview page's script. */
  readonly viewer: string;
}

/** What is saved: a plan on a paper, or every file there is. */
export type Wanted = 'A4' | 'Letter' | 'all';

/** What the page asks; an answer carries the number of its question. */
export type Asked =
  | {
      readonly kind: 'show';
      readonly number: number;
      readonly state: LivingState;
      /** There is no WebGL: a still picture is wanted. */
      readonly flat: boolean;
      /** The person may be on the way to another: the full verdict can wait for them. */
      readonly dragged: boolean;
    }
  | {
      readonly kind: 'save';
      readonly number: number;
      readonly state: LivingState;
      readonly wanted: Wanted;
      /** What wood is cut from too, although a check failed. */
      readonly force: boolean;
    }
  | { readonly kind: 'cure' | 'shop'; readonly number: number; readonly state: LivingState };

/** Values at which the data of a design alone find an error, and the first one they find. */
export interface RedSpan {
  readonly from: number;
  readonly to: number;
  readonly why: string;
}

/** What the worker answers, in this order for a state: form, glance, picture, verdict, told, red. */
export type Answer = { readonly number: number } & (
  | { readonly kind: 'form'; readonly form: readonly SizeRow[]; readonly title: string }
  /** It cannot be read, or cannot be built. */
  | { readonly kind: 'refused'; readonly text: string; readonly places: readonly Misplaced[] }
  /** Errors the data alone tell. */
  | { readonly kind: 'glance'; readonly errors: readonly string[] }
  | {
      readonly kind: 'picture';
      /** What it is of: the person may have chosen another one since. */
      readonly design: string;
      readonly data: PreviewData;
      readonly still: string | undefined;
    }
  | { readonly kind: 'verdict'; readonly errors: number; readonly warnings: number; readonly notes: number }
  /** All that is told of it, as the panel of the preview. */
  | { readonly kind: 'told'; readonly data: PreviewData; readonly panel: string }
  | { readonly kind: 'changed'; readonly lines: readonly string[] }
  | { readonly kind: 'red'; readonly option: string; readonly spans: readonly RedSpan[] }
  /** Everything about this state was told. */
  | { readonly kind: 'settled' }
  | {
      readonly kind: 'saved';
      readonly folder: string;
      readonly files: readonly OutputFile[];
      readonly zip?: Uint8Array;
      /** Not made, because a check failed. */
      readonly heldBack: readonly string[];
    }
  | { readonly kind: 'cured'; readonly data: PreviewData; readonly panel: string }
  /** The shop as a form. */
  | { readonly kind: 'shop'; readonly fields: readonly ShopField[] }
  /** A fault of the program. */
  | { readonly kind: 'fault'; readonly text: string }
);

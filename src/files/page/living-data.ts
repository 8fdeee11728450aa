import type { Units } from '../../length/index.js';
import type { Ranges } from '../../range/index.js';
import type { DesignRequest } from '../made/index.js';
import type { SizeRow } from './size-form.js';

/** What a living plan holds beside its first picture. */
export interface LivingData {
  readonly version: string;
  /** How long one stage of the work may take before it is stopped, ms. */
  readonly patience: number;
  /** The designs to choose from. */
  readonly designs: readonly LivingDesign[];
  /** How it was published. */
  readonly start: LivingState;
  /** Its sizes there. */
  readonly form: readonly SizeRow[];
  /** How files are written: as those the page came with. */
  readonly written: Pick<DesignRequest, 'format' | 'curves' | 'projection' | 'drawingUnits' | 'printScale'>;
}

export interface LivingDesign {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  /** The file of a piece that is told in one. */
  readonly told?: ToldPiece;
  /** For which sizes it stays sound, with the hash of what that is about. */
  readonly ranges?: Ranges & { readonly about: string };
}

/** A piece's file. */
export interface ToldPiece {
  readonly file: string;
  readonly text: string;
}

/** All that a design follows from, in the person's words. */
export interface LivingState {
  /** Name of a design. */
  readonly design: string;
  /** The piece as it was written in the page, in place of the design's own file. */
  readonly told?: ToldPiece;
  /** Texts by option name. */
  readonly given: Readonly<Record<string, string>>;
  readonly units: Units;
  /** Outside diameter of the guide bush, mm. */
  readonly bush?: number;
  /** A shop file; the built-in shop when left out. */
  readonly shop?: { readonly name: string; readonly text: string };
}

/** One stage of the work for a living plan may take this long, ms: many times what the largest shipped design takes. */
export const PATIENCE = 30_000;

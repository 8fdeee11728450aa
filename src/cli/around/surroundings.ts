import { OWN_MODELS, OWN_PIECES } from '../../node/index.js';
import type { Pipeline } from './pipeline.js';

/** Where text goes. */
export interface Sink {
  write(text: string): unknown;
}

/** Everything a run takes from outside, so that a test can give it. */
export interface Surroundings {
  /** Results. */
  readonly out: Sink;
  /** Progress and messages. */
  readonly err: Sink;
  /** Whether `err` is a terminal, on which a line can be rewritten. */
  readonly isTerminal: boolean;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  /** Width of the terminal, characters; 80 when absent. */
  readonly columns?: number;
  /** Folder of the models; the one beside the program when absent. */
  readonly modelsFolder?: string;
  /** Folder of the pieces that come with the program; the one beside it when absent. */
  readonly piecesFolder?: string;
  /** What makes and checks; src/node when absent. */
  readonly pipeline?: Pipeline;
  /** Shows a page to the person; false when it cannot. src/node when absent. */
  readonly showInBrowser?: (path: string) => Promise<boolean>;
}

/** Characters in a line when nothing says otherwise. */
const USUAL_COLUMNS = 80;

export const columnsOf = (around: Surroundings): number => around.columns ?? USUAL_COLUMNS;

/** Folder the models of a run are in. */
export const modelsOf = (around: Surroundings): string => around.modelsFolder ?? OWN_MODELS;

/** Folder the pieces that come with the program are in. */
export const piecesOf = (around: Surroundings): string => around.piecesFolder ?? OWN_PIECES;

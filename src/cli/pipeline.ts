import type { Design } from '../assembly/index.js';
import type { Finding } from '../checks/index.js';
import type { Units } from '../length/index.js';
import type { Model } from '../model/index.js';
import type { Shop } from '../shop/index.js';

/** A design to be made: what the command line asks of src/files. Lengths mm. */
export interface MakeRequest {
  readonly model: Model;
  readonly values: Readonly<Record<string, unknown>>;
  /** What is at hand, and its two-rail jig. */
  readonly shop: Shop;
  readonly jig: Design;
  readonly units: Units;
  /** Absolute path of the folder the design's own folder is written in. */
  readonly out: string;
  /** Kinds of file to write; all when absent. */
  readonly only?: readonly string[];
  readonly format: 'binary' | 'ascii';
  readonly curves: 'arcs' | 'segments';
  /** Outer diameter of the guide bush the template lines are offset for. */
  readonly bush?: number;
  /** Write cutting files even when a check failed. */
  readonly force: boolean;
  readonly version: string;
  readonly progress: (step: string, done: number, total: number) => void;
}

export interface MadeFile {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

export interface MakeResult {
  readonly design: Design;
  readonly findings: readonly Finding[];
  readonly files: readonly MadeFile[];
  readonly summary: object;
  readonly written: boolean;
  /** Files not written because a check failed. */
  readonly heldBack: readonly string[];
}

export interface Pipeline {
  makeDesign(request: MakeRequest): Promise<MakeResult>;
  /** Writes nothing. */
  checkDesign(request: MakeRequest): Promise<MakeResult>;
}

import type { Design } from '../../assembly/index.js';
import type { Finding } from '../../checks/index.js';
import type { DrawingUnits, Units } from '../../length/index.js';
import type { Model } from '../../model/index.js';
import type { Ranges } from '../../range/index.js';
import type { Shop } from '../../shop/index.js';
import type { Summary, WrittenFile } from '../summary/index.js';

/** A design to be made; lengths mm. */
export interface DesignRequest {
  readonly model: Model;
  readonly values: Readonly<Record<string, unknown>>;
  /** What is at hand, and its two-rail jig. */
  readonly shop: Shop;
  readonly jig: Design;
  readonly units: Units;
  /** Kinds of file to write; all when absent. */
  readonly only?: readonly string[];
  readonly format: 'binary' | 'ascii';
  readonly curves: 'arcs' | 'segments';
  /** Outside diameter of the guide bush the template lines are offset for. */
  readonly bush?: number;
  /** Where the views of a drawing stand, and the units of its figures; both when not said. */
  readonly projection?: 'first-angle' | 'third-angle';
  readonly drawingUnits?: DrawingUnits;
  /** Measured on a print of the scale page: `0.994x1.002`. */
  readonly printScale?: string;
  /** Where the plan's figures in full and its tiled templates go; at its end when not said. */
  readonly appendix?: 'end' | 'separate' | 'none';
  /** The living plan makes PNG pictures as well: half as large again. */
  readonly livingPictures?: boolean;
  /** For which dimensions the design stays sound, where it was found out. */
  readonly ranges?: Ranges;
  /** Names of the values the person gave; a cure is looked for among them first. */
  readonly given?: readonly string[];
  /** Look for a dimension that ends each error, by full verdicts: it takes some seconds, and only where there is an error. */
  readonly cures?: boolean;
  /** Write cutting files even when a check failed. */
  readonly force: boolean;
  readonly version: string;
  readonly progress: (step: string, done: number, total: number) => void;
}

/** What a run made: the design, its findings and its files. */
export interface DesignResult {
  readonly design: Design;
  readonly findings: readonly Finding[];
  /** Absolute paths. */
  readonly files: readonly WrittenFile[];
  readonly summary: Summary;
  readonly written: boolean;
  /** Cutting files not written because a check failed. */
  readonly heldBack: readonly string[];
  /** What is not as it was when this folder was last written, a sentence each. */
  readonly changes: readonly string[];
}

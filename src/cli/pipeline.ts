import type { DesignRequest, DesignResult } from '../files/index.js';

export type {
  DesignRequest as MakeRequest,
  DesignResult as MakeResult,
  WrittenFile as MadeFile,
} from '../files/index.js';

/** What the command line asks of src/files. */
export interface Pipeline {
  makeDesign(request: DesignRequest): Promise<DesignResult>;
  /** Writes nothing. */
  checkDesign(request: DesignRequest): Promise<DesignResult>;
}

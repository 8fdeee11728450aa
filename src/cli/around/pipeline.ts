import type { DesignResult } from '../../files/index.js';
import type { MakeRequest } from '../../node/index.js';

export type { DesignResult as MakeResult, WrittenFile as MadeFile } from '../../files/index.js';
export type { MakeRequest } from '../../node/index.js';

/** What the command line asks of src/node. */
export interface Pipeline {
  makeDesign(request: MakeRequest): Promise<DesignResult>;
  /** Writes nothing. */
  checkDesign(request: MakeRequest): Promise<DesignResult>;
}

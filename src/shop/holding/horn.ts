import type { FaceId } from '../../board/index.js';

/** Extra length left on a milled blank beyond an end, until the mortises that need it are cut; mm. */
export interface Horn {
  readonly end: FaceId;
  readonly length: number;
}

import type { DesignRequest, DesignResult } from '../files/index.js';
import type { MakeRequest } from './make-design.js';

/** Makes a design whole and writes it; the code for it is loaded only here, so that a short command stays short. */
export const makeDesign = async (request: MakeRequest): Promise<DesignResult> =>
  (await import('./make-design.js')).makeDesign(request);

/** Makes and checks a design's solids and papers, and writes nothing; loaded like `makeDesign`. */
export const checkDesign = async (request: DesignRequest): Promise<DesignResult> =>
  (await import('./make-design.js')).checkDesign(request);

import type { DesignRequest, DesignResult, OutputFile } from '../files/index.js';
import type { MakeRequest } from './make-design.js';

/** Makes a design whole and writes it; the code for it is loaded only here, so that a short command stays short. */
export const makeDesign = async (request: MakeRequest): Promise<DesignResult> =>
  (await import('./make-design.js')).makeDesign(request);

/** Makes and checks a design's solids and papers, and writes nothing; loaded like `makeDesign`, without what writes. */
export const checkDesign = async (request: DesignRequest): Promise<DesignResult> =>
  (await import('./check-design.js')).checkDesign(request);

/** Writes a set of files as a folder, whole or not at all; loaded like `makeDesign`. */
export const writeFolder = async (out: string, name: string, files: readonly OutputFile[]): Promise<string> =>
  (await import('./output-folder.js')).writeFolder(out, name, files);

/** Refuses a folder that cannot be written, before the work for it is done; loaded like `makeDesign`. */
export const requireOutFolder = async (out: string, name: string): Promise<void> =>
  (await import('./output-folder.js')).requireOutFolder(out, name);

import {
  type DesignRequest,
  type DesignResult,
  STEPS,
  type Summary,
  summaryText,
  withMade,
} from '../files/index.js';
import { curingRefusal } from './curing-refusal.js';

/** Makes and checks a design's solids and papers, and writes nothing. */
export const checkDesign = (request: DesignRequest): Promise<DesignResult> =>
  curingRefusal(request, () =>
    withMade(request, async (made) => {
      request.progress('done', STEPS.length, STEPS.length);
      return {
        design: made.solids.design,
        findings: made.findings,
        files: [],
        summary: JSON.parse(summaryText(made, [], true)) as Summary,
        written: false,
        heldBack: [],
        changes: [],
      };
    }),
  );

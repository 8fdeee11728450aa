import * as z from 'zod';
import { type Command, DONE, FAILED_CHECKS } from '../around/index.js';
import { bush, fraction, from, json, quiet, shop, units } from '../given/index.js';
import { runPipeline, showResult } from '../results/index.js';

const options = { from, shop, units, fraction, bush, json, quiet };

/** `tenonwright check stool`: the findings, without writing anything. */
export const check: Command<typeof options> = {
  name: 'check',
  summary: 'check a design and write nothing',
  about: 'model and parameters',
  parameters: z.object(options),
  async act(given, call) {
    const result = await runPipeline('checkDesign', given, call);
    showResult(result, given, call.around);
    return result.findings.some(({ level }) => level === 'error') ? FAILED_CHECKS : DONE;
  },
};

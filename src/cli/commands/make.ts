import * as z from 'zod';
import { choice, flag, text } from '../../model/index.js';
import { type Command, DONE, FAILED_CHECKS } from '../around/index.js';
import { fraction, from, json, quiet, shop, units, writing } from '../given/index.js';
import { runPipeline, showResult } from '../results/index.js';

const options = {
  from,
  shop,
  out: text({ default: 'out', help: 'folder in which the design gets its own folder' }),
  units,
  fraction,
  only: text({
    derived: 'all kinds',
    help: 'kinds of file to write, separated by commas: stl,dxf',
  }),
  ...writing,
  appendix: choice(['end', 'separate', 'none'], {
    default: 'end',
    help: "where the plan's figures in full, story sticks and tiled templates go: at its end, into files of their own, or nowhere",
  }),
  force: flag({ default: false, help: 'write cutting files even if checks failed; each says FAILED CHECKS' }),
  listFiles: flag({
    default: false,
    help: 'print every file with its size, not only the ones to open first',
  }),
  json,
  quiet,
};

/** `tenonwright make stool`: checks a design and writes its files. */
export const make: Command<typeof options> = {
  name: 'make',
  summary: 'check a design and write its files',
  about: 'model and parameters',
  parameters: z.object(options),
  async act(given, call) {
    const result = await runPipeline('makeDesign', given, call);
    showResult(result, given, call.around);
    return result.findings.some(({ level }) => level === 'error') ? FAILED_CHECKS : DONE;
  },
};

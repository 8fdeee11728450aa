import * as z from 'zod';
import { choice, flag, text } from '../model/index.js';
import { type Command, DONE, FAILED_CHECKS } from './command.js';
import { runPipeline } from './run-pipeline.js';
import { bush, from, json, quiet, shop, units } from './shared-options.js';
import { showResult } from './show-result.js';

const options = {
  from,
  shop,
  out: text({ default: 'out', help: 'folder in which the design gets its own folder' }),
  units,
  only: text({
    derived: 'all kinds',
    help: 'kinds of file to write, separated by commas: stl,dxf',
  }),
  format: choice(['binary', 'ascii'], { default: 'binary', help: 'format of solids' }),
  curves: choice(['arcs', 'segments'], {
    default: 'arcs',
    help: 'curves of templates: true arcs, or short straight lines for software that does not know arcs',
  }),
  bush,
  ranges: text({
    derived: 'none',
    help: 'ranges.json that the command range wrote for these very values: the plan and the summary carry it',
  }),
  projection: choice(['first-angle', 'third-angle'], {
    default: 'first-angle',
    help: 'where the views of a drawing stand; its symbol is on every sheet',
  }),
  drawingUnits: choice(['mm', 'in', 'dual'], {
    derived: 'as --units says',
    help: 'units of the figures in drawings',
  }),
  printScale: text({
    derived: 'true size',
    help: 'what the print test measured on your print, as shares of 100 mm along the short and the long side of the paper: 0.994x1.002',
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

import * as z from 'zod';
import { count, flag, text } from '../../model/index.js';
import type { Command } from '../around/index.js';
import { bush, from, quiet, shop, units } from '../given/index.js';

const options = {
  from,
  shop,
  units,
  bush,
  across: text({ derived: 'no map', help: 'two dimensions for a map of both together: height,rake' }),
  together: count({
    min: 1,
    max: 1_000_000,
    derived: 'not looked for',
    help: 'so many random designs, all dimensions moved at once, that their limits must not break: 2000',
  }),
  cures: flag({
    default: false,
    help: 'find out what else would have to change beyond each end; it takes several times as long',
  }),
  share: text({ derived: 'all of it', help: 'do one of equal shares of the verdicts, on any machine: 2/8' }),
  join: text({
    derived: 'none',
    help: 'files of verdicts that shares left, separated by commas; what they lack is worked out',
  }),
  workers: count({ min: 1, max: 64, default: 2, help: 'designs judged at the same time' }),
  out: text({ default: 'out', help: 'folder in which the ranges get their own folder' }),
  quiet,
};

export type RangeOptions = z.infer<z.ZodObject<typeof options>>;

/** `tenonwright range stool`: for which dimensions the design stays sound. */
export const range: Command<typeof options> = {
  name: 'range',
  summary: 'find out how far each dimension may be changed',
  about: 'model and parameters',
  parameters: z.object(options),
  // loaded late: whoever makes or checks does without
  act: async (given, call) => (await import('./find-ranges.js')).findRanges(given, call),
};

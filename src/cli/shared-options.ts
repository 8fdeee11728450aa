import { choice, flag, length, text } from '../model/index.js';

/** Options that mean the same in every command that has them. */

export const units = choice(['mm', 'in'], {
  default: 'mm',
  help: 'unit of bare numbers for lengths, and of printed lengths',
});

export const from = text({
  derived: 'none',
  help: 'YAML file of parameters, one a line; options override it',
});

export const bush = length({
  min: 3,
  max: 100,
  derived: 'lines flush with the part',
  help: 'outside diameter of the guide bush; template lines are offset for it',
});

export const shop = text({
  derived: 'the built-in shop',
  help: 'YAML file of what is at hand in the shop',
});

export const json = flag({
  default: false,
  help: 'print the summary, and nothing else, as JSON on standard output',
});

export const quiet = flag({ default: false, help: 'print only errors' });

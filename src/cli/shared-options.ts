import { choice, flag, length, text } from '../model/index.js';

/** Options that mean the same in every command that has them. */

export const units = choice(['mm', 'in'], {
  default: 'mm',
  help: 'what bare numbers for lengths are in, and what lengths are printed in',
});

export const from = text({
  derived: 'none',
  help: 'YAML file with parameters, one a line; options win over it',
});

export const bush = length({
  min: 3,
  max: 100,
  derived: 'lines flush with the part',
  help: 'outer diameter of the guide bush that template lines are offset for',
});

export const shop = text({
  derived: 'the built-in shop',
  help: 'YAML file that says what is at hand in the shop',
});

export const json = flag({
  default: false,
  help: 'print the summary as JSON on standard output, and nothing else there',
});

export const quiet = flag({ default: false, help: 'print only errors' });

import { FRACTIONS } from '../../length/index.js';
import { choice, flag, length, text } from '../../model/index.js';

/** Options that mean the same in every command that has them. */

export const units = choice(['mm', 'in'], {
  default: 'mm',
  help: 'unit of bare numbers for lengths, and of printed lengths',
});

export const fraction = choice(FRACTIONS, {
  derived: `what the shop file says, else ${FRACTIONS[0]}`,
  help: 'finest fraction of an inch that lengths of wood are told in; what is set on the router is told in thousandths',
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

/** How files are written. */
export const writing = {
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
  livingPictures: flag({
    default: false,
    help: 'put what draws PNG pictures into the living plan as well: it grows by half, and saves the pictures too',
  }),
  printScale: text({
    derived: 'true size',
    help: 'what the print test measured on your print, as shares of 100 mm along the short and the long side of the paper: 0.994x1.002',
  }),
};

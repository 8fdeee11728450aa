import type { Design } from '../../src/assembly/index.js';
import { angle, choice, count, defineModel, flag, length, text } from '../../src/model/index.js';

/** A model with one parameter of each kind; its design is empty but for the notes, which repeat the values. */
export const smallModel = defineModel({
  name: 'small',
  title: 'Small model',
  summary: 'A model to read parameters with.',
  parameters: {
    seatLength: length({ min: 150, max: 600, default: 230, help: 'length of the seat' }),
    cheekAir: length({ min: 0, max: 0.5, default: 0.05, help: 'air on each cheek' }),
    splay: angle({ min: -5, max: 20, default: 10, help: 'splay of the sides' }),
    tenons: count({ min: 1, max: 4, default: 2, help: 'tenons in each end' }),
    edge: choice(['round', 'square'], { default: 'round', help: 'edge of the seat' }),
    rows: choice([1, 2], { default: 1, help: 'rows of tenons' }),
    wedged: flag({ default: false, help: 'wedge the tenons' }),
    species: text({ default: 'beech', help: 'wood of the boards' }),
    railHeight: length({
      min: 40,
      max: 120,
      derived: 'a quarter of the seat length',
      help: 'height of the rail',
    }),
  },
  build: (values): Design => ({
    name: 'small',
    title: 'Small model',
    cutter: 8,
    boards: [],
    joints: [],
    hardware: [],
    derived: [],
    notes: [`rail ${values.railHeight ?? values.seatLength / 4}`, `${values.edge} ${values.rows}`],
  }),
});

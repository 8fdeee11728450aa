import { VIEWS } from '../told/index.js';

/** A key and what it does, as the page lists it; keys are named as the browser names them. */
interface Key {
  readonly keys: readonly string[];
  readonly shown: string;
  readonly does: string;
}

const viewKey = (name: string, i: number): [`view ${string}`, Key] => [
  `view ${name}`,
  { keys: [String(i + 1)], shown: String(i + 1), does: name === 'corner' ? 'from a corner' : `from ${name}` },
];

/** Every key of the picture. They work while the picture has the focus, or nothing has. */
export const KEYS: Readonly<Record<string, Key>> = {
  left: { keys: ['ArrowLeft'], shown: '←', does: 'turn left' },
  right: { keys: ['ArrowRight'], shown: '→', does: 'turn right' },
  up: { keys: ['ArrowUp'], shown: '↑', does: 'look from higher' },
  down: { keys: ['ArrowDown'], shown: '↓', does: 'look from lower' },
  move: { keys: [], shown: 'Shift + arrow', does: 'move the picture' },
  nearer: { keys: ['+', '='], shown: '+', does: 'nearer' },
  farther: { keys: ['-'], shown: '−', does: 'farther' },
  ...Object.fromEntries(Object.keys(VIEWS).map(viewKey)),
  apart: { keys: ['a'], shown: 'a', does: 'draw apart, or together' },
  through: { keys: ['t'], shown: 't', does: 'see through boards' },
  sizes: { keys: ['m'], shown: 'm', does: 'show sizes' },
  section: { keys: ['c'], shown: 'c', does: 'next section plane' },
  'cut back': { keys: ['['], shown: '[', does: 'section plane back' },
  'cut on': { keys: [']'], shown: ']', does: 'section plane on' },
  play: { keys: ['p'], shown: 'p', does: 'play how it is put together, or pause' },
  before: { keys: [','], shown: ',', does: 'step before' },
  after: { keys: ['.'], shown: '.', does: 'step after' },
  measure: {
    keys: ['d'],
    shown: 'd',
    does: 'measure: arrows move a cross, with Shift a little; Enter sets it',
  },
  hide: { keys: ['h'], shown: 'h', does: 'hide the selection, or show all' },
  nothing: { keys: ['Escape'], shown: 'Esc', does: 'clear the selection' },
};

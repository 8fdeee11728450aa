import { columnsOf, type Surroundings } from './surroundings.js';

/** Tells how far a run is. */
export interface ProgressLine {
  readonly step: (step: string, done: number, total: number) => void;
  /** Leaves the line as it stands; what is written next begins a new one. */
  readonly end: () => void;
}

export const NO_PROGRESS: ProgressLine = { step: () => {}, end: () => {} };

const CLEAR_TO_END = '\u001b[K';

/** One line rewritten in place on a terminal; elsewhere a line for each step. */
export function progressLine(around: Surroundings): ProgressLine {
  let last = '';
  const step = (name: string, done: number, total: number): void => {
    const figure = `[${String(done).padStart(String(total).length)}/${total}] ${name}`;
    if (around.isTerminal) {
      const shown = [...figure].slice(0, columnsOf(around) - 1).join('');
      around.err.write(`\r${shown}${CLEAR_TO_END}`);
    } else if (name !== last) around.err.write(`${figure}\n`);
    last = name;
  };
  const end = (): void => {
    if (around.isTerminal && last !== '') around.err.write('\n');
    last = '';
  };
  return { step, end };
}

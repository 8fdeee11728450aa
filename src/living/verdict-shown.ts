import { onPage } from '../viewer/index.js';

/** The verdict beside the title. */
export interface VerdictShown {
  /** A new state is being worked out; the last verdict is no longer its own. */
  readonly wait: () => void;
  /** Errors the data alone tell, ahead of the full verdict. */
  readonly glance: (errors: readonly string[]) => void;
  readonly show: (counts: Counts) => void;
  readonly refuse: () => void;
  /** A size that ends the errors is looked for; and the search is over. */
  readonly look: () => void;
  readonly found: () => void;
}

export interface Counts {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
}

export function verdictShown(): VerdictShown {
  const [standing, told] = [onPage('standing'), onPage('verdict-now')];
  const put = (level: string, text: string): void => {
    standing.dataset.level = level;
    document.documentElement.dataset.standing = level;
    // said once: a reader of the screen is not told the same again and again while a slider is dragged
    if (told.textContent !== text) told.textContent = text;
  };
  let last = '';
  return {
    wait: () => put('waiting', 'Working it out…'),
    glance: (errors) => {
      if (errors.length > 0) put('error', `Failed, by a first look: ${errors[0]}`);
    },
    show: (counts) => {
      last = verdictWords(counts);
      put(levelOf(counts), last);
    },
    look: () => put('error', `${last} Looking for a size that ends it…`),
    found: () => put('error', `${last} What was tried is told with the findings.`),
    refuse: () => put('error', 'Not to be made like this'),
  };
}

const levelOf = ({ errors, warnings }: Counts): string =>
  errors > 0 ? 'error' : warnings > 0 ? 'warning' : 'sound';

/** @example verdictWords({ errors: 0, warnings: 1, notes: 0 }) // 'Passed, with 1 warning' */
export function verdictWords({ errors, warnings, notes }: Counts): string {
  const many = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
  const beside = [
    ...(warnings > 0 ? [many(warnings, 'warning')] : []),
    ...(notes > 0 ? [many(notes, 'note')] : []),
  ].join(' and ');
  if (errors > 0) return `Failed: ${many(errors, 'error')}${beside ? `, ${beside}` : ''}. Do not cut.`;
  return beside ? `Passed, with ${beside}` : 'Every check passed';
}

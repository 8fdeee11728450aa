import { type ErrorText, InputError, TenonwrightError, type Voice } from '../../errors.js';
import { nearest } from '../../model/index.js';
import type { Place, Told } from './told.js';

/** The most that is told of one file: whoever mends these reads the others next time. */
const MOST_TOLD = 20;

/** How much of a long line is quoted, characters. */
const QUOTED = 100;

/** What one line of a piece makes impossible; thrown inside one board's work and collected by {@link Problems}. */
export class Problem extends InputError {
  /**
   * @param at where the words stand
   * @param length how many characters of the line they take, for the marks below them
   * @param text what is wrong and what is allowed; lengths in the person's units
   * @param remedy what to write instead
   */
  constructor(
    readonly at: Place,
    readonly length: number,
    text: ErrorText,
    remedy?: string,
  ) {
    super('piece-refused', remedy === undefined ? text : (say) => `${wordsOf(text, say)}: ${remedy}`);
  }
}

/** What cannot be told because something above is wrong already: not worth a word of its own. */
export class FollowsOn extends Problem {}

/** A problem with a whole phrase. */
export const problemWith = ({ value, at }: Told<string>, text: ErrorText, remedy?: string): Problem =>
  new Problem(at, value.length, text, remedy);

/** What to write instead of a word nobody knows: the nearest known one, or all of them. @example didYouMeanWord('wdie', keys) // "did you mean 'wide'?" */
export function didYouMeanWord(word: string, known: readonly string[]): string {
  // one word of a name is short for it: ash is white ash
  const short = known.filter((name) => name.split(' ').includes(word));
  if (short.length > 0 && short.length <= 4)
    return `did you mean ${short.map((name) => `'${name}'`).join(' or ')}?`;
  const meant = nearest(word, known);
  return meant === undefined ? `known are ${known.join(', ')}` : `did you mean '${meant}'?`;
}

/** All that is wrong with one file, told at once. */
export class Problems {
  readonly #found: Problem[] = [];
  readonly #lines: readonly string[];

  /**
   * @param file its name, as the person gave it
   * @param text what it holds, to quote from
   */
  constructor(
    private readonly file: string,
    text: string,
  ) {
    this.#lines = text.split(/\r\n|\r|\n/);
  }

  /** Of problems in one line the first is kept: the others mostly follow from it. */
  add(problem: Problem): void {
    const sameLine = this.#found.some(({ at }) => at.line === problem.at.line);
    if (!sameLine || problem.length === 0 || problem instanceof FollowsOn) this.#found.push(problem);
  }

  get count(): number {
    return this.#found.length;
  }

  /** Does one board's work; a problem ends it and is kept. Any other error is thrown on. */
  during<T>(work: () => T): T | undefined {
    try {
      return work();
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      this.add(error);
      return undefined;
    }
  }

  /** @throws InputError `piece-refused` with every problem: file, line, column, the line with marks below the words */
  end(): void {
    const own = this.#found.filter((problem) => !(problem instanceof FollowsOn));
    const all = (own.length > 0 ? own : this.#found).toSorted(
      (a, b) => a.at.line - b.at.line || a.at.column - b.at.column,
    );
    const told = all.slice(0, MOST_TOLD);
    if (told.length === 0) return;
    const more = all.length - told.length;
    throw new InputError('piece-refused', (say) =>
      [
        ...told.map((problem) => this.#words(problem, say)),
        ...(more > 0 ? [`and ${more} more: mend these first`] : []),
      ].join('\n'),
    );
  }

  #words(problem: Problem, say: Voice): string {
    const { line, column } = problem.at;
    const quoted = quote(this.#lines[line - 1] ?? '', column, problem.length);
    return `${this.file}, line ${line}, column ${column}: ${problem.explain(say)}${quoted}`;
  }
}

/** The line, or as much of it as fits round the words, with marks below them; nothing for an empty line. */
function quote(line: string, column: number, length: number): string {
  const start = Math.min(column - 1, line.length);
  const from = Math.max(0, Math.min(start - QUOTED / 4, line.length - QUOTED));
  const to = Math.min(line.length, from + QUOTED);
  const [head, tail] = [from > 0 ? '…' : '', to < line.length ? '…' : ''];
  const lead = head + shown(line.slice(from, start));
  const marked = shown(line.slice(start, Math.min(start + length, to)));
  const text = lead + marked + shown(line.slice(start + length, to)) + tail;
  // an indent says nothing, and more room is left for the words
  const indent = /^ */.exec(lead)![0].length;
  if (text.trim() === '') return '';
  const marks = ' '.repeat([...lead].length - indent) + '^'.repeat(Math.max(1, [...marked].length));
  return `\n    ${text.slice(indent).trimEnd()}\n    ${marks}`;
}

/** A tab or another mark without width would push the marks out of place. */
const shown = (text: string): string => text.replace(/\p{C}/gu, ' ');

const wordsOf = (text: ErrorText, say: Voice): string => (typeof text === 'string' ? text : text(say));

/** Does what a line asks for; what the engine refuses is led back to that line. @throws Problem */
export function atLine<T>(at: Place, length: number, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof Problem || !(error instanceof TenonwrightError)) throw error;
    throw new Problem(at, length, (say) => error.explain(say));
  }
}

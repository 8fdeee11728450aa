import { sha256 } from '@noble/hashes/sha2';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils';
import type { Answer, At, Judge } from './answer.js';

/** Digits of the hash that names a verdict: 96 bits. */
const DIGITS = 24;

/**
 * Verdicts kept by the content they are about, a line each, so that a run that was stopped goes on where it was, and shares
 * that were worked out apart are put together by joining their lines.
 */
export class KeptAnswers {
  readonly #known = new Map<string, Answer>();

  /** @param lines as they were kept; a last line that was cut short is left out, and so is any that is none of ours */
  add(lines: string): void {
    for (const line of lines.split('\n')) {
      const found = /^([0-9a-f]{24}) (.+)$/.exec(line);
      const answer = found && answerIn(found[2]!);
      if (answer) this.#known.set(found[1]!, answer);
    }
  }

  /**
   * Asks only for what is not known, and once for what is asked twice.
   *
   * @param about everything a verdict depends on beside the moved dimensions, as text
   * @param keep takes each new line as soon as its verdict is there
   */
  judging(about: string, judge: Judge, keep: (line: string) => void): Judge {
    const asked = new Map<string, Promise<Answer>>();
    return (at) => {
      const key = keyOf(about, at);
      const known = this.#known.get(key);
      if (known) return Promise.resolve(known);
      const waiting = asked.get(key);
      if (waiting) return waiting;
      const answer = judge(at).then((found) => {
        this.#known.set(key, found);
        keep(`${key} ${JSON.stringify(found)}\n`);
        return found;
      });
      asked.set(key, answer);
      return answer;
    };
  }
}

const keyOf = (about: string, at: At): string =>
  bytesToHex(sha256(utf8ToBytes(`${about}\n${JSON.stringify(Object.entries(at).toSorted(byName))}`))).slice(
    0,
    DIGITS,
  );

const byName = ([a]: readonly [string, number], [b]: readonly [string, number]): number => (a < b ? -1 : 1);

function answerIn(text: string): Answer | undefined {
  try {
    const read = JSON.parse(text) as Partial<Record<'sound' | 'code' | 'text' | 'cure', unknown>>;
    if (read.sound === true) return { sound: true };
    return read.sound === false && typeof read.code === 'string' && typeof read.text === 'string'
      ? {
          sound: false,
          code: read.code,
          text: read.text,
          ...(typeof read.cure === 'string' && { cure: read.cure }),
        }
      : undefined;
  } catch {
    return undefined;
  }
}

import type { ToldPiece } from '../files/index.js';
import { onPage } from '../viewer/index.js';
import { handOver, make } from './elements.js';
import { wireWordList } from './word-list.js';
import type { Word } from './words-at.js';

/** The text of a piece, to be changed beside its picture. */
export interface PieceEditor {
  /** Shows a piece's text; none for a design that is told in code. */
  readonly show: (told: ToldPiece | undefined) => void;
  /** Marks the lines that a refusal names. */
  readonly refuse: (text: string | undefined) => void;
}

/** What the person does: while typing, when done, and when all changes are to be forgotten. */
export interface Written {
  readonly touch: (told: ToldPiece) => void;
  readonly step: (told: ToldPiece) => void;
  readonly forget: () => void;
}

/** Between the last key and the next picture, ms. */
const PAUSE = 350;

/** @param wordsAt what may be written at a place of the text */
export function pieceEditor(
  { touch, step, forget }: Written,
  wordsAt: (text: string, at: number) => readonly Word[],
): PieceEditor {
  const [text, lines] = [onPage<HTMLTextAreaElement>('text'), onPage('lines')];
  let file = '';
  let wrong: ReadonlySet<number> = new Set();
  let timer = 0;
  const told = (): ToldPiece => ({ file, text: text.value });
  const number = (): void => {
    const count = text.value.split('\n').length;
    lines.replaceChildren(
      ...Array.from({ length: count }, (_, i) =>
        wrong.has(i + 1) ? make('b', { textContent: `${i + 1}\n` }) : `${i + 1}\n`,
      ),
    );
    lines.scrollTop = text.scrollTop;
  };
  text.addEventListener('input', () => {
    number();
    clearTimeout(timer);
    timer = window.setTimeout(() => touch(told()), PAUSE);
  });
  text.addEventListener('change', () => {
    clearTimeout(timer);
    step(told());
  });
  wireWordList(text, wordsAt);
  text.addEventListener('scroll', () => {
    lines.scrollTop = text.scrollTop;
  });
  onPage('save-text').addEventListener('click', () => handOver(file, text.value, 'text/yaml'));
  onPage('text-back').addEventListener('click', forget);
  return {
    show: (piece) => {
      onPage('write').hidden = piece === undefined;
      if (!piece) return;
      file = piece.file;
      // the person's place in the text stays while it is the same
      if (text.value !== piece.text && document.activeElement !== text) text.value = piece.text;
      number();
    },
    refuse: (words) => {
      wrong = new Set([...(words ?? '').matchAll(/, line (\d+), column/g)].map(([, line]) => Number(line)));
      number();
    },
  };
}

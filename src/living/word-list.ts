import { onPage } from '../viewer/index.js';
import { make } from './elements.js';
import type { Word } from './words-at.js';

/** Room between the cursor and the list, px. */
const GAP = 2;

/**
 * A list of words at the cursor of a text: opens by Ctrl-Space and its button, and by itself while a key or a word of a choice is
 * typed; arrows choose, Enter and Tab take, Escape closes. A field of many lines cannot be called a combobox, so it tells of its list by
 * what such a field may have, and how many words there are is said aloud.
 */
export function wireWordList(
  text: HTMLTextAreaElement,
  wordsAt: (text: string, at: number) => readonly Word[],
): void {
  const [list, told] = [onPage('words'), onPage('words-told')];
  let words: readonly Word[] = [];
  let chosen = 0;
  const close = (): void => {
    words = [];
    list.hidden = true;
    list.replaceChildren();
    text.removeAttribute('aria-activedescendant');
    told.textContent = '';
  };
  const choose = (at: number): void => {
    chosen = (at + words.length) % words.length;
    for (const [i, option] of [...list.children].entries()) option.ariaSelected = String(i === chosen);
    list.children[chosen]!.scrollIntoView({ block: 'nearest' });
    text.setAttribute('aria-activedescendant', `word-${chosen}`);
  };
  const take = ({ written, typed }: Word): void => {
    const at = text.selectionStart;
    text.setRangeText(written, at - typed, at, 'end');
    close();
    text.dispatchEvent(new Event('input'));
  };
  const open = (asked: boolean): void => {
    const at = text.selectionStart;
    const all = at === text.selectionEnd ? wordsAt(text.value, at) : [];
    // by itself only for what has begun and is not whole
    const begun = all.filter(({ fixed, typed }) => fixed && typed > 0);
    const shown = asked ? all : begun.some(({ word, typed }) => word.length === typed) ? [] : begun;
    close();
    if (asked && shown.length === 0) told.textContent = 'No word is known for this place.';
    if (shown.length === 0) return;
    words = shown;
    list.replaceChildren(
      ...words.map((one, i) => {
        const option = make(
          'li',
          { id: `word-${i}`, role: 'option' },
          make('b', { textContent: one.word }),
          ` ${one.help}`,
        );
        option.addEventListener('click', () => take(one));
        return option;
      }),
    );
    list.hidden = false;
    stand(list, text, at);
    choose(0);
    told.textContent = words.length === 1 ? 'One word fits here.' : `${words.length} words fit here.`;
  };
  text.addEventListener('input', (event) => {
    if (event instanceof InputEvent) open(false);
  });
  text.addEventListener('keydown', (event) => {
    const act = actionOf(event);
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  });
  const actionOf = ({ key, ctrlKey, shiftKey }: KeyboardEvent): (() => void) | undefined => {
    if (key === ' ' && ctrlKey) return () => open(true);
    if (words.length === 0 || shiftKey || ctrlKey) return undefined;
    const acts: Readonly<Record<string, () => void>> = {
      ArrowDown: () => choose(chosen + 1),
      ArrowUp: () => choose(chosen - 1),
      Enter: () => take(words[chosen]!),
      Tab: () => take(words[chosen]!),
      Escape: close,
    };
    return acts[key];
  };
  for (const leaves of ['blur', 'click', 'scroll']) text.addEventListener(leaves, close);
  // the cursor stays in the text
  list.addEventListener('mousedown', (event) => event.preventDefault());
  onPage('words-here').addEventListener('click', () => {
    text.focus();
    open(true);
  });
}

/** Below the cursor, and within the text from side to side: its letters are all as wide. */
function stand(list: HTMLElement, text: HTMLTextAreaElement, at: number): void {
  const before = text.value.slice(0, at).split('\n');
  const { font, lineHeight, paddingTop, paddingLeft } = getComputedStyle(text);
  const pen = document.createElement('canvas').getContext('2d')!;
  pen.font = font;
  const along = pen.measureText(before.at(-1)!).width - text.scrollLeft + Number.parseFloat(paddingLeft);
  const down = before.length * Number.parseFloat(lineHeight) - text.scrollTop + Number.parseFloat(paddingTop);
  const most = text.offsetWidth - list.offsetWidth;
  list.style.left = `${text.offsetLeft + Math.max(0, Math.min(along, most))}px`;
  list.style.top = `${text.offsetTop + Math.max(0, Math.min(down, text.offsetHeight)) + GAP}px`;
}

import type { LivingState, OutputFile } from '../files/index.js';
import { onPage } from '../viewer/index.js';
import { handOver, make } from './elements.js';
import type { Answer, Asked, Wanted } from './messages.js';

/** The buttons that save. */
export interface Saving {
  /** @returns whether the answer was to a button that saves */
  readonly hear: (answer: Answer) => boolean;
  readonly stopped: (asked: Asked) => boolean;
  /** Nothing is saved of sizes that cannot be made. */
  readonly allow: (can: boolean) => void;
  /** What wood is cut from is held back from then on, unless the person wants it all the same. */
  readonly failed: (has: boolean) => void;
}

/** What a button asks for: one of the plans, the ZIP, or the list of single files. */
type Button = Wanted | 'list';

/**
 * @param save asks for files; the number of the question
 * @param leftOut which files this page cannot make, in words; empty when it makes them all
 */
export function wireSaving(
  now: () => LivingState,
  save: (wanted: Wanted, force: boolean) => number,
  leftOut: () => string,
): Saving {
  const buttons = [...document.querySelectorAll<HTMLButtonElement>('button[data-save]')];
  const [note, tick, force] = [onPage('save-note'), onPage('force-tick'), onPage<HTMLInputElement>('force')];
  const wanted = new Map<number, Button>();
  /** What the list of single files was asked of. */
  let listed: LivingState | undefined;
  for (const button of buttons) {
    const what = button.dataset.save as Button;
    button.addEventListener('click', () => {
      note.textContent = 'Making the files…';
      if (what === 'list') listed = now();
      wanted.set(save(what === 'list' ? 'all' : what, force.checked), what);
    });
  }
  const given = (files: number, heldBack: readonly string[]): string =>
    heldBack.length > 0
      ? `A check failed, so these were held back: ${heldBack.join(', ')}. Tick the box below to have them all the same.`
      : `${files === 1 ? 'The file is' : `${files} files are`} made.`;
  return {
    hear: (answer) => {
      const what = wanted.get(answer.number);
      if (what === undefined) return false;
      wanted.delete(answer.number);
      if (answer.kind === 'refused' || answer.kind === 'fault') note.textContent = answer.text;
      if (answer.kind !== 'saved') return true;
      const { folder, files, zip, heldBack } = answer;
      note.textContent = given(files.length, heldBack);
      if (zip && leftOut() !== '') note.textContent += ` ${leftOut()}`;
      if (what === 'all' && zip) handOver(`${folder}.zip`, zip, 'application/zip');
      else if (what === 'list') listFiles(files, leftOut());
      else for (const { path, bytes } of files) handOver(`${folder}.${path}`, bytes, 'application/pdf');
      return true;
    },
    stopped: ({ number }) => {
      const known = wanted.delete(number);
      if (known) note.textContent = `Making the files of ${now().design} took too long and was stopped.`;
      return known;
    },
    allow: (can) => {
      for (const button of buttons) button.disabled = !can;
      // of other sizes; what a save cut short is told again of the same
      if (now() !== listed) onPage('single-files').replaceChildren();
    },
    failed: (has) => {
      tick.hidden = !has;
      if (!has) force.checked = false;
    },
  };
}

function listFiles(files: readonly OutputFile[], leftOut: string): void {
  onPage('single-files').replaceChildren(
    ...files.map(({ path, bytes }) => {
      const button = make('button', { type: 'button', textContent: path });
      button.addEventListener('click', () => handOver(path.split('/').at(-1)!, bytes));
      return make('li', {}, button, ` ${Math.ceil(bytes.length / 1000)} kB`);
    }),
    ...(leftOut === '' ? [] : [make('li', { className: 'soft', textContent: leftOut })]),
  );
}

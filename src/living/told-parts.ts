import { onPage } from '../viewer/index.js';
import { make } from './elements.js';

/** Puts what is told anew in place of what was told, part by part; a paper that was open stays open. */
export function tellParts(panel: string): void {
  const fresh = document.createElement('template');
  fresh.innerHTML = panel;
  for (const part of onPage('panel').querySelectorAll<HTMLElement>('[data-part]')) {
    const own = fresh.content.querySelector(`[data-part="${part.dataset.part}"]`);
    if (!own || own.innerHTML === part.innerHTML) continue;
    const open = new Set([...part.querySelectorAll('details[open] > summary')].map(words));
    part.replaceChildren(...own.childNodes);
    for (const summary of part.querySelectorAll('details > summary'))
      if (open.has(words(summary))) summary.parentElement!.setAttribute('open', '');
  }
  const title = fresh.content.querySelector('h1')?.textContent;
  if (title) tellTitle(title);
}

export function tellTitle(title: string): void {
  onPage('panel').querySelector('h1')!.textContent = title;
  document.title = title;
}

const words = ({ textContent }: Element): string => textContent ?? '';

/** What is not as it was published, a line each. */
export function tellChanges(lines: readonly string[]): void {
  const list = make('ul', { className: 'plain' }, ...lines.map((line) => make('li', { textContent: line })));
  const none = make('p', { textContent: 'Nothing: it is as it was published.' });
  onPage('changes').replaceChildren(lines.length > 0 ? list : none);
}

import type { Choices } from '../over/index.js';
import type { ViewName } from '../told/index.js';
import type { Looker } from './looker.js';
import { onPage, piecesOfRow, say, stepOfRow } from './on-page.js';

/** Goes where a row of the lists leads. */
function follow(row: HTMLButtonElement, { data, stage, change, choose, player }: Looker): void {
  const index = Number(row.dataset.index);
  const ids = piecesOfRow(row);
  switch (row.dataset.go) {
    case 'tenons':
    case 'step':
      player.goTo(stepOfRow(row, data));
      break;
    case 'finding': {
      const finding = data.findings[index]!;
      choose(ids);
      change({ seeThrough: true, place: finding, apart: 0, step: undefined });
      say(`${finding.level}: ${finding.text}`);
      stage?.flyTo(finding.at, finding.round, finding.gap);
      break;
    }
    default:
      choose(ids);
      // a tenon stands in the wood
      if (row.dataset.go === 'joint') change({ seeThrough: true });
      stage?.flyToPieces(ids);
  }
}

function goToFindings(): void {
  const heading = onPage('findings-title');
  heading.focus({ preventScroll: true });
  heading.scrollIntoView({ block: 'start' });
}

/** The rows of the lists, which may be written anew, and the controls beside the picture. */
export function wirePanel(looker: Looker): void {
  const { stage, change, now, player } = looker;
  onPage('panel').addEventListener('click', ({ target }) => {
    const row = (target as HTMLElement).closest<HTMLButtonElement>('button[data-go]');
    if (row) follow(row, looker);
    if ((target as HTMLElement).closest('#verdict')) goToFindings();
  });
  const hover = (event: Event, on: boolean): void => {
    const row = (event.target as HTMLElement).closest<HTMLButtonElement>('button[data-pieces]');
    if (row) change({ hovered: new Set(on ? piecesOfRow(row) : []) });
  };
  for (const event of ['pointerover', 'focusin'])
    onPage('panel').addEventListener(event, (e) => hover(e, true));
  for (const event of ['pointerout', 'focusout'])
    onPage('panel').addEventListener(event, (e) => hover(e, false));
  onPage('room').addEventListener('click', () => {
    const lists = document.querySelector('main')!.toggleAttribute('data-room');
    onPage('room').setAttribute('aria-pressed', String(lists));
  });
  if (!stage) return;

  const slides = (id: string, what: 'apart' | 'along' | 'cut'): void => {
    const slide = onPage<HTMLInputElement>(id);
    slide.addEventListener('input', () => change({ [what]: Number(slide.value) }));
  };
  slides('apart', 'apart');
  slides('along', 'along');
  slides('cut', 'cut');
  const ticks = (id: string, what: 'seeThrough' | 'sizes' | 'stands'): void => {
    const tick = onPage<HTMLInputElement>(id);
    tick.addEventListener('change', () => change({ [what]: tick.checked }));
  };
  ticks('through', 'seeThrough');
  ticks('sizes', 'sizes');
  ticks('stands', 'stands');
  const axis = onPage<HTMLSelectElement>('axis');
  axis.addEventListener('change', () =>
    change({ axis: axis.value === '' ? undefined : (Number(axis.value) as Choices['axis']) }),
  );
  onPage('play').addEventListener('click', player.toggle);
  onPage('before').addEventListener('click', () => player.by(-1));
  onPage('after').addEventListener('click', () => player.by(1));
  onPage('along').addEventListener('input', player.pause);
  onPage('hide').addEventListener('click', () => hideChosen(looker));
  onPage('show-all').addEventListener('click', () => change({ hidden: new Set() }));
  for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-view]')) {
    button.addEventListener('click', () => {
      stage.view(button.dataset.view as ViewName);
      if (now().place) change({ place: undefined });
    });
  }
}

/** Hides what is chosen; with nothing chosen, shows all again. */
export function hideChosen({ now, change }: Looker): void {
  const { chosen, hidden } = now();
  change(
    chosen.size === 0
      ? { hidden: new Set() }
      : { hidden: new Set([...hidden, ...chosen]), chosen: new Set(), hovered: new Set() },
  );
}

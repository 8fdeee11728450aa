import type { Stage } from '../stage/index.js';
import type { Looker } from './looker.js';
import { onPage, say } from './on-page.js';
import { linkTo, readLink } from './view-link.js';

const BUTTON = 'view-link';

const hasLinks = (): boolean => document.getElementById(BUTTON) !== null;

/** The button that makes a link to what is seen; a link that is opened shows it again. A page whose address says something else has none. */
export function wireLink(looker: Looker, stage: Stage): void {
  if (!hasLinks()) return;
  onPage(BUTTON).addEventListener('click', async () => {
    const link = linkTo({ seen: stage.seen(), choices: looker.now() }, looker.data);
    history.replaceState(null, '', `#${link}`);
    const there = 'The link to what you see is in the address bar';
    try {
      await navigator.clipboard.writeText(location.href);
      say(`${there}, and copied.`);
    } catch {
      say(`${there}.`);
    }
  });
  window.addEventListener('hashchange', () => followLink(looker, stage));
}

/** Shows what the address of the page asks for. @returns whether it asked for something that is shown */
export function followLink(looker: Looker, stage: Stage): boolean {
  const fragment = location.hash.slice(1);
  if (fragment === '' || !hasLinks()) return false;
  const view = readLink(fragment, looker.data);
  if (typeof view === 'string') {
    say(view);
    return false;
  }
  looker.player.pause();
  looker.change({ ...view.choices, place: undefined });
  stage.standAt(view.seen);
  return true;
}

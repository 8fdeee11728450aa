import {
  followLink,
  type Looker,
  lookerOf,
  onPage,
  readData,
  say,
  wireKeys,
  wireLink,
  wireMeasure,
  wirePanel,
  wirePicture,
  wirePointer,
} from './controls/index.js';
import { AT_FIRST } from './over/index.js';
import { openStage, type Stage } from './stage/index.js';

/** The stage, or undefined in a browser without WebGL, where the still picture stays. */
function tryStage(data: ReturnType<typeof readData>): Stage | undefined {
  try {
    return openStage(onPage<HTMLCanvasElement>('view'), data);
  } catch {
    say('This browser has no WebGL, so the picture cannot be turned.');
    return undefined;
  }
}

const PAPER = { background: '#ffffff', edge: '#000000', floor: '#cccccc' };

/** Dark and light; the picture takes the page's own colours. */
function wireTheme(stage: Stage | undefined): void {
  const root = document.documentElement;
  const colour = (name: string) => getComputedStyle(root).getPropertyValue(name).trim();
  const show = (dark: boolean): void => {
    root.dataset.theme = dark ? 'dark' : 'light';
    onPage('theme').textContent = dark ? 'Light' : 'Dark';
    stage?.theme({ background: colour('--paper'), edge: colour('--edge'), floor: colour('--floor') });
  };
  // on paper the page is light, whatever it is on the screen
  window.addEventListener('beforeprint', () => {
    stage?.theme(PAPER);
    stage?.drawNow();
  });
  window.addEventListener('afterprint', () => show(root.dataset.theme === 'dark'));
  const wished = window.matchMedia('(prefers-color-scheme: dark)');
  show(wished.matches);
  wished.addEventListener('change', ({ matches }) => show(matches));
  onPage('theme').addEventListener('click', () => show(root.dataset.theme !== 'dark'));
}

function start(): Looker {
  const data = readData();
  // the still picture gives way first, so that the canvas has its size
  const root = document.documentElement;
  delete root.dataset.flat;
  const stage = tryStage(data);
  if (!stage) root.dataset.flat = 'yes';
  wireTheme(stage);
  const looker = lookerOf(data, stage);
  wirePanel(looker);
  looker.change(AT_FIRST);
  if (stage) {
    const measure = wireMeasure(looker, stage);
    wirePointer(looker, stage, measure);
    wireKeys(looker, stage, measure);
    wireLink(looker, stage);
    wirePicture(looker, stage);
    if (!followLink(looker, stage)) stage.view('corner');
  }
  root.dataset.ready = 'yes';
  return looker;
}

/** The page at work, for a script after this one. */
export const looker = start();

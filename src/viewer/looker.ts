import { printLength } from '../length/index.js';
import { AT_FIRST, type Choices, offsetOf, opacityOf, sectionOf } from './choices.js';
import { onPage, piecesOfRow, rows, say } from './on-page.js';
import type { PreviewData, PreviewPiece } from './preview-data.js';
import { writeOver } from './size-lines.js';
import type { Stage } from './stage.js';

/** The page at work: what was chosen is shown in the picture, in the lists and on the controls alike. */
export interface Looker {
  /** What is shown now. */
  readonly data: PreviewData;
  /** Shows another state of the same piece: what was chosen stays chosen, and the eye where it is. */
  readonly show: (data: PreviewData) => void;
  readonly stage: Stage | undefined;
  readonly now: () => Choices;
  readonly change: (by: Partial<Choices>) => void;
  /** Goes to a step and plays it; undefined: everything together. */
  readonly goToStep: (step: number | undefined) => void;
  readonly choose: (ids: readonly string[]) => void;
}

const STEP_MS = 1100;

export function lookerOf(first: PreviewData, stage: Stage | undefined): Looker {
  let data = first;
  let choices = AT_FIRST;
  const pieceOf = (id: string): PreviewPiece | undefined => data.pieces.find((piece) => piece.id === id);
  const change = (by: Partial<Choices>): void => {
    choices = { ...choices, ...by };
    if (ARRANGING.some((what) => what in by)) {
      stage?.arrange({
        offset: (id) => offsetOf(data, choices, id),
        opacity: (id) => opacityOf(data, choices, id),
      });
    }
    if ('axis' in by || 'cut' in by) stage?.cut(sectionOf(data, choices));
    if ('chosen' in by || 'hovered' in by) stage?.light(choices.chosen, choices.hovered);
    showOnControls(data, choices);
    stage?.draw();
  };
  let playing = 0;
  const goToStep = (step: number | undefined): void => {
    playing += 1;
    const own = playing;
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    change({ step, apart: 0, along: step === undefined || still ? 1 : 0 });
    say(
      step === undefined
        ? 'All together.'
        : `Step ${step + 1} of ${data.steps.length}: ${data.steps[step]!.text}`,
    );
    if (choices.along === 1 || !stage) return;
    const since = performance.now();
    const play = (now: number): void => {
      if (own !== playing || choices.step !== step) return;
      const share = Math.min(1, Math.max(0, (now - since) / STEP_MS));
      change({ along: share * share * (3 - 2 * share) });
      if (share < 1) requestAnimationFrame(play);
    };
    requestAnimationFrame(play);
  };
  stage?.afterDraw(() => {
    const one = choices.chosen.size === 1 ? pieceOf([...choices.chosen][0]!) : undefined;
    writeOver(
      document.querySelector<SVGSVGElement>('#over')!,
      {
        box: one?.box ?? (choices.sizes ? data.box : undefined),
        offset: one?.box ? offsetOf(data, choices, one.id) : [0, 0, 0],
        mark: choices.mark,
        stands: choices.stands ? data.stands : undefined,
      },
      stage.pixel,
    );
  });
  const show = (to: PreviewData): void => {
    data = to;
    stage?.show(to);
    const there = (ids: ReadonlySet<string>) => new Set([...ids].filter((id) => pieceOf(id)));
    const { step, chosen, hovered, hidden } = choices;
    const stepThere = step !== undefined && step < data.steps.length;
    change({
      ...choices,
      ...(!stepThere && { step: undefined, along: 1 }),
      chosen: there(chosen),
      hovered: there(hovered),
      hidden: there(hidden),
      // the place of a finding that may be gone
      mark: undefined,
    });
  };
  return {
    get data() {
      return data;
    },
    show,
    stage,
    now: () => choices,
    change,
    goToStep,
    choose: (ids) => {
      change({ chosen: new Set(ids), mark: undefined });
      const pieces = ids.map(pieceOf).filter((piece) => piece !== undefined);
      say(pieces.length === 0 ? '' : wordsOf(data, pieces));
    },
  };
}

/** Choices by which pieces stand elsewhere or look otherwise. */
const ARRANGING: readonly (keyof Choices)[] = ['apart', 'step', 'along', 'seeThrough', 'hidden'];

/** What is said of pieces that were chosen. */
function wordsOf(data: PreviewData, pieces: readonly PreviewPiece[]): string {
  const [piece] = pieces as [PreviewPiece];
  const joint = data.joints.find(({ tenons }) => tenons.includes(piece.id));
  if (joint && pieces.length > 1) {
    return `${joint.name}: ${joint.clearances.map(({ name, text }) => `${name} ${text}`).join(', ')}`;
  }
  const count = pieces.length > 1 ? `${pieces.length} × ` : '';
  const sizes = piece.box?.sides
    .map(({ name, mmText, inchText }) => `${name} ${mmText} = ${inchText}`)
    .join(', ');
  return [`${count}${piece.name}`, sizes, piece.note].filter((words) => words).join('; ');
}

function showOnControls(data: PreviewData, choices: Choices): void {
  const { apart, step, along, seeThrough, sizes, stands, axis, cut, chosen, hovered } = choices;
  onPage<HTMLInputElement>('apart').value = String(apart);
  onPage<HTMLInputElement>('through').checked = seeThrough;
  onPage<HTMLInputElement>('sizes').checked = sizes;
  onPage<HTMLInputElement>('stands').checked = stands;
  onPage<HTMLSelectElement>('axis').value = axis === undefined ? '' : String(axis);
  const [place, alongStep] = [onPage<HTMLInputElement>('cut'), onPage<HTMLInputElement>('along')];
  place.value = String(cut);
  place.disabled = axis === undefined;
  const at = sectionOf(data, choices)?.place;
  const inBoth =
    at === undefined ? '' : (['mm', 'in'] as const).map((units) => printLength(at, { units })).join(' = ');
  onPage('cut-place').textContent = inBoth;
  place.setAttribute('aria-valuetext', inBoth || 'no section plane');
  alongStep.value = String(along);
  alongStep.disabled = step === undefined;
  for (const row of rows()) {
    const pieces = piecesOfRow(row);
    const current =
      row.dataset.go === 'step'
        ? Number(row.dataset.index) === step
        : pieces.length > 0 && pieces.length === chosen.size && pieces.every((id) => chosen.has(id));
    row.toggleAttribute(
      'data-lit',
      row.dataset.go !== 'step' && pieces.some((id) => hovered.has(id) || chosen.has(id)),
    );
    if (current) row.setAttribute('aria-current', row.dataset.go === 'step' ? 'step' : 'true');
    else row.removeAttribute('aria-current');
  }
}

import { add } from '../../frame/index.js';
import { printLength } from '../../length/index.js';
import {
  AT_FIRST,
  boxesTold,
  type Choices,
  distance,
  litOf,
  offsetOf,
  opacityOf,
  sectionOf,
  stepsOf,
  type Written,
  writeOver,
} from '../over/index.js';
import type { Spot } from '../piece/index.js';
import type { Stage } from '../stage/index.js';
import type { Point, PreviewData, PreviewPiece } from '../told/index.js';
import { isStep, onPage, piecesOfRow, rows, say, stepOfRow } from './on-page.js';
import { type Player, playerOf } from './player.js';

/** The page at work: what was chosen is shown in the picture, in the lists and on the controls alike. */
export interface Looker {
  /** What is shown now. */
  readonly data: PreviewData;
  /** Shows another state of the same piece: what was chosen stays chosen, and the eye where it is. */
  readonly show: (data: PreviewData) => void;
  readonly stage: Stage | undefined;
  readonly now: () => Choices;
  readonly change: (by: Partial<Choices>) => void;
  readonly player: Player;
  readonly choose: (ids: readonly string[]) => void;
}

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
    if (LIGHTING.some((what) => what in by)) stage?.light(choices.chosen, litOf(data, choices));
    showOnControls(data, choices);
    stage?.draw();
  };
  stage?.afterDraw(() => {
    writeOver(
      document.querySelector<SVGSVGElement>('#over')!,
      {
        boxes: boxesTold(data, choices),
        marks: choices.place ? [choices.place.at] : [],
        ...measuredOver(data, choices),
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
    const stepThere = step !== undefined && step < stepsOf(data).length;
    change({
      ...choices,
      ...(!stepThere && { step: undefined, along: 1 }),
      chosen: there(chosen),
      hovered: there(hovered),
      hidden: there(hidden),
      // the place of a finding that may be gone
      place: undefined,
      spots: [],
      aim: undefined,
    });
  };
  const page = {
    get data() {
      return data;
    },
    stage,
    now: () => choices,
    change,
    frame: () => stage?.flyToPieces(data.pieces.map(({ id }) => id)),
  };
  return {
    get data() {
      return data;
    },
    show,
    stage,
    now: page.now,
    change,
    player: playerOf(page),
    choose: (ids) => {
      change({ chosen: new Set(ids), place: undefined });
      const pieces = ids.map(pieceOf).filter((piece) => piece !== undefined);
      say(pieces.length === 0 ? '' : wordsOf(data, pieces));
    },
  };
}

/** What is measured, and where it is pointed, where their pieces stand now. */
function measuredOver(data: PreviewData, choices: Choices): Pick<Written, 'spans' | 'spots' | 'cross'> {
  const { place, spots, aim, cross } = choices;
  const seen = ({ at, piece }: Spot): Point => add(at, offsetOf(data, choices, piece));
  const [from, to] = spots;
  const both = from && to ? [{ from: seen(from), to: seen(to), text: distance(data, [from, to]) }] : [];
  return {
    spans: [...(place?.gap ? [place.gap] : []), ...both],
    spots: [...spots, ...(aim ? [aim] : [])].map(seen),
    cross,
  };
}

/** Choices by which pieces stand elsewhere or look otherwise. */
const ARRANGING: readonly (keyof Choices)[] = ['apart', 'step', 'along', 'seeThrough', 'hidden'];

/** Choices by which pieces are lit. */
const LIGHTING: readonly (keyof Choices)[] = ['chosen', 'hovered', 'step'];

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
  const { apart, step, along, seeThrough, sizes, stands, axis, cut, chosen, hovered, measuring } = choices;
  onPage('measure').setAttribute('aria-pressed', String(measuring));
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
    const current = isStep(row)
      ? stepOfRow(row, data) === step
      : pieces.length > 0 && pieces.length === chosen.size && pieces.every((id) => chosen.has(id));
    row.toggleAttribute('data-lit', !isStep(row) && pieces.some((id) => hovered.has(id) || chosen.has(id)));
    if (current) row.setAttribute('aria-current', isStep(row) ? 'step' : 'true');
    else row.removeAttribute('aria-current');
  }
}

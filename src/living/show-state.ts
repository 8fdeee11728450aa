import {
  changeLines,
  changesSince,
  type DesignRequest,
  type LivingState,
  panelHtml,
  type Started,
  type Summary,
  shownAtOnce,
  sizeForm,
  startDesign,
  stillOf,
  summaryText,
  toldOnPage,
} from '../files/index.js';
import { speaker } from '../length/index.js';
import { aboutOf } from '../range/index.js';
import { toolsOf } from '../shop/index.js';
import { quickVerdictOf } from '../verdict/index.js';
import type { AskedOf } from './asked-of.js';
import type { Answer, Asked, Outfit } from './messages.js';
import { redSpans } from './red-spans.js';

/** What a question is answered with. */
export interface Desk {
  readonly outfit: Outfit;
  readonly read: (state: LivingState) => Promise<AskedOf>;
  readonly tell: (words: Told) => void;
  /** Another question waits. */
  readonly isStale: () => boolean;
}

/** An answer without its number. */
type Told = Answer extends infer One ? (One extends unknown ? Omit<One, 'number'> : never) : never;

/** The person is still dragging while questions come faster than this, ms. */
const STILL = 180;

/** Lets whatever waits have its turn. */
const breath = (ms = 0): Promise<void> => new Promise((go) => setTimeout(go, ms));

/** Tells all about a state, the quickest first; between its stages it gives way to another question. */
export async function showState(
  { state, flat, dragged }: Asked & { kind: 'show' },
  desk: Desk,
): Promise<void> {
  const { tell, isStale, outfit } = desk;
  const asked = await desk.read(state);
  const { question, values } = asked;
  tell({
    kind: 'form',
    title: question.model.title,
    form: sizeForm(question.model, state.given, state.units, toolsOf(question.shop)),
  });
  const say = speaker(state.units);
  const glance = quickVerdictOf(question, values);
  if (glance.refused) throw glance.refused;
  tell({
    kind: 'glance',
    errors: glance.findings.filter(({ level }) => level === 'error').map(({ message }) => message),
  });
  const made = await startDesign(requestOf(asked, desk), outfit.kernel);
  try {
    tell({
      kind: 'picture',
      design: state.design,
      data: shownAtOnce(made),
      still: flat ? stillOf(made) : undefined,
    });
    await breath(dragged ? STILL : 0);
    if (isStale()) return;
    // worked out for the verdict, and by far the longest part of it
    made.bench;
    await breath();
    if (isStale()) return;
    const { findings } = made;
    const count = (of: string) => findings.filter(({ level }) => level === of).length;
    tell({ kind: 'verdict', errors: count('error'), warnings: count('warning'), notes: count('note') });
    await breath();
    if (isStale()) return;
    const { data, papers } = toldOnPage(made);
    tell({ kind: 'told', data, panel: panelHtml(data, papers) });
    await breath();
    if (isStale()) return;
    const before = await summaryAtStart(desk, state);
    if (before && !isStale())
      tell({ kind: 'changed', lines: changeLines(changesSince(before, summaryOf(made)), say) });
  } finally {
    made.dispose();
  }
  for (const found of redSpans(asked)) {
    await breath();
    if (isStale()) return;
    if (found) tell({ kind: 'red', ...found });
  }
  tell({ kind: 'settled' });
}

/** What the command line would ask for these words. */
export function requestOf({ question, values, given }: AskedOf, { outfit }: Desk): DesignRequest {
  const { model } = question;
  const ranges = outfit.designs.find(({ name }) => name === model.name)?.ranges;
  const { about, ...found } = ranges ?? {};
  return {
    ...question,
    values,
    given,
    ...outfit.written,
    force: false,
    version: outfit.version,
    progress: () => {},
    // ranges are of the very values they were found for
    ...(ranges && about === aboutOf(question, values, outfit.version) && { ranges: found as typeof ranges }),
  };
}

const summaryOf = (made: Started): Summary => JSON.parse(summaryText(made, [], true)) as Summary;

let atStart: { readonly key: string; readonly summary: Summary } | undefined;

/** The summary of the piece as it was published; undefined while nothing else is shown. */
async function summaryAtStart(desk: Desk, { design, told }: LivingState): Promise<Summary | undefined> {
  const { outfit } = desk;
  const own = outfit.start.design === design && outfit.start.told?.text === told?.text;
  const start = own ? outfit.start : { ...outfit.start, design, given: {}, ...(told && { told }) };
  const key = JSON.stringify(start);
  if (atStart?.key !== key) {
    const made = await startDesign(requestOf(await desk.read(start), desk), outfit.kernel);
    try {
      atStart = { key, summary: summaryOf(made) };
    } finally {
      made.dispose();
    }
  }
  return atStart.summary;
}

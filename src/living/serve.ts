import { InputError, TenonwrightError } from '../errors.js';
import { speaker } from '../length/index.js';
import type { Model } from '../model/index.js';
import { type AskedOf, askedOf, shopFormOf } from './asked-of.js';
import type { Answer, Asked, Outfit } from './messages.js';
import { type Desk, showState } from './show-state.js';
import { cureState, saveState } from './whole-work.js';

/** A worker's end of the line to its page. */
export interface Line {
  onmessage: ((event: { readonly data: Outfit | Asked }) => void) | null;
  postMessage(answer: Answer): void;
}

/**
 * Answers a page: one question at a time, and of those that wait for a picture only the latest.
 *
 * @param models those told in code
 */
export function serve(models: readonly Model[], line: Line): void {
  let outfit: Outfit | undefined;
  const waiting: Asked[] = [];
  let working = false;
  const next = async (): Promise<void> => {
    if (working || !outfit) return;
    working = true;
    for (let asked = waiting.shift(); asked; asked = waiting.shift()) {
      // a later state has taken the place of this one
      if (asked.kind === 'show' && waiting.some(({ kind }) => kind === 'show')) continue;
      const whole = await answer(asked, outfit, models, line, waiting);
      // what gave way to saving is still shown, and is told to its end afterwards
      if (!whole && !waiting.some(({ kind }) => kind === 'show')) waiting.push(asked);
    }
    working = false;
  };
  line.onmessage = ({ data }) => {
    if (data.kind === 'outfit') outfit = data;
    else waiting.push(data);
    void next();
  };
}

/** @returns whether it was answered to the end */
async function answer(
  asked: Asked,
  outfit: Outfit,
  models: readonly Model[],
  line: Line,
  waiting: readonly Asked[],
): Promise<boolean> {
  const { number, state } = asked;
  const stock = { models: new Map(models.map((model) => [model.name, model])), designs: outfit.designs };
  let whole = true;
  const desk: Desk = {
    outfit,
    read: (one): Promise<AskedOf> => askedOf(one, stock),
    tell: (words) => line.postMessage({ ...words, number }),
    isStale: () => {
      if (waiting.length > 0) whole = false;
      return !whole;
    },
  };
  try {
    if (asked.kind === 'show') await showState(asked, desk);
    else if (asked.kind === 'save') await saveState(asked, desk);
    else if (asked.kind === 'cure') await cureState(asked, desk);
    else desk.tell({ kind: 'shop', fields: await shopFormOf(state) });
  } catch (error) {
    const say = speaker(state.units);
    if (error instanceof TenonwrightError)
      desk.tell({
        kind: 'refused',
        text: error.explain(say),
        places: error instanceof InputError ? error.places(say) : [],
      });
    else
      desk.tell({
        kind: 'fault',
        text: error instanceof Error ? (error.stack ?? error.message) : String(error),
      });
  }
  return whole;
}

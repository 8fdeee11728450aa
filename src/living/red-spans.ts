import { speaker } from '../length/index.js';
import { optionName } from '../model/index.js';
import { toolsOf } from '../shop/index.js';
import { knobs, quickVerdictOf } from '../verdict/index.js';
import type { AskedOf } from './asked-of.js';
import type { RedSpan } from './messages.js';

/** Places along a slider where the data alone are asked. */
const PLACES = 16;

/** Where between the ends of a size the data alone find an error while the others stay. */
export interface Reddened {
  readonly option: string;
  readonly spans: readonly RedSpan[];
}

/** A size at a time; nothing after each place that was tried, for all of them together take seconds. */
export function* redSpans({ question, values, given }: AskedOf): Generator<Reddened | undefined> {
  const full = question.model.complete(values, toolsOf(question.shop));
  const say = speaker(question.units);
  for (const { name, meta } of knobs(question.model, full, given)) {
    const step = (meta.max - meta.min) / PLACES;
    const spans: RedSpan[] = [];
    for (let i = 0; i <= PLACES; i += 1) {
      yield;
      const at = meta.min + i * step;
      const value = meta.kind === 'count' ? Math.round(at) : at;
      const { refused, findings } = quickVerdictOf(question, { ...values, [name]: value });
      const why = refused ? refused.explain(say) : findings.find(({ level }) => level === 'error')?.message;
      if (why === undefined) continue;
      const before = spans.at(-1);
      const from = Math.max(meta.min, at - step / 2);
      const to = Math.min(meta.max, at + step / 2);
      if (before && before.to >= from - step / 1000) spans[spans.length - 1] = { ...before, to };
      else spans.push({ from, to, why });
    }
    yield { option: optionName(name), spans };
  }
}

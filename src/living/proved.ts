import type { LivingDesign, SizeRow } from '../files/index.js';
import type { Units } from '../length/index.js';
import { optionName, printValue } from '../model/index.js';
import type { Span } from '../range/index.js';

/** Between which values full verdicts found a design sound while its other sizes stayed as planned, and in words. */
export interface Proved {
  readonly spans: readonly Span[];
  readonly words: string;
}

/** What was proved of a size; undefined when nothing was. */
export function provedOf(
  { option, kind }: Pick<SizeRow, 'option' | 'kind'>,
  ranges: LivingDesign['ranges'],
  units: Units,
): Proved | undefined {
  const found = ranges?.alone.find(({ dimension }) => optionName(dimension.name) === option);
  if (!found) return undefined;
  const { span, again, below, above } = found;
  const say = (value: number): string => printValue({ kind }, value, units);
  const ends = [below, above].flatMap((end) => (end ? [`At ${say(end.value)}: ${end.text}.`] : []));
  return {
    spans: [span, ...again],
    words: [
      `Proved sound by itself from ${say(span.from)} to ${say(span.to)}, with the other sizes as planned.`,
      ...again.map(({ from, to }) => `Again from ${say(from)} to ${say(to)}.`),
      ...ends,
    ].join(' '),
  };
}

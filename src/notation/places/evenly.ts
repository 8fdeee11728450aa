import { type Keys, type Phrase, phraseOf, problemWith } from '../text/index.js';
import { type Pair, pairOf } from './pair.js';
import { middleAt, type Surroundings } from './place.js';
import { AXIS_WORDS, type Axis } from './sides.js';
import type { Fact } from './solve-box.js';
import type { Axes } from './stood.js';

/** Copies with equal gaps: between two things, or from one place to another. */
export function readEvenly(
  keys: Keys,
  around: Surroundings,
  { axes, sizeKeys }: { readonly axes: Axes; readonly sizeKeys: readonly [string, string, string] },
  sizes: readonly ({ readonly value: number } | undefined)[],
  { count, n }: { readonly count: number; readonly n: number },
  facts: Fact[][],
): void {
  const entry = keys.get('evenly');
  if (!entry) return;
  const phrase = phraseOf(entry, 'evenly');
  const range = /^from\s+(.+?)\s+to\s+(.+)$/.exec(phrase.value);
  const between = /^between\s+/.exec(phrase.value);
  if (!range && !between)
    throw problemWith(
      phrase,
      `'${phrase.value}' names no two places`,
      `write 'between A and B' or 'from … to …'`,
    );
  const within = between
    ? gapOf(pairOf(tail(phrase, between[0].length), around, axes.grain, [axes.grain]))
    : rangeOf(phrase, range!, around);
  const { axis, low, high, outer } = within;
  const size = sizes[axis]?.value;
  if (size === undefined)
    throw problemWith(
      phrase,
      `copies are spread ${AXIS_WORDS[axis]}, and their size there is not told`,
      `tell ${sizeKeys[axis]}`,
    );
  const free = high - low - count * size;
  if (free < 0)
    throw problemWith(
      phrase,
      (say) => `${count} boards of ${say.fine(size)} do not fit into ${say.fine(high - low)}`,
      'take fewer or thinner ones',
    );
  const gap = free / (outer ? count + 1 : Math.max(count - 1, 1));
  const first = outer ? low + gap : count === 1 ? low + free / 2 : low;
  facts[axis]!.push({ kind: 'low', value: first + (n - 1) * (size + gap), key: 'evenly' });
}

const tail = (phrase: Phrase, from: number): Phrase => ({
  value: phrase.value.slice(from),
  at: { line: phrase.at.line, column: phrase.at.column + from },
});

const gapOf = ({ axis, low, high }: Pair) => ({ axis, low: low.at, high: high.at, outer: true });

function rangeOf(phrase: Phrase, found: RegExpExecArray, around: Surroundings) {
  const at = (text: string, from: number): Phrase => ({
    value: text,
    at: { line: phrase.at.line, column: phrase.at.column + from },
  });
  const places = [
    at(found[1]!, phrase.value.indexOf(found[1]!)),
    at(found[2]!, phrase.value.lastIndexOf(found[2]!)),
  ];
  const spots = places.map((place) => {
    const all = middleAt(place, around);
    if (all.length === 1 && 'at' in all[0]!) return all[0] as { axis: Axis; at: number };
    throw problemWith(place, `'${place.value}' does not say a side`, `write 'top of ${place.value}'`);
  });
  if (spots[0]!.axis !== spots[1]!.axis)
    throw problemWith(
      phrase,
      `one end lies ${AXIS_WORDS[spots[0]!.axis]}, the other ${AXIS_WORDS[spots[1]!.axis]}`,
      'name two places in one direction',
    );
  const ends = spots.map(({ at: one }) => one).toSorted((a, b) => a - b);
  return { axis: spots[0]!.axis, low: ends[0]!, high: ends[1]!, outer: false };
}

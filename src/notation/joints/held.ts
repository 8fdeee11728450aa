import type { FastenRequest } from '../../assembly/index.js';
import { minimumRectangle } from '../../profile/index.js';
import type { Reckoning } from '../formulas/index.js';
import type { Stood } from '../places/index.js';
import { needed, oneOf, onlyKeys, type PairEntry, phraseOf, problemWith } from '../text/index.js';
import { touchingPairs } from './joints.js';

/** Keys of what is held without glue. */
export const HELD_KEYS: readonly string[] = [
  'by',
  'every',
  'count',
  'travel',
  'screw',
  'long',
  'below',
  'wide',
  'deep',
];

const WAYS = { buttons: 'button', 'slotted screws': 'screw' } as const;

/** From the ends of a seat to the first fastening: as far as the engine takes. Common practice, no source; mm. */
const FROM_END = 75;

/** What is held to what, so that it can move. @throws Problem */
export function fastenRequests(
  entry: PairEntry,
  standing: readonly Stood[],
  reckon: Reckoning,
): readonly FastenRequest[] {
  const { options: keys } = entry;
  onlyKeys(keys, HELD_KEYS, 'what is held');
  const by =
    WAYS[
      oneOf(
        phraseOf(needed(keys, 'by', entry.a, 'this', 'write by: buttons, or by: slotted screws'), 'by'),
        Object.keys(WAYS) as (keyof typeof WAYS)[],
      )
    ];
  const length = (key: string): number | undefined => {
    const told = keys.get(key);
    return told && reckon.figure(phraseOf(told, key), 'length');
  };
  const every = length('every');
  if (every !== undefined && every <= 0)
    throw problemWith(phraseOf(keys.get('every')!, 'every'), 'it must be more than 0', 'give more');
  const countEntry = keys.get('count');
  const told = countEntry && reckon.figure(phraseOf(countEntry, 'count'), 'number');
  const screw = length('screw');
  const more = {
    travel: length('travel'),
    screw: screw as FastenRequest['screw'],
    screwLength: length('long'),
    slotBelow: length('below'),
    slotWidth: length('wide'),
    slotDepth: length('deep'),
  };
  const given = Object.fromEntries(Object.entries(more).filter(([, value]) => value !== undefined));
  return touchingPairs(entry, standing).map(({ a, b, patches }) => {
    const run = minimumRectangle(patches[0]!.patch).length - 2 * FROM_END;
    const count = told ?? (every === undefined ? undefined : Math.max(2, Math.ceil(run / every) + 1));
    return {
      held: a.placed.board.id,
      to: b.placed.board.id,
      by,
      ...(count !== undefined && { count }),
      ...given,
    };
  });
}

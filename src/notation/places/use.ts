import { USES, USUAL_USER, type Use, type User } from '../../assembly/index.js';
import type { Reckoning } from '../formulas/index.js';
import { type Keys, oneOf, onlyKeys, type Phrase, phraseOf } from '../text/index.js';

/** What a board is used for, where the file says it. */
export interface ToldUse {
  readonly use: Use;
  readonly at: Phrase;
}

/** Uses as a file writes them: `table top`. */
export const USE_WORDS: readonly string[] = USES.map((use) => use.replace('-', ' '));

/** Keys of `used by`. */
export const USER_KEYS: readonly string[] = ['heaviest', 'children'];

/** What a board says it is for. @throws Problem */
export function useOf(keys: Keys): ToldUse | undefined {
  const entry = keys.get('use');
  if (!entry) return undefined;
  const at = phraseOf(entry, 'use');
  return { use: USES[USE_WORDS.indexOf(oneOf(at, USE_WORDS))]!, at };
}

/** Who uses a piece: `{ heaviest: 110 kg, children: yes }`; what is not told is usual. @throws Problem */
export function userOf(keys: Keys, reckon: Reckoning): User {
  onlyKeys(keys, USER_KEYS, "'used by'");
  const [heaviest, children] = USER_KEYS.map((key) => {
    const entry = keys.get(key);
    return entry && phraseOf(entry, key);
  });
  return {
    kg: heaviest
      ? reckon.figure({ ...heaviest, value: heaviest.value.replace(/\s*kg$/, '') }, 'number')
      : USUAL_USER.kg,
    child: children ? reckon.yes(children) : USUAL_USER.child,
  };
}

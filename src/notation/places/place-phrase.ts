import { type Phrase, partOf, problemWith } from '../text/index.js';
import { isSide, type Side } from './sides.js';

/** Which way a measure runs: towards the middle of what is named, beyond it, up or down. */
export type Relation = 'short of' | 'past' | 'above' | 'below';

/** `[measure short of | past | above | below] [SIDE of] board`, taken apart; nothing is worked out yet. */
export interface PlacePhrase {
  readonly measure?: { readonly formula: Phrase; readonly relation: Relation };
  /** `middle` of a board, or one of its sides; the side that is being placed when left out. */
  readonly side?: Side | 'middle';
  /** A board or group, `piece`, `floor`; empty where the board itself is meant: `40 short of front`. */
  readonly of: Phrase;
  readonly whole: Phrase;
}

/** @throws Problem for a measure from nothing */
export function placePhrase(whole: Phrase): PlacePhrase {
  const found = lastRelation(whole.value);
  const measure = found && {
    formula: partOf(whole, 0, found.index),
    relation: found.relation,
  };
  const named = found ? partOf(whole, found.index + found.length) : whole;
  if (measure && measure.formula.value === '')
    throw problemWith(whole, `how far is not said before '${measure.relation}'`, `write '20 ${whole.value}'`);
  if (named.value === '')
    throw problemWith(whole, `nothing follows '${found!.relation}'`, 'name a board or the floor');
  return { ...(measure && { measure }), ...sideOf(named), whole };
}

/** `front of rail`, `middle of seat`, `front`, `rail`. */
function sideOf(named: Phrase): Pick<PlacePhrase, 'side' | 'of'> {
  const found = /^(\S+)\s+of\s+/.exec(named.value);
  const word = found?.[1];
  if (found && word !== undefined && (isSide(word) || word === 'middle'))
    return { side: word, of: partOf(named, found[0].length) };
  if (isSide(named.value)) return { side: named.value, of: partOf(named, named.value.length) };
  return { of: named };
}

/** The last word of relation outside brackets: a name after it has none, a formula before it may have. */
function lastRelation(text: string): { index: number; length: number; relation: Relation } | undefined {
  let found: { index: number; length: number; relation: Relation } | undefined;
  for (const match of text.matchAll(/(?:^|\s)(short\s+of|past|above|below)(?=\s|$)/g)) {
    const before = text.slice(0, match.index);
    if (before.split('(').length !== before.split(')').length) continue;
    found = {
      index: match.index,
      length: match[0].length,
      relation: match[1]!.replace(/\s+/, ' ') as Relation,
    };
  }
  return found;
}

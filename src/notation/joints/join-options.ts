import type { JoinRequest } from '../../assembly/index.js';
import { type JoinOptions, PRACTICE } from '../../joinery/index.js';
import type { Tools } from '../../model/index.js';
import { nearestCutter } from '../../tables/index.js';
import type { Reckoning } from '../formulas/index.js';
import { boardsCalled, type Stood } from '../places/index.js';
import {
  didYouMeanWord,
  oneOf,
  type PairEntry,
  type Phrase,
  Problem,
  partsOf,
  phraseOf,
  phrasesOf,
  problemWith,
} from '../text/index.js';
import type { Touching } from './joints.js';

/** Lengths of a joint and what the engine calls them. */
const LENGTHS = {
  cutter: 'cutter',
  wide: 'tenonWidth',
  thick: 'tenonThickness',
  inset: 'endInset',
  web: 'web',
  spacing: 'spacing',
  across: 'shiftAcross',
  'cheek clearance': 'cheekClearance',
  'edge clearance': 'edgeClearance',
  'end gap': 'endGap',
} as const satisfies Readonly<Record<string, keyof JoinOptions>>;

const COUNTS = { tenons: 'tenons', rows: 'rows' } as const satisfies Readonly<
  Record<string, keyof JoinOptions>
>;

/** Every key a joint may have; `depth in BOARD` besides. */
export const JOINT_KEYS: readonly string[] = [
  ...Object.keys(LENGTHS),
  ...Object.keys(COUNTS),
  'along',
  'turned',
  'places',
  'patches',
  'meet',
  'runs',
  'mitred',
  'depth in …',
];

const MEETS = ['shorten', 'butt', 'stagger', 'mitre'] as const;

/**
 * A joint of the file between two of its boards, as the engine takes it.
 *
 * @param standing for the boards that options name
 * @throws Problem
 */
export function joinRequest(
  entry: PairEntry,
  { a, b }: Touching,
  standing: readonly Stood[],
  reckon: Reckoning,
  tools: Tools,
): JoinRequest {
  const { options: keys } = entry;
  const asked: { -readonly [K in keyof JoinOptions]: JoinOptions[K] } = {};
  const depths: Record<string, number> = {};
  for (const [key, told] of keys) {
    const phrase = () => phraseOf(told, key);
    if (Object.hasOwn(LENGTHS, key))
      asked[LENGTHS[key as keyof typeof LENGTHS]] = reckon.figure(phrase(), 'length');
    else if (key === 'tenons') asked.tenons = reckon.figure(phrase(), 'number');
    else if (key === 'rows') asked.rows = reckon.figure(phrase(), 'number');
    else if (key === 'turned') asked.turned = reckon.yes(phrase());
    else if (key === 'places') asked.places = phrasesOf(told, key).map((one) => reckon.figure(one, 'length'));
    else if (key === 'patches') asked.patches = patchesOf(phrase(), reckon);
    else if (key === 'meet') asked.meet = oneOf(phrase(), MEETS);
    else if (key === 'along') Object.assign(asked, alongOf(phrase(), [a, b], standing, reckon));
    else if (key === 'runs') Object.assign(asked, runsOf(phrase(), [a, b], standing));
    else if (key.startsWith('depth in ')) {
      const board = { value: key.slice('depth in '.length), at: { ...told.at, column: told.at.column + 9 } };
      for (const one of among(board, [a, b], standing))
        depths[one.placed.board.id] = reckon.figure(phrase(), 'length');
    } else if (key !== 'mitred')
      throw new Problem(told.at, key.length, `a joint knows no '${key}'`, didYouMeanWord(key, JOINT_KEYS));
  }
  const thinner = Math.min(a.placed.board.blank.thickness, b.placed.board.blank.thickness);
  const cutter =
    asked.cutter ??
    nearestCutter((3 * thinner * PRACTICE.tenonShare) / (2 * (asked.rows ?? 1) + 1), tools.cutters);
  const deepest = tools.deepest?.(cutter);
  return {
    a: a.placed.board.id,
    b: b.placed.board.id,
    options: {
      ...asked,
      cutter,
      ...(deepest !== undefined && { deepest }),
      ...tools.wood,
      ...(Object.keys(depths).length > 0 && { depths }),
    },
  };
}

/** Those of two boards that a name stands for. */
function among(phrase: Phrase, pair: readonly Stood[], standing: readonly Stood[]): readonly Stood[] {
  const called = boardsCalled(phrase, standing);
  return pair.filter((board) => called.includes(board));
}

/** `along: leg`: the edge the mortises run along; `along: 5`: a shift. */
function alongOf(
  phrase: Phrase,
  pair: readonly Stood[],
  standing: readonly Stood[],
  reckon: Reckoning,
): JoinOptions {
  if (/^[-+\d(]/.test(phrase.value)) return { shiftAlong: reckon.figure(phrase, 'length') };
  const [found] = among(phrase, pair, standing);
  if (found) return { along: found.placed.board.id };
  throw problemWith(
    phrase,
    `'${phrase.value}' is not in this joint`,
    `name ${pair.map(({ name }) => name).join(' or ')}`,
  );
}

/** `runs: square` to the seat, or `along apron`. */
function runsOf(phrase: Phrase, pair: readonly Stood[], standing: readonly Stood[]): JoinOptions {
  if (phrase.value === 'square') return { axis: 'face' };
  const found = /^along\s+/.exec(phrase.value);
  if (!found)
    throw problemWith(
      phrase,
      `'${phrase.value}' says no way mortises run`,
      `write 'square' or 'along ${pair[0]!.name}'`,
    );
  const board = {
    value: phrase.value.slice(found[0].length),
    at: { ...phrase.at, column: phrase.at.column + found[0].length },
  };
  const [one] = among(board, pair, standing);
  if (!one)
    throw problemWith(
      board,
      `'${board.value}' is not in this joint`,
      `name ${pair.map(({ name }) => name).join(' or ')}`,
    );
  return { axis: one === pair[0] ? 'along a' : 'along b' };
}

/** `largest`, or numbers joined by `and`. */
function patchesOf(phrase: Phrase, reckon: Reckoning): NonNullable<JoinOptions['patches']> {
  return phrase.value === 'largest'
    ? 'largest'
    : partsOf(phrase).map((part) => reckon.figure(part, 'number'));
}

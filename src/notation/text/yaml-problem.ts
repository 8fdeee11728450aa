import type { YAMLError } from 'yaml';
import { Problem } from './problem.js';
import type { Place } from './told.js';

/** What the reader of YAML complains of, in our words: what is wrong, and what to write. */
const WORDS: Readonly<Partial<Record<YAMLError['code'], readonly [text: string, remedy: string]>>> = {
  BLOCK_AS_IMPLICIT_KEY: [
    'this line is a phrase and a key at once',
    'put a phrase that holds a colon in quotes; begin a key where its neighbours begin',
  ],
  MULTILINE_IMPLICIT_KEY: [
    'a colon is missing, or a bracket or quote is not closed',
    'write each key, its colon and what follows on one line',
  ],
  BAD_INDENT: [
    'this line begins in another column than those it belongs to',
    'begin keys of one group in one column',
  ],
  BLOCK_IN_FLOW: ['a comma is missing in this', 'between brackets write a comma between keys'],
  TAB_AS_INDENT: ['a tab stands before the first word', 'indent with blanks'],
  MULTIPLE_DOCS: ['a second piece begins here', 'tell one piece in one file, and leave --- out'],
  BAD_DQ_ESCAPE: [
    'this mark after a backslash means nothing',
    'leave the backslash out, or use single quotes',
  ],
  BAD_SCALAR_START: ['no phrase can begin with this mark', 'put the phrase in quotes'],
  BAD_DIRECTIVE: ['no line can begin with % here', 'leave the line out'],
  RESOURCE_EXHAUSTION: ['there are too many brackets within each other', 'a piece needs no more than five'],
  BAD_ALIAS: ['* refers to another place of the file, and a piece has no such places', 'write it out'],
  MULTIPLE_ANCHORS: ['& marks places to be referred to, and a piece has none', 'leave it out'],
  MULTIPLE_TAGS: ['! names kinds of data, and a piece has none', 'leave it out'],
  TAG_RESOLVE_FAILED: ['! names kinds of data, and a piece has none', 'leave it out'],
};

const CANNOT_STAND: readonly [string, string] = [
  'this cannot stand here',
  'write a key, a colon, a blank and what it says; a list begins on a line of its own',
];

/** What these mean between brackets is one thing. */
const IN_BRACKETS: readonly YAMLError['code'][] = [
  'MISSING_CHAR',
  'UNEXPECTED_TOKEN',
  'MULTILINE_IMPLICIT_KEY',
  'BLOCK_AS_IMPLICIT_KEY',
];

/** @param at the place of a letter, counted from 0 */
export function yamlProblem(error: YAMLError, text: string, at: (offset: number) => Place): Problem {
  const offset = error.pos[0];
  if (/^Missing closing .quote/.test(error.message))
    return new Problem(
      at(openQuote(text, offset)),
      1,
      'this quote is never closed',
      'write it again where the phrase ends',
    );
  const bracket = openBracket(text, offset);
  if (bracket !== undefined && error.code === 'BAD_INDENT')
    return new Problem(
      at(bracket),
      1,
      'this bracket is never closed',
      `write ${text[bracket] === '{' ? '}' : ']'} where it ends`,
    );
  if (bracket !== undefined && IN_BRACKETS.includes(error.code))
    return new Problem(
      at(offset),
      1,
      'a comma is missing before this, or a colon after it',
      'between brackets write a comma between keys, and a colon and a blank after each',
    );
  const [words, remedy] = WORDS[error.code] ?? CANNOT_STAND;
  return new Problem(at(offset), 1, words, remedy);
}

/** A quote opens a phrase where nothing stands before it; after a figure it is a foot or an inch. */
const OPENS = /(?:^|[\s{[,])(["'])/;

/** The last quote before an offset that opens a phrase. */
function openQuote(text: string, offset: number): number {
  for (let at = Math.min(offset, text.length - 1); at >= 0; at--)
    if (OPENS.test(text.slice(Math.max(0, at - 1), at + 1)) && /["']/.test(text[at]!)) return at;
  return offset;
}

/** The innermost bracket that is open at an offset; undefined when none is. */
function openBracket(text: string, offset: number): number | undefined {
  const open: number[] = [];
  for (let at = 0; at < Math.min(offset, text.length); at++) {
    const letter = text[at]!;
    const first = at === 0 || /[\s{[,]/.test(text[at - 1]!);
    if (letter === '#' && first) at = endOf(text, '\n', at);
    else if ((letter === '"' || letter === "'") && first) at = endOf(text, letter, at);
    else if (letter === '{' || letter === '[') open.push(at);
    else if (letter === '}' || letter === ']') open.pop();
  }
  return open.at(-1);
}

const endOf = (text: string, mark: string, from: number): number => {
  const end = text.indexOf(mark, from + 1);
  return end < 0 ? text.length : end;
};

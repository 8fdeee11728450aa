import parser from 'yargs-parser';
import { InputError } from '../../errors.js';
import { didYouMean, optionName, type ParameterRow } from '../../model/index.js';

/** What of a parameter says how it is written as an option. */
export type OptionRow = Pick<ParameterRow, 'option' | 'kind'>;

/** A line of the shell, taken apart. */
export interface Line {
  /** The command, what it is about, and whatever else stands by itself. */
  readonly words: readonly string[];
  /** Values as they were written, by kebab-case name; that of a flag by itself is `true`. */
  readonly options: Readonly<Record<string, string>>;
}

/** Options of every command. */
const ALWAYS: readonly OptionRow[] = [
  { option: 'help', kind: 'flag' },
  { option: 'version', kind: 'flag' },
];

/** Words that are the value of the flag before them; any other word stands by itself. */
const FLAG_WORDS = ['true', 'false', 'yes', 'no', 'on', 'off'];

/** The words of a line some of whose options are not known yet: the word after such an option is taken for its value. */
export const wordsAmong = (argv: readonly string[], known: readonly OptionRow[]): readonly string[] =>
  wordsIn(parsed(argv, [...known, ...ALWAYS], false).argv);

/**
 * Takes a line apart.
 *
 * @param argv without the program's name
 * @param known all options there are, besides --help and --version
 * @throws InputError `option-unknown`, `option-without-value`, `option-twice`
 * @example wordsAndOptions(['make', 'stool', '--splay', '-5°'], rows) // { words: ['make', 'stool'], options: { splay: '-5°' } }
 */
export function wordsAndOptions(argv: readonly string[], known: readonly OptionRow[]): Line {
  const rows = [...known, ...ALWAYS];
  const { argv: found, error } = parsed(argv, rows, true);
  const { _: beside, '--': _after, ...values } = found;
  const names = rows.map(({ option }) => option);
  const unknown =
    beside.map(String).find((word) => word.startsWith('-')) ??
    Object.keys(values)
      .filter((name) => name !== 'h' && !names.includes(optionName(name)))
      .map((name) => `${name.length === 1 ? '-' : '--'}${name}`)[0];
  if (unknown !== undefined) throw optionUnknown(unknown, names);
  // the one thing the parser may find wrong, and it tells the option's name alone
  if (error) throw withoutValue(error.message);
  const options: Record<string, string> = {};
  for (const { option, kind } of rows) {
    const value: unknown = values[option];
    if (value === undefined) continue;
    if (Array.isArray(value))
      throw new InputError('option-twice', `--${option} is given twice: leave one out`);
    if (value === false && kind !== 'flag') throw optionUnknown(`--no-${option}`, names);
    if (String(value).startsWith('--')) throw withoutValue(option, String(value));
    options[option] = String(value);
  }
  return { words: wordsIn(found), options };
}

/** Words by themselves; after -- every word is one. */
const wordsIn = ({ _: beside, '--': after = [] }: parser.Arguments): string[] =>
  [...beside, ...after].map(String);

const parsed = (argv: readonly string[], rows: readonly OptionRow[], allKnown: boolean) =>
  parser.detailed(withFlagsValued(argv, rows), {
    string: rows.map(({ option }) => option),
    narg: Object.fromEntries(rows.map(({ option }) => [option, 1])),
    key: Object.fromEntries(rows.map(({ option }) => [option, true])),
    alias: { help: ['h'] },
    configuration: {
      'dot-notation': false,
      'parse-positional-numbers': false,
      'populate--': true,
      'short-option-groups': false,
      // else a value like -½ would be an option that nobody knows
      'unknown-options-as-args': allKnown,
    },
    // the parser's texts, with what they are about
    __: (_text: string, option: string) => option,
  } as parser.Options);

/** The parser knows no flag that is yes, no, or nothing at all: what it calls one takes `=yes` for false. */
const withFlagsValued = (argv: readonly string[], rows: readonly OptionRow[]): string[] => {
  const flags = ['h', ...rows.filter(({ kind }) => kind === 'flag').map(({ option }) => option)];
  return argv.map((word, at) =>
    word.startsWith('-') &&
    !argv.slice(0, at).includes('--') &&
    flags.includes(optionName(word.replace(/^--?/, ''))) &&
    !FLAG_WORDS.includes(argv[at + 1]?.toLowerCase() ?? '')
      ? `${word}=true`
      : word,
  );
};

const optionUnknown = (written: string, names: readonly string[]): InputError => {
  const name = optionName(written.replace(/^-+/, '').replace(/=[\s\S]*$/, ''));
  const meant = didYouMean(
    `--${name}`,
    names.map((one) => `--${one}`),
  );
  return new InputError('option-unknown', `there is no option ${written}${meant}`);
};

const withoutValue = (option: string, next?: string): InputError =>
  new InputError(
    'option-without-value',
    next === undefined
      ? `--${option} has no value: write one after it`
      : `--${option} has no value, and ${next} looks like another option: write a value after it`,
  );

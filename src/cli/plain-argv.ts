import { InputError } from '../errors.js';
import { didYouMean, optionName } from '../model/index.js';

/** For each option known here, whether it is a flag: a flag may stand without a value. */
export type KnownOptions = ReadonlyMap<string, { readonly isFlag: boolean }>;

const FLAG_WORDS = ['true', 'false', 'yes', 'no', 'on', 'off'];

/**
 * Arguments with every option as `--its-name=value`, so that a parser sees `-9-1/16"` as the value it is.
 *
 * @param argv without the program's name
 * @returns options in kebab-case; `--no-wedged` as `--wedged=false`
 * @throws InputError `option-unknown`, `option-without-value`, `option-twice`
 * @example plainArgv(['make', 'stool', '--splay', '-5°'], known) // ['make', 'stool', '--splay=-5°']
 */
export function plainArgv(argv: readonly string[], known: KnownOptions): readonly string[] {
  const plain: string[] = [];
  const seen = new Set<string>();
  for (let at = 0; at < argv.length; at++) {
    const word = argv[at]!;
    if (!word.startsWith('-')) {
      plain.push(word);
      continue;
    }
    const { name, value } = readOption(word, known);
    if (seen.has(name)) throw new InputError('option-twice', `--${name} is given twice: leave one out`);
    seen.add(name);
    if (value !== undefined) {
      plain.push(`--${name}=${value}`);
      continue;
    }
    const next = argv[at + 1];
    if (takesNext(known.get(name)!.isFlag, next)) at++;
    else if (!known.get(name)!.isFlag)
      throw new InputError('option-without-value', `--${name} has no value: write one after it`);
    plain.push(`--${name}=${argv[at] === word ? 'true' : next}`);
  }
  return plain;
}

/** The first words that are not options or values of options: the command, and what it is about. */
export function positionals(argv: readonly string[], known: KnownOptions): readonly string[] {
  const found: string[] = [];
  for (let at = 0; at < argv.length; at++) {
    const word = argv[at]!;
    if (!word.startsWith('-')) found.push(word);
    else if (!word.includes('=') && takesNext(known.get(optionOf(word))?.isFlag ?? false, argv[at + 1])) at++;
  }
  return found;
}

const optionOf = (word: string): string =>
  word === '-h' ? 'help' : optionName(word.replace(/^--/, '').replace(/=[\s\S]*$/, ''));

function takesNext(isFlag: boolean, next: string | undefined): boolean {
  if (next === undefined || next.startsWith('--')) return false;
  return !isFlag || FLAG_WORDS.includes(next.toLowerCase());
}

function readOption(word: string, known: KnownOptions): { readonly name: string; readonly value?: string } {
  const name = optionOf(word);
  const value = /=([\s\S]*)$/.exec(word)?.[1];
  if (known.has(name) && (word.startsWith('--') || word === '-h'))
    return value === undefined ? { name } : { name, value };
  const positive = name.replace(/^no-/, '');
  if (value === undefined && word.startsWith('--no-') && known.get(positive)?.isFlag)
    return { name: positive, value: 'false' };
  const names = [...known.keys()].map((one) => `--${one}`);
  throw new InputError('option-unknown', `there is no option ${word}${didYouMean(`--${name}`, names)}`);
}

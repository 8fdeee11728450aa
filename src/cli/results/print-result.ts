import { basename, dirname, relative, sep } from 'node:path';
import type { Design } from '../../assembly/index.js';
import { type Finding, type Level, remedyWords } from '../../checks/index.js';
import { fixed, type Say, trimmed } from '../../length/index.js';
import type { MadeFile } from '../around/index.js';
import { table, wrap } from '../around/index.js';

const LEVELS: readonly Level[] = ['error', 'warning', 'note'];

/** Figures the model worked out, and its remarks. */
export function printDesign(design: Design, say: Say, width: number): string {
  const figures = design.derived.map(({ name, value, unit, help }) => [
    name,
    unit === 'mm' ? say.length(value) : unit === 'deg' ? say.angle(value) : trimmed(value, 3),
    help,
  ]);
  const notes = design.notes.flatMap((note) =>
    wrap(note, width - 2).map((line, at) => `${at === 0 ? '- ' : '  '}${line}\n`),
  );
  return [
    figures.length > 0 ? `\nWorked out\n${table(figures, width)}` : '',
    notes.length > 0 ? '\n' : '',
    ...notes,
  ].join('');
}

/** Findings, errors first, and how many there are of each level. */
export function printFindings(findings: readonly Finding[], width: number): string {
  const rows = LEVELS.flatMap((level) => alike(findings.filter((finding) => finding.level === level))).map(
    ([first, ...others]) => [
      first.level,
      first.code,
      `${first.message}: ${remedyWords(first)}${more(others)}`,
    ],
  );
  const counts = LEVELS.map((level) => {
    const count = findings.filter((finding) => finding.level === level).length;
    return `${count} ${level}${count === 1 ? '' : 's'}`;
  });
  return `\nFindings: ${counts.join(', ')}\n${table(rows, width)}`;
}

/** Findings of one code with one remedy and one cure, told together; each stands by itself in the summary. */
function alike(findings: readonly Finding[]): readonly [Finding, ...Finding[]][] {
  const groups = new Map<string, [Finding, ...Finding[]]>();
  for (const finding of findings) {
    const key = `${finding.code}\n${finding.remedy}\n${finding.cure}`;
    const group = groups.get(key);
    if (group) group.push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups.values()];
}

/** A joint tells its boards; else a few ids, or the first and how many more. The summary has them all. */
const some = (ids: readonly string[]): string => {
  const [first] = ids;
  if (first?.includes('/')) return first;
  return ids.length <= 3 ? ids.join(' and ') : `${first} and ${ids.length - 1} others`;
};

const more = (others: readonly Finding[]): string =>
  others.length === 0
    ? ''
    : ` (and ${others.length} more like it: ${others.map(({ subjects }) => some(subjects)).join(', ')})`;

/** The file to open first, best first: which it is depends on the kinds of file that were asked for. */
const FIRST: readonly (readonly [name: string, what: string])[] = [
  ['plan.a4.pdf', 'the plan, to build from (plan.letter.pdf for Letter paper)'],
  ['preview.html', 'the piece to turn, in any browser'],
];

/** How many files there are and which to open first; each with its size when asked. Paths from the folder the person stands in. */
export function printFiles(files: readonly MadeFile[], cwd: string, width: number, all: boolean): string {
  const total = files.reduce((sum, { bytes }) => sum + bytes, 0);
  const first = FIRST.flatMap(([name, what]) =>
    files.filter(({ path }) => basename(path) === name).map(({ path }) => [relative(cwd, path), what]),
  );
  const count = `\nFiles: ${files.length}, ${size(total)}`;
  return [
    all
      ? `${count}\n${table(
          files.map(({ path, bytes }) => [relative(cwd, path), size(bytes)]),
          width,
        )}`
      : '',
    all || files.length === 0
      ? ''
      : `${count}, in ${relative(cwd, commonFolder(files))} (--list-files lists them)\n`,
    first.length === 0 ? '' : `\nOpen first\n${table(first, width)}`,
  ].join('');
}

/** The folder all files lie in. */
function commonFolder(files: readonly MadeFile[]): string {
  const [first = [], ...others] = files.map(({ path }) => dirname(path).split(sep));
  const end = first.findIndex((part, i) => others.some((other) => other[i] !== part));
  return first.slice(0, end < 0 ? undefined : end).join(sep);
}

/** What is not as it was on the last run into the same folder: so that no two sheets of different runs are mixed. */
export const printChanges = (changes: readonly string[], width: number): string =>
  changes.length === 0
    ? ''
    : `\nChanged since the last run\n${changes
        .flatMap((change) => wrap(change, width - 2).map((line, at) => `${at === 0 ? '- ' : '  '}${line}\n`))
        .join('')}`;

/** What was not written, and how to have it all the same. */
export const printHeldBack = (heldBack: readonly string[], width: number): string =>
  heldBack.length === 0
    ? ''
    : `\n${wrap(
        `Not written, because checks failed: ${heldBack.join(', ')}. Use --force to write them, each marked FAILED CHECKS.`,
        width,
      ).join('\n')}\n`;

const size = (bytes: number): string =>
  bytes < 1000
    ? `${bytes} B`
    : bytes < 1_000_000
      ? `${fixed(bytes / 1000, 1)} kB`
      : `${fixed(bytes / 1_000_000, 1)} MB`;

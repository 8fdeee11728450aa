import { expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { speaker } from '../../src/length/index.js';
import { didYouMeanWord, Problem, Problems, partOf, problemWith } from '../../src/notation/index.js';

const FILE = 'design: shelf\nboards:\n  rail: { front: 6 short of tabel top }\n  post: { thick: 500 }\n';

const toldOf = (problems: Problems, units: 'mm' | 'in' = 'mm'): string => {
  try {
    problems.end();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return (error as InputError).explain(speaker(units));
  }
  return '';
};

test('every problem of a file is told with its line, marks below the words, in the order of the file', () => {
  const problems = new Problems('shelf.yaml', FILE);
  const phrase = { value: '6 short of tabel top', at: { line: 3, column: 18 } };
  const word = partOf(phrase, 10);
  expect(
    problems.during(() => {
      throw new Problem({ line: 4, column: 18 }, 3, (say) => `${say.length(500)} is too thick`, 'give less');
    }),
  ).toBeUndefined();
  problems.add(
    problemWith(word, "there is no board 'tabel top'", didYouMeanWord('tabel top', ['table top'])),
  );
  expect(problems.during(() => 7)).toBe(7);
  expect(toldOf(problems, 'in').split('\n')).toEqual([
    "shelf.yaml, line 3, column 29: there is no board 'tabel top': did you mean 'table top'?",
    '    rail: { front: 6 short of tabel top }',
    '                              ^^^^^^^^^',
    'shelf.yaml, line 4, column 18: 19-11/16" is too thick: give less',
    '    post: { thick: 500 }',
    '                   ^^^',
  ]);
});

test('of a long line the part round the words is quoted, and marks keep their place after a tab', () => {
  const line = `${'a'.repeat(150)}\twrong${'z'.repeat(150)}`;
  const problems = new Problems('f.yaml', line);
  problems.add(new Problem({ line: 1, column: 152 }, 5, 'no'));
  const [, quoted, marks] = toldOf(problems).split('\n');
  expect(quoted!.length).toBeLessThan(110);
  expect(quoted!.slice(marks!.indexOf('^'), marks!.length)).toBe('wrong');
});

test('twenty problems are told and the rest counted; nothing is thrown when all is well, and a fault is not a problem', () => {
  const problems = new Problems('f.yaml', 'x');
  expect(toldOf(problems)).toBe('');
  for (let line = 1; line <= 25; line++) problems.add(new Problem({ line, column: 1 }, 1, 'no'));
  expect(toldOf(problems)).toMatch(/line 20, column 1: no\nand 5 more: mend these first$/);
  expect(() =>
    problems.during(() => {
      throw new TypeError('fault');
    }),
  ).toThrow(TypeError);
});

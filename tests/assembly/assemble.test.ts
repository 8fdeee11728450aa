import { expect, test } from 'vitest';
import { assemble } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { WORLD } from '../../src/frame/index.js';
import { refusal, shelf, upright } from '../joinery/on-the-bench.js';

const one = shelf({ length: 600 });
const two = upright(one);
const three = { ...upright(one, { at: [300, 40] }), board: { ...two.board, id: 'divider' } };
const spec = { name: 'rack', title: 'Rack', cutter: 6, boards: [one, two, three] };

test('every joint is cut into the boards it names, and lists left out are empty', () => {
  const design = assemble({
    ...spec,
    joints: [
      { a: 'shelf', b: 'upright' },
      { a: 'divider', b: 'shelf' },
    ],
  });
  const mortises = (id: string) => design.boards.find(({ board }) => board.id === id)!.board.mortises;
  expect(mortises('shelf').map(({ joint }) => joint)).toEqual(['shelf/upright', 'divider/shelf']);
  expect(mortises('upright')).toHaveLength(1);
  expect(mortises('divider')).toHaveLength(1);
  expect(design.joints.map(({ id, a, b }) => [id, a, b])).toEqual([
    ['shelf/upright', 'shelf', 'upright'],
    ['divider/shelf', 'divider', 'shelf'],
  ]);
  expect(design.boards.map(({ board }) => board.id)).toEqual(['shelf', 'upright', 'divider']);
  expect([design.hardware, design.mechanism, design.notes]).toEqual([[], undefined, []]);
  expect(Object.keys(design.boards[0]!).toSorted()).toEqual(['board', 'place']);
});

test('a board named in a joint but not in the design is refused with the names there are', () => {
  const error = refusal(() => assemble({ ...spec, joints: [{ a: 'shelf', b: 'uprigth' }] }));
  expect(error.code).toBe('no-board');
  expect(error.message).toBe(
    'joint shelf/uprigth: there is no board uprigth; boards are shelf, upright, divider: name two of them',
  );
});

test('a board joined to itself, two boards of one name and two joints of one name are refused', () => {
  expect(refusal(() => assemble({ ...spec, joints: [{ a: 'shelf', b: 'shelf' }] })).message).toContain(
    'shelf cannot be joined to itself',
  );
  const twin = { board: makeBoard({ id: 'shelf', blank: one.board.blank }), place: WORLD };
  expect(refusal(() => assemble({ ...spec, boards: [one, twin] })).message).toBe(
    'two boards are called shelf: give each its own id',
  );
  const joint = { a: 'shelf', b: 'upright', options: { id: 'corner' } };
  const error = refusal(() => assemble({ ...spec, joints: [joint, { ...joint, b: 'divider' }] }));
  expect([error.code, error.message]).toEqual([
    'joint-twice',
    'two joints are called corner: give one of them an id of its own',
  ]);
});

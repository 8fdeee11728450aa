import { expect, test } from 'vitest';
import jigModel from '../../models/jig.js';
import { assemble, type Design, type DesignSpec, type Hardware } from '../../src/assembly/index.js';
import { looseBoards } from '../../src/checks/boards/loose-boards.js';
import { frame } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { circle } from '../../src/profile/index.js';
import { block } from '../shop/blocks.js';
import { onSolids } from './sample-design.js';

const found = (design: Design) =>
  onSolids(design, (solids) => looseBoards({ solids, tenons: [], say: speaker('mm') }));

/** A post on a rail, and a shelf that stands on the rail beside it and touches both. */
const design = (more: Partial<DesignSpec> = {}): Design =>
  assemble({
    name: 'shelf',
    title: 'Shelf',
    cutter: 8,
    boards: [
      block('rail', [0, 0, 0], [400, 60, 60], 0),
      block('post', [0, 0, 60], [60, 60, 300], 2),
      block('shelf', [60, 0, 60], [300, 60, 120], 0),
    ],
    joints: [{ a: 'post', b: 'rail' }],
    ...more,
  });

test('a board that only stands beside the others is found, and is not when it is joined as the remedy says', async () => {
  const [loose, ...more] = await found(design());
  expect(more).toEqual([]);
  expect(loose).toMatchObject({ code: 'board-joined-to-nothing', level: 'warning', subjects: ['shelf'] });
  expect(loose!.remedy).toContain('join it to a board it touches (rail, post)');
  const joints = [
    { a: 'post', b: 'rail' },
    { a: 'shelf', b: 'post' },
  ];
  expect(await found(design({ joints }))).toEqual([]);
});

test('a bolt whose head bears on the board holds it; one that hangs a millimetre off does not', async () => {
  const bolt = (z: number): Hardware => ({
    id: 'bolt',
    kind: 'bolt',
    name: 'bolt',
    bought: true,
    place: frame([200, 20, z], [0, 0, 1], [1, 0, 0]),
    stages: [{ outline: circle({ diameter: 13 }), from: 0, to: 5 }],
  });
  expect(await found(design({ hardware: [bolt(120)] }))).toEqual([]);
  expect((await found(design({ hardware: [bolt(121)] }))).map(({ subjects }) => subjects)).toEqual([
    ['shelf'],
  ]);
});

test('the plate and rails of a jig are held by their bolts', async () => {
  expect(await found(jigModel.build(readParameters(jigModel, {}, 'mm')))).toEqual([]);
});

test('a board that is the whole design is joined to nothing and wants nothing', async () => {
  const board = block('board', [0, 0, 0], [400, 90, 28], 0);
  expect(await found(design({ boards: [board], joints: [] }))).toEqual([]);
});

import { describe, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stoolModel from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import type { Board } from '../../src/board/index.js';
import { pointOut } from '../../src/frame/index.js';
import { readParameters } from '../../src/model/index.js';
import { builtInShop, toolsOf } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';
import { plainJig } from '../shop/designs.js';
import { builtPiece, pieceModel, shippedPiece } from './built-piece.js';

const FRAME_NAMES = {
  'front-long-rail': 'front-rail',
  'back-long-rail': 'back-rail',
  'left-short-rail': 'left-rail',
  'right-short-rail': 'right-rail',
};

/** All figures of a board, each to a millionth of a millimetre; names of bevels and joints aside. */
function figures({ blank, outline, bevels, openings, mortises }: Board) {
  const rounded = (value: number) => Math.round(value * 1e6) / 1e6 + 0;
  const line = (...values: readonly number[]) => values.map(rounded).join(' ');
  return {
    blank: line(blank.length, blank.width, blank.thickness),
    outline: outline.map(({ x, y, bulge }) => line(x, y, bulge)).toSorted(),
    // a plane by its normal and how far it is from the origin
    bevels: bevels
      .map(({ point, normal }) =>
        line(...normal, point[0] * normal[0] + point[1] * normal[1] + point[2] * normal[2]),
      )
      .toSorted(),
    openings: openings.flatMap((one) => one.outline.map(({ x, y, bulge }) => line(x, y, bulge))).toSorted(),
    mortises: mortises
      .map(({ at, length, width, depth }) => line(...at.origin, ...at.z, length, width, depth))
      .toSorted(),
  };
}

/** A board's figures, by a point of it that does not depend on where the whole stands. */
const byName = (design: Design, names: Readonly<Record<string, string>> = {}) =>
  Object.fromEntries(design.boards.map(({ board }) => [names[board.id] ?? board.id, figures(board)]));

/** How far each board's middle is from each other's, by their names: two designs stand alike when all are equal. */
const spread = (design: Design) => {
  const middles = design.boards
    .map(({ board: { id, blank }, place }) => ({
      id: FRAME_NAMES[id as keyof typeof FRAME_NAMES] ?? id,
      at: pointOut(place, [blank.length / 2, blank.width / 2, blank.thickness / 2]),
    }))
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return middles.flatMap(({ id, at: p }, i) =>
    middles
      .slice(i + 1)
      .map(
        ({ id: other, at: q }) =>
          `${id} ${other} ${Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]).toFixed(6)}`,
      ),
  );
};

const modelled = (model: typeof frameModel | typeof stoolModel, values: Readonly<Record<string, number>>) =>
  (model as typeof frameModel).build(
    readParameters(model as typeof frameModel, values, 'mm'),
    toolsOf(builtInShop('mm')),
  );

describe.each([{}, { length: 812.5, width: 455, rail: 61, thick: 29 }])(
  'a light told in a file, %j',
  (values) => {
    const told = builtPiece(shippedPiece('cold-frame-light'), values);
    const { rail, thick, ...sizes } = values as Record<string, number>;
    const model = modelled(frameModel, {
      ...sizes,
      ...(rail === undefined ? {} : { railWidth: rail }),
      ...(thick === undefined ? {} : { thickness: thick }),
    });

    test('has the boards of the frame modelled in code, to a millionth of a millimetre', () => {
      expect(byName(told, FRAME_NAMES)).toEqual(byName(model));
      expect(spread(told)).toEqual(spread(model));
    });
  },
);

describe.each([
  {},
  {
    height: 262.5,
    treadLength: 511,
    treadDepth: 281,
    tread: 31,
    side: 27.5,
    overhang: 29,
    setBack: 6,
    rake: 8.5,
    taper: 4.5,
  },
])('a step stool told in a file, %j', (values) => {
  const told = builtPiece(shippedPiece('step-stool'), values);
  const { tread = 28, side = 28, setBack = 8, ...sizes } = values as Record<string, number>;
  const model = modelled(stoolModel, {
    ...sizes,
    treadThickness: tread,
    sideThickness: side,
    setback: setBack,
    cutter: 8,
    archHeight: 45,
    archRadius: 25,
    footLength: 55,
    stretcherHeight: 85,
    stretcherWidth: 70,
    stretcherThickness: 24,
  });

  test('has the boards of the stool modelled in code, to a millionth of a millimetre', () => {
    expect(byName(told)).toEqual(byName(model));
  });
});

test('a step stool told in a file is judged as the one modelled in code', async () => {
  const question = { shop: builtInShop('mm'), jig: plainJig(), units: 'mm' } as const;
  const told = await verdictOf({ ...question, model: pieceModel(shippedPiece('step-stool')) }, {});
  const model = await verdictOf(
    { ...question, model: stoolModel as never },
    readParameters(stoolModel, { cutter: 8 }, 'mm'),
  );
  const plain = ({ findings }: typeof told) =>
    findings.map(({ code, level, measured }) => [code, level, Math.round(measured * 1e4)]);
  expect(plain(told)).toEqual(plain(model));
});

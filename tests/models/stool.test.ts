import { describe, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { faces } from '../../src/board/index.js';
import { InputError } from '../../src/errors.js';
import { angleDeg, frameOut, pointOut, subtract, unit, type Vec3 } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { orderOfWork } from '../../src/shop/index.js';
import { box, volume } from '../../src/solid/index.js';
import { findings, onSolids } from '../checks/sample-design.js';
import { carded } from '../shop/made.js';

type Raw = Readonly<Record<string, string | number | boolean>>;
const built = (raw: Raw = {}): Design => stool.build(readParameters(stool, raw, 'mm'));
const boardOf = (design: Design, id: string) => design.boards.find(({ board }) => board.id === id)!;
const figure = (design: Design, name: string) => design.derived.find((each) => each.name === name)!.value;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const refused = (raw: Raw): InputError => {
  try {
    built(raw);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('it was not refused');
};

describe('the default stool', () => {
  const design = built();
  // 230 high with a tread of 28: 202 up to its underside, raked by 10°
  const under = 230 - 28;

  test('has the figures worked out by hand', () => {
    const expected = {
      'width at the floor': 2 * (420 / 2 - 25 + under * Math.tan(rad(10))),
      'side length': under / Math.cos(rad(10)) + 28 * Math.tan(rad(10)),
      'bevel run': 28 * Math.tan(rad(10)),
    };
    for (const [name, value] of Object.entries(expected)) expect(figure(design, name)).toBeCloseTo(value, 9);
  });

  test('has front edges as long as the height over the cosine of rake and splay together', () => {
    // tan² R = tan² a + tan² b; the taper of 5° lies in the raked plane, so seen from the side it is tan 5° / cos 10°
    const [a, b] = [Math.tan(rad(5)) / Math.cos(rad(10)), Math.tan(rad(10))];
    const resultant = Math.atan(Math.hypot(a, b));
    const { board, place } = boardOf(design, 'right-side');
    // the outer face's front edge: from the foot's long point up to where the top's bevel ends
    const x = figure(design, 'side length') - figure(design, 'bevel run');
    const foot = pointOut(place, [0, 0, 0]);
    const top = pointOut(place, [x, x * Math.tan(rad(5)), 0]);
    const edge = subtract(top, foot);
    expect(foot[2]).toBeCloseTo(0, 9);
    expect(edge[2]).toBeCloseTo(under, 9);
    expect(Math.hypot(...edge)).toBeCloseTo(under / Math.cos(resultant), 9);
    expect(angleDeg(edge, [0, 0, 1])).toBeCloseTo((resultant * 180) / Math.PI, 9);
    expect(board.outline.length).toBeGreaterThan(4);
  });

  test('has no errors, and its joints are two treads’ ends and two stretcher ends', async () => {
    expect((await findings(design)).filter(({ level }) => level === 'error')).toEqual([]);
    expect(design.joints.map(({ id }) => id).toSorted()).toEqual([
      'stretcher/left-side',
      'stretcher/right-side',
      'tread/left-side',
      'tread/right-side',
    ]);
  });
});

test.each<Raw>([
  {},
  { treads: 2 },
  { rake: 0 },
  { rake: 20, taper: 8 },
  { treads: 2, rake: 0, archHeight: 0 },
])('a stool of %o stands on the floor, is as high as asked and as wide as it says', async (raw) => {
  const design = built(raw);
  const height = raw.treads === 2 ? 420 : 230;
  await onSolids(design, (solids) => {
    const boxes = [...solids.boards.values()].map(({ body }) => box(body));
    expect(Math.min(...boxes.map(({ min }) => min[2]))).toBeCloseTo(0, 6);
    expect(Math.max(...boxes.map(({ max }) => max[2]))).toBeCloseTo(height, 6);
    const sides = ['left-side', 'right-side'].map((id) => box(solids.boards.get(id)!.body));
    expect(sides[1]!.max[0] - sides[0]!.min[0]).toBeCloseTo(figure(design, 'width at the floor'), 6);
    // the middle plane is between them
    expect(sides[1]!.max[0]).toBeCloseTo(-sides[0]!.min[0], 6);
  });
  for (const hand of ['left-side', 'right-side']) {
    const { board, place } = boardOf(design, hand);
    const down: Vec3 = [0, 0, -1];
    const feet = faces(board).filter(({ frame }) => {
      const standing = frameOut(place, frame);
      return angleDeg(standing.z, down) < 1e-6 && Math.abs(standing.origin[2]) < 1e-6;
    });
    expect(feet.map(({ id }) => id)).toEqual([raw.rake === 0 ? 'reference-end' : 'foot']);
  }
});

test('the sides are mirror images: what one has from the front edge the other has from the back edge', () => {
  const [left, right] = ['left-side', 'right-side'].map((id) => boardOf(built({ treads: 2 }), id));
  const width = left!.board.blank.width;
  const points = (board: typeof left, turn: boolean) =>
    board!.board.outline
      .map(({ x, y }) => [x, turn ? width - y : y].map((n) => n.toFixed(6)).join(' '))
      .toSorted();
  expect(points(left, true)).toEqual(points(right, false));
  expect(unit(left!.place.z)[0]).toBeCloseTo(-unit(right!.place.z)[0], 12);
});

describe('a stool with two treads', () => {
  const uncut = (raw: Raw) => {
    const { design, cards } = carded(built(raw));
    const told = cards.flatMap(({ cuts }) => cuts.map(({ board, mortise }) => `${board} ${mortise}`));
    return design.boards
      .flatMap(({ board }) => board.mortises.map(({ id }) => `${board.id} ${id}`))
      .filter((one) => !told.includes(one));
  };

  test('has every mortise cut by a card that works, with the shop and the jig as they come', async () => {
    expect(uncut({ treads: 2 })).toEqual([]);
    const found = await findings(built({ treads: 2 }));
    expect(found.filter(({ level }) => level !== 'note')).toEqual([]);
    // sawn from one board, the riser stands in the router's way
    expect(uncut({ treads: 2, steppedSide: 'one-board' })).toEqual([
      'left-side lower-tread/left-side/2',
      'right-side lower-tread/right-side/2',
    ]);
  });

  test('has its seams at the riser, and the two boards fill the side sawn from one', async () => {
    const [two, one] = (['two-boards', 'one-board'] as const).map((steppedSide) =>
      built({ treads: 2, steppedSide, rake: 8, notchRadius: 3 }),
    );
    await onSolids(two!, (solids) => {
      const volumes = ['right-side', 'right-step'].map((id) => volume(solids.boards.get(id)!.stock));
      // what the round corner of the sawn step adds stands above its seat: r²(1 − π/4) through the thickness
      const corner = 9 * (1 - Math.PI / 4) * 28;
      return onSolids(one!, (sawn) => {
        const whole = volume(sawn.boards.get('right-side')!.stock);
        // the sawn step's tread and seat end three more millimetres before the riser, so its seat strip is short by as much
        const strip = 3 * sawn.design.boards[0]!.board.blank.thickness;
        expect(Math.abs(volumes[0]! + volumes[1]! - whole)).toBeLessThan(corner + strip * 190);
      });
    });
    const { board, place } = boardOf(two!, 'right-side');
    const step = boardOf(two!, 'right-step');
    expect(place.origin[1]).toBeCloseTo(pointOut(step.place, [0, step.board.blank.width, 0])[1], 9);
    expect(
      board.mortises.some(
        ({ joint, face }) => joint === 'right-step/right-side' && face === 'reference-edge',
      ),
    ).toBe(true);
  });

  test('is glued up step to side as it is told, and its order of work cuts before the glue', () => {
    const design = built({ treads: 2 });
    const { cards, holdings } = carded(design);
    const { steps, notOrdered } = orderOfWork(design, holdings, cards);
    expect(notOrdered).toEqual([]);
    const seams = steps.filter(({ cuts }) => cuts.some((id) => id.startsWith('left-step/left-side')));
    expect(seams.map(({ board }) => board).toSorted()).toEqual(['left-side', 'left-step']);
  });
});

test('a stretcher so high that its mortises would meet those of the tread makes way, and it is told', async () => {
  const design = built({ height: 230, stretcherHeight: 120, stretcherWidth: 80, rake: 0, treadTenons: 1 });
  const found = await findings(design);
  expect(found.filter(({ level }) => level === 'error')).toEqual([]);
  expect(found.map(({ code }) => code)).toContain('made-way');
});

test.each<[Raw, string, string]>([
  [
    { treadLength: 250, overhang: 100 },
    'leaves 0.0 mm between the sides at the top; it must leave at least 80.0 mm: lengthen the tread',
    'leaves 0" between the sides at the top; it must leave at least 3-5/32"',
  ],
  [
    { height: 230, stretcherHeight: 180, stretcherWidth: 70 },
    'put the top of the stretcher 250.0 mm above the floor; the underside of the tread is at 202.0 mm: lower the stretcher',
    'put the top of the stretcher 9-27/32" above the floor; the underside of the tread is at 7-15/16"',
  ],
  [
    { footLength: 120, treadDepth: 240, archRadius: 25, setback: 10, taper: 3 },
    'leaves 2.0 mm between the feet; the arch needs 50.0 mm for its two corners: shorten the feet',
    'leaves 3/32" between the feet; the arch needs 1-31/32"',
  ],
  [
    { archRadius: 60, archHeight: 45 },
    'arch-radius 60 mm is more than arch-height 45 mm: make the radius smaller',
    'arch-radius 2.3622" is more than arch-height 1.7717"',
  ],
  [
    { archHeight: 4, archRadius: 2 },
    "arch-height 4.0 mm is no more than the 4.9 mm that the foot's bevel takes: raise it",
    'arch-height 5/32" is no more than the 3/16"',
  ],
  [
    { treads: 2, height: 420, lowerHeight: 380 },
    'lower-height 380 mm leaves 12.0 mm between the treads and 352.0 mm below the lower one; both must be at least 60 mm',
    'leaves 15/32" between the treads and 13-27/32" below the lower one; both must be at least 2.3622"',
  ],
])('a stool of %o is refused in mm and in inches', (raw, mm, inches) => {
  const error = refused(raw);
  expect(error.code).toBe('sizes-disagree');
  expect(error.message).toContain(mm);
  expect(error.explain(speaker('in'))).toContain(inches);
});

test.each([5e-6, 2e-4, 8e-4, 0.0012])(
  'a rake of %f°, less than any saw can be set to, is built like an upright stool',
  (rake) => {
    for (const treads of [1, 2]) {
      const raw = { treads, taper: 1.6, ...(treads === 2 ? { height: 520 } : {}) };
      const design = stool.build(readParameters(stool, { ...raw, rake }, 'mm'));
      const upright = stool.build(readParameters(stool, { ...raw, rake: 0 }, 'mm'));
      for (const [i, { board }] of design.boards.entries()) {
        expect(board.blank.length).toBeCloseTo(upright.boards[i]!.board.blank.length, 1);
      }
    }
  },
);

test('the tread of a higher stool is the same board to the last digit', () => {
  const treads = [230, 230.05, 231, 237.5, 245, 260.3].map((height) =>
    JSON.stringify(boardOf(stool.build(readParameters(stool, { height }, 'mm')), 'tread').board),
  );
  expect(new Set(treads).size).toBe(1);
});

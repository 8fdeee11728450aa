import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Board, makeBoard } from '../../src/board/index.js';
import { SolidError } from '../../src/errors.js';
import { frame } from '../../src/frame/index.js';
import { join } from '../../src/joinery/index.js';
import { circle, obround, polygon, regionArea, regionOf } from '../../src/profile/index.js';
import {
  type BoardSolid,
  boardBody,
  box,
  expectedVolume,
  gate,
  genus,
  type Kernel,
  prism,
  section,
  solidsOf,
  startKernel,
  status,
  stockBody,
  tenonBody,
  volume,
} from '../../src/solid/index.js';
import { SAGITTA } from '../../src/tolerances.js';
import { sample } from '../checks/sample-design.js';
import { nth, shelf, upright } from '../joinery/on-the-bench.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const blank = { length: 200, width: 100, thickness: 40 };
const face = frame([100, 50, 40], [0, 0, 1], [1, 0, 0]);
const board = (more: Partial<Board> = {}): Board => ({ ...makeBoard({ id: 'board', blank }), ...more });
const mortise = (depth: number, { width = 10, length = 40, at = face } = {}) => ({
  id: 'j/1',
  face: 'opposite-face',
  at,
  width,
  length,
  depth,
  joint: 'j',
  tenon: 'j/1',
});

/** What the cutters took out of a board. */
function taken(of: Board): number {
  const stock = stockBody(kernel, of);
  const own = boardBody(kernel, of, stock);
  const size = volume(stock) - volume(own);
  stock.delete();
  own.delete();
  return size;
}
function genusOf(of: Board): number {
  const stock = stockBody(kernel, of);
  const own = boardBody(kernel, of, stock);
  expect(status(own)).toBe('NoError');
  const handles = genus(own);
  stock.delete();
  own.delete();
  return handles;
}

/** Facets lie inside the arc: what is cut falls short of the closed form by at most the sagitta along the border. */
function expectFaceted(found: number, exact: number, border: number): void {
  expect(found).toBeLessThanOrEqual(exact + 1e-6);
  expect(found).toBeGreaterThanOrEqual(exact - border * SAGITTA);
}

describe('what a cutter takes', () => {
  test.each([
    // width, length, depth, obround area × depth: π d²/4 + d (L − d); the last in inches, 1/2 × 1 3/4 × 1 1/8: 0.924018 in³
    [10, 40, 30, 11_356.19449],
    [8, 30, 12, (Math.PI * 16 + 8 * 22) * 12],
    [12.7, 44.45, 28.575, 0.924018 * 25.4 ** 3],
  ])(
    'in a blind mortise %f wide, %f long and %f deep is the obround’s area times the depth',
    (width, length, depth, exact) => {
      const border = (Math.PI * width + 2 * (length - width)) * depth;
      const found = taken(board({ mortises: [mortise(depth, { width, length })] }));
      expectFaceted(found, exact + 0.01, border);
    },
  );

  test('is the same in an edge, in an end and in a face', () => {
    const places = [
      face,
      frame([100, 0, 20], [0, -1, 0], [1, 0, 0]),
      frame([200, 50, 20], [1, 0, 0], [0, 1, 0]),
    ];
    const sizes = places.map((at) => taken(board({ mortises: [mortise(25, { at })] })));
    for (const size of sizes) expect(size).toBeCloseTo(sizes[0]!, 6);
  });

  test('in holes: a cylinder, a counterbore and a cone', () => {
    const hole = { id: 'h', face: 'opposite-face', at: face, diameter: 8, depth: 'through' as const };
    const shank = Math.PI * 16 * 40;
    expectFaceted(taken(board({ holes: [hole] })), shank, Math.PI * 8 * 40);
    const counterbore = { diameter: 18, depth: 7 };
    expectFaceted(taken(board({ holes: [{ ...hole, counterbore }] })), shank + Math.PI * (81 - 16) * 7, 2000);
    // 90°: from 16 down to 8 in a height of 4; frustum π h (R² + R r + r²) / 3
    const countersink = { diameter: 16, angleDeg: 90 };
    const cone = (Math.PI * 4 * (64 + 32 + 16)) / 3 - Math.PI * 16 * 4;
    expectFaceted(taken(board({ holes: [{ ...hole, countersink }] })), shank + cone, 2000);
  });
});

describe('handles of a board', () => {
  const hole = { id: 'h', face: 'opposite-face', at: face, diameter: 8, depth: 'through' as const };
  test.each<[string, Partial<Board>, number]>([
    ['a plain board has none', {}, 0],
    ['a blind mortise adds none', { mortises: [mortise(30)] }, 0],
    ['a mortise right through adds one', { mortises: [mortise(41)] }, 1],
    ['a through hole adds one', { holes: [hole] }, 1],
    ['a blind hole adds none', { holes: [{ ...hole, depth: 20 }] }, 0],
    [
      'an opening and a through slot add one each',
      {
        openings: [{ id: 'o', outline: circle({ diameter: 30, centre: [40, 50] }) }],
        slots: [{ id: 's', face: 'opposite-face', at: face, width: 8, length: 60, depth: 'through' }],
      },
      2,
    ],
    [
      'a slot open at its end is a notch',
      {
        slots: [
          { id: 's', face: 'opposite-face', at: face, width: 8, length: 60, depth: 'through', openAt: 'end' },
        ],
      },
      0,
    ],
  ])('%s', (_, more, handles) => {
    expect(genusOf(board(more))).toBe(handles);
  });
});

describe('a tenon', () => {
  test('holds its obround section times its length', () => {
    const one = shelf({ thickness: 40 });
    const { tenon } = nth(join(one, upright(one, { thickness: 40 })));
    const { thickness: t, width: w, length } = tenon;
    const body = tenonBody(kernel, tenon);
    expectFaceted(
      volume(body),
      ((Math.PI * t * t) / 4 + t * (w - t)) * length,
      (Math.PI * t + 2 * (w - t)) * length,
    );
    const { min, max } = box(body);
    expect(max[2] - min[2]).toBeCloseTo(length, 6);
    expect(max[0] - min[0]).toBeCloseTo(w, 6);
    expect(max[1] - min[1]).toBeCloseTo(t, 6);
  });

  test('leaves in its mortise the glue gap of the offset outline: P c − π c²', () => {
    // 10 × 40 mortise, tenon 0.1 smaller all round: 9.110177 mm²
    const area = (length: number, width: number) => regionArea(regionOf(obround({ length, width })));
    const cut = board({ mortises: [mortise(30)] });
    const stock = stockBody(kernel, cut);
    const own = boardBody(kernel, cut, stock);
    const plane = frame([100, 50, 25], [0, 0, 1], [1, 0, 0]);
    const opening = 200 * 100 - regionArea(section(own, plane));
    expect(opening - area(39.8, 9.8)).toBeCloseTo(9.110177, 1);
    stock.delete();
    own.delete();
  });
});

describe('the gate', () => {
  const sound = () => solidsOf(kernel, sample());
  const planted = (more: Partial<BoardSolid>) => {
    const solids = sound();
    const upright = solids.boards.get('upright')!;
    return {
      ...solids,
      boards: new Map([...solids.boards, ['upright', { ...upright, ...more } as BoardSolid]]),
    };
  };
  const refused = (solids: ReturnType<typeof sound>): SolidError => {
    try {
      gate(solids);
    } catch (error) {
      if (error instanceof SolidError) return error;
      throw error;
    }
    throw new Error('it passed');
  };

  test('lets sound bodies through', () => {
    expect(() => gate(sound())).not.toThrow();
  });

  test('refuses a stock that is 0.01 mm too long for its outline', () => {
    const stock = kernel.keep(
      prism(
        kernel,
        regionOf(
          polygon([
            { x: 0, y: 0 },
            { x: 300.01, y: 0 },
            { x: 300.01, y: 120 },
            { x: 0, y: 120 },
          ]),
        ),
        0,
        40,
        undefined,
      ),
    );
    const error = refused(planted({ stock }));
    expect([error.code, error.message]).toEqual([
      'body-volume',
      expect.stringContaining('upright: its body holds'),
    ]);
  });

  test('refuses a body of which nothing is left', () => {
    const one = sound().boards.get('upright')!;
    const body = kernel.keep(one.body.subtract(one.body));
    expect(refused(planted({ body })).code).toBe('body-empty');
  });

  test('refuses a body the kernel calls unsound', () => {
    const body = kernel.keep(sound().boards.get('upright')!.body.translate([Number.NaN, 0, 0]));
    expect(refused(planted({ body })).code).toBe('body-unsound');
  });

  test('refuses numbers that are none before they reach the kernel', () => {
    expect(() =>
      prism(
        kernel,
        [
          [
            [0, 0],
            [Number.NaN, 0],
            [1, 1],
          ],
        ],
        0,
        1,
        undefined,
      ),
    ).toThrow(SolidError);
    expect(() => prism(kernel, regionOf(circle({ diameter: 5 })), 1, 1, undefined)).toThrow(SolidError);
    expect(() => prism(kernel, regionOf(circle({ diameter: 5 })), 0, Number.NaN, undefined)).toThrow(
      SolidError,
    );
  });
});

test('the expected volume of a finished board is its stock less every feature, and none is said of an open slot', () => {
  const hole = {
    id: 'h',
    face: 'opposite-face',
    at: frame([30, 20, 40], [0, 0, 1], [1, 0, 0]),
    diameter: 8,
    depth: 'through' as const,
  };
  const cut = board({ mortises: [mortise(30)], holes: [hole] });
  expect(expectedVolume(cut)!.volume).toBeCloseTo(200 * 100 * 40 - 11_356.19449 - Math.PI * 16 * 40, 4);
  const slot = {
    id: 's',
    face: 'opposite-face',
    at: face,
    width: 8,
    length: 60,
    depth: 'through' as const,
    openAt: 'end' as const,
  };
  expect(expectedVolume(board({ slots: [slot] }))).toBeUndefined();
});

test('a prism leaves nothing of its outline in the kernel’s memory', () => {
  const any = kernel.wasm.CrossSection.square(1);
  const prototype = Object.getPrototypeOf(any) as Record<'extrude' | 'delete', () => unknown>;
  any.delete();
  const made: unknown[] = [];
  const left = new Set<unknown>();
  const { extrude, delete: free } = prototype;
  prototype.extrude = function (this: unknown, ...sizes: unknown[]) {
    made.push(this);
    left.add(this);
    return extrude.apply(this, sizes as []);
  };
  prototype.delete = function (this: unknown) {
    left.delete(this);
    return free.apply(this);
  };
  try {
    prism(kernel, regionOf(circle({ diameter: 31.7 }), SAGITTA), 0, 12.3, undefined).delete();
  } finally {
    Object.assign(prototype, { extrude, delete: free });
  }
  expect([made.length, left.size]).toEqual([1, 0]);
});

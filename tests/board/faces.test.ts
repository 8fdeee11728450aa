import { describe, expect, test } from 'vitest';
import { type Bevel, type Board, type FaceId, faceFrame, faces, makeBoard } from '../../src/board/index.js';
import { cross, dot, type Vec3 } from '../../src/frame/index.js';
import { circle, polygon, rectangle, regionArea, regionBounds } from '../../src/profile/index.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const faceOf = (board: Board, id: FaceId) => faces(board).find((face) => face.id === id)!;
const areaOf = (board: Board, id: FaceId): number => regionArea(faceOf(board, id).region);
const names = (board: Board) =>
  faces(board)
    .map(({ id }) => id)
    .toSorted();

const plain = makeBoard({ id: 'plain', blank: { length: 400, width: 120, thickness: 28 } });

/** A side raked by rho: both ends bevelled, parallel to each other, long points on opposite faces. */
function raked(rho: number, { length = 230, width = 220, thickness = 28 } = {}): Board {
  const level: Vec3 = [Math.cos(rho), 0, -Math.sin(rho)];
  return makeBoard({
    id: 'side',
    blank: { length, width, thickness },
    bevels: [
      { id: 'foot', point: [0, 0, 0], normal: [-level[0], 0, -level[2]] },
      { id: 'top', point: [length, 0, thickness], normal: level },
    ],
  });
}

describe('a plain board', () => {
  test('has six faces: two wide ones, two edges and two ends', () => {
    const areas = Object.fromEntries(faces(plain).map((face) => [face.id, regionArea(face.region)]));
    const [l, w, t] = [400, 120, 28];
    const expected = {
      'reference-face': l * w,
      'opposite-face': l * w,
      'reference-edge': l * t,
      'opposite-edge': l * t,
      'reference-end': w * t,
      'opposite-end': w * t,
    };
    expect(Object.keys(areas).toSorted()).toEqual(Object.keys(expected).toSorted());
    for (const [id, area] of Object.entries(expected)) expect(areas[id]).toBeCloseTo(area, 3);
  });

  test('knows wide faces, edges and ends by their grain', () => {
    expect(faceOf(plain, 'reference-face').grain).toBe('face');
    expect(faceOf(plain, 'opposite-edge').grain).toBe('edge');
    expect(faceOf(plain, 'reference-end').grain).toBe('end');
  });

  test('has every face looking out of the wood, in a right-handed frame', () => {
    const middle: Vec3 = [200, 60, 14];
    for (const { id, frame } of faces(plain)) {
      const towards = frame.origin.map((at, i) => at - middle[i]!) as unknown as Vec3;
      expect(dot(frame.z, towards), id).toBeGreaterThan(0);
      expect(dot(cross(frame.x, frame.y), frame.z), id).toBeCloseTo(1, 12);
    }
    expect(faceFrame(plain, 'no-such-face')).toBeUndefined();
    expect(faceFrame(plain, 'reference-edge')!.z[1]).toBe(-1);
  });
});

describe.each([2, 10, 20])('a side raked by %i°', (degrees) => {
  const rho = rad(degrees);
  const [length, width, thickness] = [230, 220, 28];
  const side = raked(rho);
  const run = thickness * Math.tan(rho);

  test('has bevelled ends of width × thickness / cos rake', () => {
    for (const id of ['foot', 'top']) {
      expect(areaOf(side, id)).toBeCloseTo((width * thickness) / Math.cos(rho), 3);
      expect(faceOf(side, id).grain).toBe('end');
    }
    expect(names(side)).not.toContain('reference-end');
  });

  test('has wide faces shortened by the bevel run, thickness × tan rake, at one end each', () => {
    expect(areaOf(side, 'reference-face')).toBeCloseTo((length - run) * width, 3);
    expect(areaOf(side, 'opposite-face')).toBeCloseTo((length - run) * width, 3);
    // the foot's long point is on the reference face, the top's on the opposite face
    const onReference = regionBounds(faceOf(side, 'reference-face').region);
    expect([onReference.minX, onReference.maxX]).toEqual([
      expect.closeTo(0, 6),
      expect.closeTo(length - run, 6),
    ]);
    const onOpposite = regionBounds(faceOf(side, 'opposite-face').region);
    expect([onOpposite.minX, onOpposite.maxX]).toEqual([expect.closeTo(run, 6), expect.closeTo(length, 6)]);
  });

  test('has edges that are parallelograms of (length − bevel run) × thickness', () => {
    expect(areaOf(side, 'reference-edge')).toBeCloseTo((length - run) * thickness, 2);
    expect(areaOf(side, 'opposite-edge')).toBeCloseTo((length - run) * thickness, 2);
  });
});

test('a rake too small to see leaves faces of the size of square ones', () => {
  for (const degrees of [1e-3, 1e-4, 1e-5, 1e-6, 1e-7]) {
    const side = raked(rad(degrees));
    expect(areaOf(side, 'foot'), `${degrees}°`).toBeCloseTo(220 * 28, 0);
    expect(areaOf(side, 'reference-edge'), `${degrees}°`).toBeCloseTo(230 * 28, 0);
  }
});

describe('a splayed box, butted at its corners', () => {
  // Sides leaning s from plumb, joined square: the blade tilts by asin(sin² s) from square and the mitre on the wide face is
  // atan(sin s), the N = 4 row of the compound-angle formulas tan m = sin s · tan(180°/N), sin t = sin² s.
  test.each([
    [10, 9.8511, 1.7279],
    [30, 26.5651, 14.4775],
  ])('leaning %i° it takes a mitre of %f° and a blade tilt of %f°', (degrees, mitre, tilt) => {
    const s = rad(degrees);
    // a side leans about x: its grain is x, its width goes up and out; the next side's inner face leans the same about y
    const outward: Vec3 = [0, -Math.cos(s), -Math.sin(s)];
    const up: Vec3 = [0, -Math.sin(s), Math.cos(s)];
    const nextSide: Vec3 = [Math.cos(s), 0, -Math.sin(s)];
    // written in the board: x along the grain, y up the width, z through the thickness, out of the opposite face
    const inBoard: Vec3 = [nextSide[0], dot(nextSide, up), dot(nextSide, outward)];
    const board = makeBoard({
      id: 'box-side',
      blank: { length: 300, width: 80, thickness: 12 },
      bevels: [{ id: 'butt', point: [200, 40, 6], normal: inBoard }],
    });
    const cut = faceOf(board, 'butt').frame.z;
    expect((Math.asin(Math.abs(cut[2])) * 180) / Math.PI).toBeCloseTo(tilt, 4);
    expect((Math.atan(Math.abs(cut[1] / cut[0])) * 180) / Math.PI).toBeCloseTo(mitre, 4);
    // a plane cut through the whole section: its area is the square section over the cosine of its lean
    expect(areaOf(board, 'butt')).toBeCloseTo((80 * 12) / Math.abs(cut[0]), 3);
  });
});

describe('a stepped board', () => {
  // 300 long; the lower half of the width stops at 160; the step's seat is bevelled, only in its own strip
  const rho = rad(10);
  const run = 24 * Math.tan(rho);
  const level: Vec3 = [Math.cos(rho), 0, -Math.sin(rho)];
  const stepped = (bevels: readonly Bevel[] = []) =>
    makeBoard({
      id: 'stepped',
      blank: { length: 300, width: 200, thickness: 24 },
      outline: polygon([
        { x: 0, y: 0 },
        { x: 160, y: 0 },
        { x: 160, y: 110, radius: 10 },
        { x: 300, y: 110 },
        { x: 300, y: 200 },
        { x: 0, y: 200 },
      ]),
      bevels,
    });
  const strip = rectangle({ x: 141, y: -20, length: 20, width: 120 });
  const bevelled = stepped([{ id: 'step', point: [160, 0, 24], normal: level, within: strip }]);

  test('has a seat and a riser that stop where the rounded corner begins', () => {
    expect(areaOf(stepped(), 'edge-2')).toBeCloseTo(100 * 24, 3);
    // the line of the riser goes on inside the wood, which is no face
    expect(areaOf(stepped(), 'edge-4')).toBeCloseTo(130 * 24, 3);
    expect(regionBounds(faceOf(stepped(), 'edge-4').region).maxX).toBeCloseTo(130, 6);
  });

  test('keeps its bevel within the strip it is cut in', () => {
    expect(areaOf(bevelled, 'step')).toBeCloseTo((100 * 24) / Math.cos(rho), 3);
    // the end above the step is not shortened by it
    expect(areaOf(bevelled, 'opposite-end')).toBeCloseTo(90 * 24, 3);
    expect(areaOf(bevelled, 'reference-face')).toBeCloseTo(
      regionArea(faceOf(stepped(), 'reference-face').region) - 100 * run,
      3,
    );
    expect(areaOf(bevelled, 'opposite-face')).toBeCloseTo(areaOf(stepped(), 'opposite-face'), 3);
  });

  test('loses from its lower edge the triangle of the bevel', () => {
    expect(areaOf(bevelled, 'reference-edge')).toBeCloseTo(160 * 24 - (run * 24) / 2, 3);
  });
});

test('two feet beside an arch are one face, less the arch', () => {
  const arched = makeBoard({
    id: 'arched',
    blank: { length: 200, width: 180, thickness: 24 },
    outline: polygon([
      { x: 0, y: 0 },
      { x: 200, y: 0 },
      { x: 200, y: 180 },
      { x: 0, y: 180 },
      { x: 0, y: 120 },
      { x: 40, y: 120, radius: 20 },
      { x: 40, y: 50, radius: 20 },
      { x: 0, y: 50 },
    ]),
  });
  expect(names(arched).filter((id) => id.endsWith('end'))).toEqual(['opposite-end', 'reference-end']);
  expect(areaOf(arched, 'reference-end')).toBeCloseTo((60 + 50) * 24, 3);
});

test('an opening is no part of a wide face, and its walls are no seats', () => {
  const open = makeBoard({
    id: 'open',
    blank: { length: 400, width: 240, thickness: 28 },
    openings: [{ id: 'hand', outline: circle({ diameter: 40, centre: [200, 120] }) }],
  });
  for (const id of ['reference-face', 'opposite-face']) {
    // facets of the circle lose at most the sagitta along its border
    const lost = areaOf(open, id) - (400 * 240 - Math.PI * 20 ** 2);
    expect(lost).toBeGreaterThanOrEqual(0);
    expect(lost).toBeLessThan(0.005 * Math.PI * 40);
  }
  expect(faces(open)).toHaveLength(6);
});

test('a face that a bevel takes away altogether is gone', () => {
  const ridge = makeBoard({
    id: 'ridge',
    blank: { length: 100, width: 40, thickness: 20 },
    bevels: [
      { id: 'left', point: [0, 20, 20], normal: [0, -Math.SQRT1_2, Math.SQRT1_2] },
      { id: 'right', point: [0, 20, 20], normal: [0, Math.SQRT1_2, Math.SQRT1_2] },
    ],
  });
  // two 45° slopes from the ridge down to both lower corners
  expect(names(ridge)).toEqual(['left', 'opposite-end', 'reference-end', 'reference-face', 'right']);
  expect(areaOf(ridge, 'left')).toBeCloseTo(100 * 20 * Math.SQRT2, 3);
  expect(areaOf(ridge, 'opposite-end')).toBeCloseTo((40 * 20) / 2, 2);
});

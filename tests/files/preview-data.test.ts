import { afterAll, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import type { Finding } from '../../src/checks/index.js';
import { previewData } from '../../src/files/page/preview-data.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { provedGlueUp } from '../../src/shop/index.js';
import { box, measureJoints, meshOf, solidsOf, startKernel } from '../../src/solid/index.js';
import { strengthOn } from '../../src/strength/index.js';
import type { Point } from '../../src/viewer/index.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

const solids = solidsOf(kernel, stool.build(readParameters(stool, {}, 'mm')));
const { glueUp } = provedGlueUp(solids);
const tenons = measureJoints(solids);

const finding = (...subjects: string[]): Finding => ({
  code: 'wall-thin',
  level: 'warning',
  subjects,
  measured: 1,
  limit: 2,
  unit: 'mm',
  message: 'seeded',
  remedy: 'none',
  basis: 'common practice, no source',
});

const joint = solids.design.joints[0]!;
const parts = {
  solids,
  tenons,
  glueUp,
  revision: 'r',
  strength: strengthOn(solids),
  say: speaker('mm'),
};
const data = previewData({
  ...parts,
  findings: [finding(joint.id), finding(joint.tenons[0]!.id), finding(joint.a, joint.b), finding()],
});

const numbers = (text: string): Buffer => Buffer.from(text, 'base64');

test('every piece has the triangles of its solid, corner by corner', () => {
  for (const piece of data.pieces) {
    const solid = (solids.boards.get(piece.id) ?? solids.tenons.get(piece.id))!;
    const { positions, triangles } = meshOf(solid.body);
    const bytes = numbers(piece.positions);
    const read = Array.from({ length: bytes.length / 4 }, (_, i) => bytes.readFloatLE(4 * i));
    const short = numbers(piece.triangles);
    const corners = Array.from({ length: short.length / 2 }, (_, i) => short.readUInt16LE(2 * i));
    expect(piece.wide).toBe(false);
    expect(corners).toHaveLength(triangles.length);
    const at = (of: ArrayLike<number>, corner: number) => [0, 1, 2].map((i) => of[3 * corner + i]!);
    corners.forEach((corner, i) => {
      expect(at(read, corner)).toEqual(at(positions, triangles[i]!));
    });
  }
});

test('edges of a piece join corners it has, and a box has no edge along the diagonals of its faces', () => {
  const stretcher = data.pieces.find(({ id }) => id === 'stretcher')!;
  const ends = numbers(stretcher.edges);
  const corners = numbers(stretcher.positions).length / 12;
  expect(ends.length % 4).toBe(0);
  for (let i = 0; i < ends.length; i += 2) expect(ends.readUInt16LE(i)).toBeLessThan(corners);
  // a closed mesh has half as many edges again as triangles; most of them lie within a face or between facets of a round
  expect(ends.length / 4).toBeLessThan(1.5 * (numbers(stretcher.triangles).length / 6) - 100);
});

test('drawn apart, a board has gone back the way it comes in by', () => {
  for (const step of glueUp.steps) {
    for (const id of step.moving) {
      const alone = glueUp.steps.filter(({ moving }) => moving.includes(id));
      if (alone.length !== 1) continue;
      const { apart } = data.pieces.find((piece) => piece.id === id)!;
      const far = Math.hypot(...apart);
      expect(far).toBeGreaterThan(step.travel);
      step.direction.forEach((part, i) => {
        expect(apart[i]! / far).toBeCloseTo(-part, 9);
      });
    }
  }
});

test('drawn apart, no two pieces are in one another', () => {
  const moved = data.pieces.map(({ id, apart }) =>
    kernel.keep((solids.boards.get(id) ?? solids.tenons.get(id))!.body.translate([...apart])),
  );
  moved.forEach((one, i) => {
    for (const other of moved.slice(i + 1)) {
      expect(kernel.keep(one.intersect(other)).volume()).toBeLessThan(0.01);
    }
  });
});

test('the whole is as wide, deep and high as all pieces together', () => {
  const boxes = [...solids.boards.values(), ...solids.tenons.values()].map(({ body }) => box(body));
  data.box.sides.forEach(({ mm }, i) => {
    const size = Math.max(...boxes.map(({ max }) => max[i]!)) - Math.min(...boxes.map(({ min }) => min[i]!));
    expect(mm).toBeCloseTo(size, 9);
  });
});

test("a board's and a tenon's box holds its solid, with no more air than its outline leaves", () => {
  for (const piece of data.pieces) {
    const { corner, sides } = piece.box!;
    const bytes = numbers(piece.positions);
    const shares = sides.map(({ mm, along }) => {
      const own: number[] = [];
      for (let i = 0; i < bytes.length; i += 12) {
        const p = [0, 4, 8].map((j) => bytes.readFloatLE(i + j));
        own.push(p.reduce((sum, at, j) => sum + (at - corner[j]!) * along[j]!, 0) / mm);
      }
      return { least: Math.min(...own), most: Math.max(...own) };
    });
    for (const { least, most } of shares) {
      expect(least).toBeGreaterThan(-1e-5);
      expect(most).toBeLessThan(1 + 1e-5);
    }
    if (piece.role === 'tenon') {
      for (const { least, most } of shares) expect(most - least).toBeCloseTo(1, 5);
    }
  }
});

test('a finding is looked for at its seat, its tenon, where its boards meet, or at the whole', () => {
  const [atJoint, atTenon, atBoth, atNone] = data.findings as [
    (typeof data.findings)[0],
    (typeof data.findings)[0],
    (typeof data.findings)[0],
    (typeof data.findings)[0],
  ];
  expect(atJoint.at).toEqual(joint.seat.origin);
  expect(atJoint.pieces).toEqual(joint.tenons.map(({ id }) => id));
  const { min, max } = box(solids.tenons.get(joint.tenons[0]!.id)!.body);
  expect(atTenon.at).toEqual(min.map((least, i) => (least + max[i]!) / 2));
  const within = (at: Point, id: string) => {
    const around = box(solids.boards.get(id)!.body);
    return at.every((part, i) => part > around.min[i]! - 1e-6 && part < around.max[i]! + 1e-6);
  };
  expect([within(atBoth.at, joint.a), within(atBoth.at, joint.b)]).toEqual([true, true]);
  expect(atNone.pieces).toEqual([]);
  expect(atNone.round).toBeGreaterThan(200);
});

test('a finding of a set-up flies to the mortise that is cut in it, for aids are not in the picture', () => {
  const { findings } = previewData({
    ...parts,
    findings: [
      { ...finding(joint.b, joint.tenons[0]!.id, 'jig plate', 'support block 1'), code: 'set-up-overlaps' },
      { ...finding(joint.b, joint.tenons[0]!.id), code: 'plate-tips' },
    ],
  });
  const body = solids.boards.get(joint.b)!.body;
  for (const { at, pieces, round } of findings) {
    expect(pieces).toEqual([joint.b, joint.tenons[0]!.id]);
    expect(round).toBeLessThan(120);
    const ball = kernel.keep(kernel.keep(kernel.wasm.Manifold.sphere(1, 16)).translate([...at]));
    // within the board's outside, in the air of the mortise
    const { min, max } = box(body);
    at.forEach((part, i) => {
      expect(part).toBeGreaterThan(min[i]! - 1e-6);
      expect(part).toBeLessThan(max[i]! + 1e-6);
    });
    expect(kernel.keep(ball.intersect(body)).volume()).toBeLessThan(1e-6);
  }
});

test('it tips first over the nearest line between feet, from an edge of the tread, and the arrow goes that way', () => {
  const { feet, first } = data.stands!;
  const { min, max } = box(solids.boards.get('tread')!.body);
  for (const [, , z] of feet) expect(z).toBeCloseTo(0, 6);
  const { at, to } = first!;
  expect(at[2]).toBeCloseTo(max[2], 6);
  expect([min[0], max[0], min[1], max[1]].some((edge, i) => Math.abs(at[i >> 1]! - edge) < 0.01)).toBe(true);
  // how far each point lies inside the line from one foot to the next, counter-clockwise
  const inside = ([x, y]: Point) =>
    feet.map(([ax, ay], i) => {
      const [bx, by] = feet[(i + 1) % feet.length]!;
      return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);
    });
  const [from, end] = [inside(at), inside(to)];
  const nearest = from.indexOf(Math.min(...from));
  expect(from[nearest]! - end[nearest]!).toBeCloseTo(Math.hypot(to[0] - at[0], to[1] - at[1]), 6);
  expect(first!.text).toMatch(/tips first here, at \d.* N/);
});

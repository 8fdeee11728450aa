import { expect, test } from 'vitest';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import type { Board } from '../../src/board/index.js';
import { featureTable } from '../../src/drawing/board/index.js';
import { templatePlaces } from '../../src/drawing/index.js';
import { sawLines } from '../../src/drawing/printed-template/template-marks.js';
import type { Stroke } from '../../src/drawing/sheet/index.js';
import { templateFeatures } from '../../src/drawing/template/index.js';
import type { Vec2 } from '../../src/frame/index.js';
import { readParameters } from '../../src/model/index.js';
import { type Profile, tessellate } from '../../src/profile/index.js';

const boards: readonly Board[] = [
  ...stool.build(readParameters(stool, {}, 'mm')).boards,
  ...stool.build(readParameters(stool, { treads: '2' }, 'mm')).boards,
  ...jig.build(readParameters(jig, {}, 'mm')).boards,
].map(({ board }) => board);

/** Distance from a closed outline, below 0 inside it; by its corners, a chord at most 0.005 mm off its arc. */
function signedDistance(outline: Profile, [x, y]: Vec2): number {
  const corners = tessellate(outline);
  let [inside, least] = [false, Number.POSITIVE_INFINITY];
  corners.forEach(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  });
  return inside ? -least : least;
}

test('every pin touches the board from outside, on the side it is said to stand at', () => {
  let pins = 0;
  for (const board of boards) {
    for (const { kind, at, diameter, where } of templatePlaces(board, 8)) {
      if (kind === 'screw') {
        // a screw goes into wood that a hole takes away later
        const hole = board.holes[Number(/hole H(\d+)/.exec(where)![1]) - 1]!;
        const off = Math.hypot(at[0] - hole.at.origin[0], at[1] - hole.at.origin[1]);
        expect(off + diameter / 2).toBeLessThan(hole.diameter / 2);
        continue;
      }
      pins += 1;
      expect(signedDistance(board.outline, at), `${board.id} ${where}`).toBeCloseTo(diameter / 2, 2);
      if (where === 'on the reference edge') expect(at[1]).toBeCloseTo(-diameter / 2, 6);
      else {
        expect(where).toBe('on the reference end');
        expect(at[0]).toBeCloseTo(-diameter / 2, 6);
      }
    }
  }
  expect(pins).toBeGreaterThan(8);
});

const pointsOf = (stroke: Stroke): readonly Vec2[] => {
  if (stroke.kind === 'line') return [stroke.from, stroke.to];
  if (stroke.kind === 'arc') {
    const at = (share: number): Vec2 => {
      const angle = ((stroke.startDeg + stroke.sweepDeg * share) * Math.PI) / 180;
      return [
        stroke.centre[0] + stroke.radius * Math.cos(angle),
        stroke.centre[1] + stroke.radius * Math.sin(angle),
      ];
    };
    return [at(0), at(0.5), at(1)];
  }
  return [];
};

test('saw lines keep 2 mm in the waste: outside the board, inside its openings', () => {
  let [outside, within] = [0, 0];
  for (const board of boards) {
    for (const point of sawLines(board).flatMap(pointsOf)) {
      const fromBoard = signedDistance(board.outline, point);
      if (fromBoard > 0) {
        outside += 1;
        // round an inner corner two offset lines meet nearer to none, farther from both
        expect(fromBoard, board.id).toBeGreaterThan(2 - 0.01);
        continue;
      }
      within += 1;
      const opening = board.openings.find(({ outline }) => signedDistance(outline, point) < 0);
      expect(opening, `${board.id} at ${point}`).toBeDefined();
      expect(signedDistance(opening!.outline, point)).toBeLessThan(-2 + 0.01);
    }
  }
  expect(outside).toBeGreaterThan(20);
  expect(within).toBeGreaterThan(4);
});

test('a bevel is told to be longer on the face where its plane reaches farther out', () => {
  let bevels = 0;
  for (const board of boards) {
    const rows = templateFeatures(board, { cutter: 8, units: 'mm' });
    board.bevels.forEach((bevel, i) => {
      const { normal, point } = bevel;
      if (Math.abs(normal[2]) < 0.01 || Math.abs(normal[2]) > 0.99) return;
      bevels += 1;
      // out of the board along the grain or across it, at both wide faces: the plane is normal · (p − point) = 0
      const axis = Math.abs(normal[0]) > Math.abs(normal[1]) ? 0 : 1;
      const outAt = (z: number) =>
        Math.sign(normal[axis]) * (point[axis] - (normal[2] * (z - point[2])) / normal[axis]);
      const longer = outAt(0) > outAt(board.blank.thickness) ? 'reference' : 'opposite';
      const mark = `B${i + 1}`;
      expect(rows.find((one) => one.mark === mark)!.row).toContain(
        `the wood is longer on the ${longer} face`,
      );
      const [, ...table] = featureTable(board, 'mm');
      expect(table.find(([first]) => first === mark)?.join(' ')).toContain(`${longer} face longer`);
    });
  }
  expect(bevels).toBeGreaterThan(5);
});

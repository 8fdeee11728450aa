import { describe, expect, test } from 'vitest';
import { angleDeg, frame, WORLD } from '../../src/frame/index.js';
import { join } from '../../src/joinery/index.js';
import { speaker } from '../../src/length/index.js';
import { polygon } from '../../src/profile/index.js';
import { rakedPair, refusal, shelf, upright } from './on-the-bench.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

describe('the patch on which two boards touch', () => {
  test('is as large as the end that stands on the face', () => {
    const one = shelf();
    expect(join(one, upright(one)).joint.contactAreaMm2).toBeCloseTo(80 * 19.05, 3);
  });

  test('is only the part of the end that lies on the face', () => {
    const one = shelf();
    // 30 of its 80 stand beyond the shelf's end
    expect(join(one, upright(one, { at: [250, 40] })).joint.contactAreaMm2).toBeCloseTo(50 * 19.05, 3);
    // 9.05 of its thickness beyond the edge
    expect(join(one, upright(one, { at: [100, 90] }), { cutter: 4 }).joint.contactAreaMm2).toBeCloseTo(
      80 * 10,
      3,
    );
  });

  test.each([5, 12, 20])('of a leg raked by %i° is width × thickness / cosine', (degrees) => {
    const { tread, leg } = rakedPair(rad(degrees));
    expect(join(tread, leg).joint.contactAreaMm2).toBeCloseTo((200 * 28) / Math.cos(rad(degrees)), 2);
  });

  test('is one where a bevel leaves the end as it is', () => {
    const { tread, leg } = rakedPair(0);
    expect(join(tread, leg).joints.map(({ id }) => id)).toEqual(['tread/leg']);
  });

  test('is the larger of two feet of an arched end', () => {
    const one = shelf({ length: 400 });
    const arched = polygon([
      { x: 0, y: 0 },
      { x: 200, y: 0 },
      { x: 200, y: 200 },
      { x: 0, y: 200 },
      { x: 0, y: 130 },
      { x: 40, y: 130 },
      { x: 40, y: 60 },
      { x: 0, y: 60 },
    ]);
    const two = upright(one, { width: 200 }, { outline: arched });
    const { joint } = join(one, two);
    expect(joint.contactAreaMm2).toBeCloseTo(70 * 19.05, 3);
    expect(joint.seat.origin[0]).toBeCloseTo(100 + 165, 6);
  });

  test('has its z from the first board into the second, whichever is named first', () => {
    const one = shelf();
    const two = upright(one);
    expect(join(one, two).joint.seat.z[2]).toBeCloseTo(1, 12);
    expect(join(two, one).joint.seat.z[2]).toBeCloseTo(-1, 12);
    expect(angleDeg(join(two, one).joint.seat.x, join(one, two).joint.seat.x)).toBeCloseTo(0, 9);
  });
});

describe('boards that do not touch are refused', () => {
  const one = shelf();
  const told = (up: number) => refusal(() => join(one, upright(one, { up })));

  test('0.05 mm apart, with the gap and both faces', () => {
    const error = told(0.05);
    expect(error.code).toBe('no-contact');
    expect(error.message).toBe(
      'shelf and upright do not touch: opposite-face of shelf and reference-end of upright are 0.05 mm apart: move one board until they meet',
    );
    // 0.05 / 25.4 = 0.00197 in
    expect(error.explain(speaker('in'))).toContain('are 0.002" apart');
  });

  test('0.05 mm into each other, with the depth', () => {
    expect(told(-0.05).message).toContain('are 0.05 mm into each other: move');
  });

  test('by more than the flatness of a face, and not by less', () => {
    for (const up of [0.0012, -0.0012]) expect(told(up).code).toBe('no-contact');
    for (const up of [0.0008, -0.0008]) expect(join(one, upright(one, { up })).joint.tenons).toHaveLength(1);
  });

  test.each([0.05, 0.5, 3])('turned out of parallel by %f°, with the angle', (degrees) => {
    const tilt = rad(degrees);
    const square = upright(one);
    // turned about the edge of its foot, y
    const place = frame(square.place.origin, square.place.z, [Math.sin(tilt), 0, Math.cos(tilt)]);
    const error = refusal(() => join(one, { ...square, place }));
    expect(error.code).toBe('no-contact');
    expect(error.message).toContain(`are ${degrees}° out of parallel: bevel or turn`);
  });

  test('by a tilt that opens the far edge of a long seat, though the angle is within a face’s flatness', () => {
    // 0.0009° over 900 mm opens 0.014 mm
    const long = shelf({ length: 2000 });
    const tilt = rad(0.0009);
    const square = upright(long, { width: 900 });
    const place = frame(square.place.origin, square.place.z, [Math.sin(tilt), 0, Math.cos(tilt)]);
    const error = refusal(() => join(long, { ...square, place }));
    expect(error.message).toMatch(/are 0\.014 mm (apart|into each other)/);
  });

  test('beside each other, with no face that looks at the other', () => {
    const away = { ...upright(one), place: { ...WORLD, origin: [1000, 0, 300] as const } };
    expect(refusal(() => join(one, away)).message).toBe(
      'shelf and upright do not touch: no face of one faces the other: move a board until they meet',
    );
  });

  test('far above, with how far', () => {
    expect(told(150).message).toContain('are 150 mm apart');
  });
});

test('a tilt too small to see does not cost a joint its room', () => {
  const one = shelf();
  const square = upright(one);
  const straight = join(one, square);
  for (const degrees of [0.0004, -0.0004, 1e-6]) {
    const tilt = rad(degrees);
    const place = frame(
      square.place.origin,
      [0, Math.cos(tilt), -Math.sin(tilt)],
      [0, Math.sin(tilt), Math.cos(tilt)],
    );
    const { joint } = join(one, { ...square, place });
    expect(joint.tenons.map((tenon) => tenon.width)).toEqual(
      straight.joint.tenons.map((tenon) => tenon.width),
    );
    expect(joint.tenons[0]!.intoB).toBeCloseTo(straight.joint.tenons[0]!.intoB, 6);
  }
});

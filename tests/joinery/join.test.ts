import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dot, frame, frameOut, length, pointOut, subtract, type Vec3 } from '../../src/frame/index.js';
import { type JoinOptions, join, PRACTICE } from '../../src/joinery/index.js';
import { speaker } from '../../src/length/index.js';
import { seed } from '../properties/seed.js';
import { nth, rakedPair, refusal, shelf, upright } from './on-the-bench.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const pair = (thickness?: number, width?: number) => {
  const one = shelf({ ...(thickness === undefined ? {} : { thickness }), length: 700 });
  return [
    one,
    upright(one, {
      ...(thickness === undefined ? {} : { thickness }),
      ...(width === undefined ? {} : { width }),
    }),
  ] as const;
};

describe('sizes by common practice, no source', () => {
  test('3/8 in is the deepest mortise for a 3/4 in face', () => {
    expect(nth(join(...pair(19.05))).inA.depth).toBeCloseTo((3 / 8) * 25.4, 9);
  });

  test('an edge or end takes a mortise of four tenon thicknesses at most, less where the walls would get thin', () => {
    for (const thickness of [19.05, 28, 40]) {
      const joined = join(...pair(thickness));
      expect(nth(joined).inB.depth).toBeCloseTo(4 * nth(joined).tenon.thickness, 9);
    }
    for (const degrees of [5, 10, 15, 20]) {
      const { tread, leg } = rakedPair(rad(degrees));
      const { inB, tenon } = nth(join(tread, leg));
      expect(inB.depth).toBeLessThanOrEqual(4 * tenon.thickness);
    }
  });

  test('two mortises from both ends of a short board leave the usual wall between them', () => {
    const one = shelf();
    const short = upright(one, { length: 40 });
    // (40 − 6) / 2
    expect(nth(join(one, short)).inB.depth).toBeCloseTo(17, 9);
  });

  test('half an inch of wood is left at the ends of a row', () => {
    for (const width of [60, 80, 123.4, 300]) {
      const joined = join(...pair(19.05, width));
      const { seat, tenons } = joined.joint;
      const ends = tenons.flatMap((tenon) => {
        const middle = dot(subtract(tenon.place.origin, seat.origin), seat.x);
        const half = nth(joined).inA.length / 2;
        return [width / 2 - Math.abs(middle - half), width / 2 - Math.abs(middle + half)];
      });
      expect(Math.min(...ends)).toBeGreaterThanOrEqual(12.7 - 1e-9);
      // lengths are rounded down to half a millimetre, which leaves less than that over at both ends together
      if (tenons.length === 1) expect(Math.min(...ends)).toBeLessThan(12.7 + 0.25);
    }
  });

  test('half an inch of wood is left between two mortises of a row', () => {
    const joined = join(...pair(19.05, 400));
    const { tenons } = joined.joint;
    expect(tenons.length).toBeGreaterThan(2);
    const webs = tenons
      .slice(1)
      .map(
        (tenon, i) => length(subtract(tenon.place.origin, tenons[i]!.place.origin)) - nth(joined).inA.length,
      );
    for (const web of webs) expect(web).toBeGreaterThanOrEqual(12.7 - 1e-9);
  });

  test('a tenon is near one third of the thinner board, as near as the cutters at hand allow', () => {
    const cutters = [6, 8, 10, 12];
    for (let thickness = 18; thickness <= 40; thickness += 1.5) {
      const one = shelf({ thickness: thickness + 5 });
      const { joint } = join(one, upright(one, { thickness }), { cutters });
      const miss = (cutter: number) => Math.abs(cutter - thickness / 3);
      for (const other of cutters) expect(miss(joint.cutter)).toBeLessThanOrEqual(miss(other));
      expect(joint.thinner).toBe(thickness);
      expect(joint.tenons[0]!.thickness).toBeCloseTo(joint.cutter - 0.2, 9);
    }
  });

  test('a 1/4 in cutter takes a 6 mm tenon with 0.35 mm to spare in all', () => {
    const { inA, tenon } = nth(join(...pair(), { cutter: 25.4 / 4, tenonThickness: 6 }));
    expect(inA.width - tenon.thickness).toBeCloseTo(0.35, 9);
  });
});

describe('both mortises of a joint', () => {
  const part = fc.double({ min: -1, max: 1, noNaN: true });
  const direction = fc.tuple(part, part, part).filter((d) => length(d) > 0.2);

  test('have one middle, one length direction and opposite axes, wherever the boards stand', () => {
    fc.assert(
      fc.property(direction, direction, fc.integer({ min: 0, max: 20 }), (z, x, degrees) => {
        fc.pre(Math.abs(dot(z, x)) < 0.9 * length(z) * length(x));
        const stand = frame([x[0] * 900, z[1] * 500, x[2] * 300], z, x);
        const { tread, leg } = rakedPair(rad(degrees));
        const one = { ...tread, place: frameOut(stand, tread.place) };
        const two = { ...leg, place: frameOut(stand, leg.place) };
        const joined = join(one, two);
        joined.joint.tenons.forEach((tenon, n) => {
          const { inA, inB } = nth(joined, n);
          const [a, b] = [frameOut(one.place, inA.at), frameOut(two.place, inB.at)];
          expect(length(subtract(a.origin, b.origin))).toBeLessThan(1e-8);
          expect(length(subtract(a.origin, tenon.place.origin))).toBeLessThan(1e-8);
          expect(dot(a.z, b.z)).toBeCloseTo(-1, 12);
          expect(dot(a.x, b.x)).toBeCloseTo(1, 12);
          // out of each board's wood: from a into b
          expect(dot(a.z, joined.joint.seat.z)).toBeCloseTo(1, 12);
          expect([inA.width, inA.length]).toEqual([inB.width, inB.length]);
        });
      }),
      seed(60),
    );
  });

  test('are as deep together as the tenon is long with a gap at each end', () => {
    const { inA, inB, tenon } = nth(join(...pair(), { endGap: 1.5 }));
    expect(inA.depth + inB.depth).toBeCloseTo(tenon.length + 3, 9);
    expect(inA.depth).toBeCloseTo(tenon.intoA + 1.5, 9);
    expect(inA.length).toBeCloseTo(tenon.width + PRACTICE.edgeClearance, 9);
  });

  test('lie on the faces that touch, in the order the boards were named', () => {
    const joined = join(...pair());
    expect([nth(joined).inA.face, nth(joined).inB.face]).toEqual(['opposite-face', 'reference-end']);
    expect(joined.joint).toMatchObject({ id: 'shelf/upright', a: 'shelf', b: 'upright' });
    expect(nth(joined).inA.at.origin[2]).toBeCloseTo(19.05, 9);
    expect(nth(joined).inB.at.origin[0]).toBeCloseTo(0, 9);
  });

  test('are added to those a board has already', () => {
    const [one, two] = pair(19.05, 80);
    const first = join(one, two);
    const next = { ...upright(one, { at: [300, 40] }) };
    const other = { ...next, board: { ...next.board, id: 'second' } };
    const second = join({ ...one, board: first.a }, other);
    expect(second.a.mortises.map(({ joint }) => joint)).toEqual(['shelf/upright', 'shelf/second']);
    expect(one.board.mortises).toEqual([]);
  });
});

describe('what is asked for is done', () => {
  const [one, two] = pair(40, 200);
  const along = (options: JoinOptions) => {
    const { joint } = join(one, two, options);
    return joint.tenons.map((tenon) => dot(subtract(tenon.place.origin, joint.seat.origin), joint.seat.x));
  };
  const across = (options: JoinOptions) => {
    const { joint } = join(one, two, options);
    return joint.tenons.map((tenon) => dot(subtract(tenon.place.origin, joint.seat.origin), joint.seat.y));
  };

  test('number and width of tenons', () => {
    const joined = join(one, two, { tenons: 3, tenonWidth: 30 });
    expect(joined.joint.tenons).toHaveLength(3);
    for (const tenon of joined.joint.tenons) expect(tenon.width).toBeCloseTo(30, 9);
    expect(nth(joined).inA.length).toBeCloseTo(31, 9);
    // the outer ones against the insets: (200 − 2 · 12.7 − 31) / 2
    expect(along({ tenons: 3, tenonWidth: 30 }).map((x) => Math.round(x * 1e6) / 1e6)).toEqual([
      -71.8, 0, 71.8,
    ]);
  });

  test('number alone shares the room, less a web between each two', () => {
    for (const tenons of [1, 2, 3, 4]) {
      const joined = join(one, two, { tenons, web: 10, endInset: 15 });
      const most = (200 - 30 - (tenons - 1) * 10) / tenons;
      expect(nth(joined).inA.length).toBeLessThanOrEqual(most);
      expect(nth(joined).inA.length).toBeGreaterThan(most - 0.5);
    }
  });

  test('depths by board', () => {
    const joined = join(one, two, { depths: { shelf: 12, upright: 30 } });
    expect([nth(joined).inA.depth, nth(joined).inB.depth]).toEqual([12, 30]);
    expect(nth(join(one, two, { depths: { upright: 30 } })).inA.depth).toBeCloseTo(20, 9);
  });

  test('cutter, tenon thickness and clearances', () => {
    const { inA, tenon } = nth(join(one, two, { cutter: 12.7, cheekClearance: 0.05, edgeClearance: 2 }));
    expect(inA.width).toBe(12.7);
    expect(tenon.thickness).toBeCloseTo(12.6, 9);
    expect(inA.length - tenon.width).toBeCloseTo(2, 9);
  });

  test('shift along the row, both ways', () => {
    const options = { tenons: 1, tenonWidth: 60 };
    expect(along(options)[0]).toBeCloseTo(0, 9);
    for (const shiftAlong of [25, -25])
      expect(along({ ...options, shiftAlong })[0]).toBeCloseTo(shiftAlong, 9);
  });

  test('shift across the row, both ways', () => {
    expect(across({})[0]).toBeCloseTo(0, 9);
    for (const shiftAcross of [6, -6]) expect(across({ shiftAcross })[0]).toBeCloseTo(shiftAcross, 9);
  });

  test('a row across the longer side of the seat', () => {
    const straight = join(one, two).joint.seat;
    const turned = join(one, two, { turned: true, cutter: 8, tenons: 1 });
    expect(dot(turned.joint.seat.x, straight.x)).toBeCloseTo(0, 12);
    // 40 of thickness less two insets, rounded down
    expect(nth(turned).inA.length).toBeCloseTo(14.5, 9);
  });

  test('a name of its own', () => {
    expect(join(one, two, { id: 'corner' }).joint.tenons[0]!.id).toBe('corner/1');
  });
});

describe('what cannot be done is refused with the figures and the remedy', () => {
  const [one, two] = pair(19.05, 80);
  test.each<[JoinOptions, string, string]>([
    [{ cutter: 0 }, 'join-option', 'cutter is 0 mm; it must be more than 0'],
    [{ cutter: Number.NaN }, 'join-option', 'cutter is NaN: give a number'],
    [{ tenonWidth: -1 }, 'join-option', 'tenon width is -1 mm; it must be more than 0'],
    [{ tenonThickness: 0 }, 'join-option', 'tenon thickness is 0 mm'],
    [{ cheekClearance: -0.1 }, 'join-option', 'cheek clearance is -0.1 mm; it must be 0 or more'],
    [{ edgeClearance: -1 }, 'join-option', 'edge clearance is -1 mm'],
    [{ endGap: -1 }, 'join-option', 'end gap is -1 mm'],
    [{ endInset: -1 }, 'join-option', 'end inset is -1 mm'],
    [{ web: -1 }, 'join-option', 'web is -1 mm'],
    [{ shiftAcross: Number.POSITIVE_INFINITY }, 'join-option', 'shiftAcross is Infinity'],
    [{ tenons: 0 }, 'join-option', 'it asks for 0 tenons: give a whole number, 1 or more'],
    [{ tenons: 1.5 }, 'join-option', 'it asks for 1.5 tenons'],
    [
      { depths: { lid: 10 } },
      'join-option',
      'it gives a depth for lid, which is not in this joint: name shelf or upright',
    ],
    [{ depths: { shelf: 0 } }, 'join-option', 'the depth in shelf is 0 mm; it must be more than 0'],
    [{ depths: { shelf: Number.NaN } }, 'join-option', 'the depth in shelf is NaN: give a number'],
    [
      { tenonwidth: 30 } as JoinOptions,
      'join-option',
      'there is no option tenonwidth: use one of id, cutter',
    ],
    [{ cutter: 0.2 }, 'no-room', 'a 0.2 mm cutter with 0.1 mm of clearance at each cheek leaves no tenon'],
    [
      { cutter: 6, tenonThickness: 7 },
      'no-room',
      'its tenon is 7 mm thick, and the cutter makes a mortise 6 mm wide',
    ],
    [{ cutter: 20 }, 'no-room', 'wide; it must be at least as wide as the cutter, 20 mm'],
    [
      { tenons: 5 },
      'no-room',
      'its seat is 80.0 mm long; with 12.7 mm kept at each end and 5 tenons a mortise would be 0.5 mm long; it must be at least 10.0 mm',
    ],
    [{ endInset: 38 }, 'no-room', 'with 38 mm kept at each end and 1 tenon a mortise would be 4.0 mm long'],
    [{ tenonWidth: 85 }, 'no-room', 'a mortise of 86.5 mm needs 86.5 mm, and its seat is only 80.0 mm long'],
    [
      { tenonWidth: 30, tenons: 3 },
      'no-room',
      '3 mortises of 31.0 mm need 93.0 mm, and its seat is only 80.0 mm long',
    ],
    [{ tenonWidth: 4, cutter: 8 }, 'no-room', 'its tenons are 4 mm wide; they must be at least 7.8 mm'],
    [{ edgeClearance: 60 }, 'no-room', 'a mortise would be 54.5 mm long; it must be at least 65.8 mm'],
    [{ depths: { shelf: 1 } }, 'no-room', 'the tenon stays 1 mm from each bottom, so no tenon is left'],
    [
      { shiftAcross: 7 },
      'no-room',
      'the shift across puts its mortises 7 mm off the middle of its seat; 6.525 mm either way is the most',
    ],
    [{ shiftAcross: 30 }, 'no-room', 'no straight mortise fits 30 mm off the middle of its seat'],
    [
      { shiftAlong: 13, tenons: 1 },
      'no-room',
      'the shift along its seat moves a mortise by 13 mm; beyond 12.75 mm either way',
    ],
  ])('%o', (options, code, text) => {
    const error = refusal(() => join(one, two, options));
    expect(error.message).toContain(text);
    expect(error.code).toBe(code);
    expect(error.message).toMatch(/^joint shelf\/upright: /);
    // a remedy ends every text
    expect(error.message).toMatch(/: [^:]+$/);
  });

  test('in inches for a person who works in inches', () => {
    const error = refusal(() => join(one, two, { cutter: 25.4 }));
    expect(error.explain(speaker('in'))).toContain(
      'its seat is 3/4" wide; it must be at least as wide as the cutter, 1"',
    );
    expect(error.explain(speaker('in'))).not.toContain('mm');
  });
});

test('the row of a seat with an opening in its middle is refused with its size', () => {
  const one = shelf({ length: 300, width: 100 });
  const opened = {
    ...one,
    board: {
      ...one.board,
      openings: [
        {
          id: 'hole',
          outline: [
            { x: 135, y: 45, bulge: 0 },
            { x: 145, y: 45, bulge: 0 },
            { x: 145, y: 55, bulge: 0 },
            { x: 135, y: 55, bulge: 0 },
          ],
        },
      ],
    },
  };
  const error = refusal(() => join(opened, upright(one, { thickness: 20, at: [100, 40] })));
  expect(error.message).toContain(
    'no straight mortise fits round the middle of its seat, 80.0 mm long and 20.0 mm wide',
  );
});

test('the same joint on the left and on the right reads alike: mortises run to the right, away or up', () => {
  const { tread, leg } = rakedPair(rad(10));
  const half = frame([0, 0, 0], [0, 0, 1], [-1, 0, 0]);
  const turned = (j: typeof tread) => ({ ...j, place: frameOut(half, j.place) });
  const [left, right] = [join(tread, leg), join(turned(tread), turned(leg))];
  for (const { joint } of [left, right]) {
    const x: Vec3 = joint.seat.x;
    expect(x[1]).toBeCloseTo(1, 9);
  }
  const mouth = (joined: typeof left) => pointOut(joined.joint.seat, [0, 0, 0]);
  expect(mouth(left)[2]).toBeCloseTo(0, 9);
});

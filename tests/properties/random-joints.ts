import fc from 'fast-check';
import type { Design } from '../../src/assembly/index.js';
import { JoinError } from '../../src/errors.js';
import { splayedBase } from '../shop/splayed-base.js';
import { mitredRing, turnedSeat } from '../shop/turned-joints.js';

const tenths = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 10), max: Math.round(max * 10) }).map((n) => n / 10);

/** A design that joints at angles make, and what it is in words. */
export interface Angled {
  readonly what: string;
  readonly build: () => Design;
}

const told = <T>(kind: string, given: T, build: (given: T) => Design): Angled => ({
  what: `${kind} ${JSON.stringify(given)}`,
  build: () => build(given),
});

/** How far a leg's middle keeps from the seat's edges: its corners stay under the seat however it is turned. */
const MARGIN = 45;

/** Up to four legs, each in its own quarter of a seat and turned by any angle. */
const turned = fc
  .record({
    length: tenths(260, 620),
    width: tenths(240, 520),
    thickness: tenths(24, 45),
    section: fc.tuple(tenths(50, 70), tenths(30, 45)),
    legs: fc.array(
      fc.record({
        x: fc.double({ min: 0, max: 1, noNaN: true }),
        y: fc.double({ min: 0, max: 1, noNaN: true }),
        turnDeg: fc.oneof(
          tenths(0, 180),
          fc.double({ min: 0, max: 180, noNaN: true }),
          fc.constantFrom(0, 30, 45, 60, 90, 135, 180),
        ),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    cutter: fc.constantFrom(8, 10),
  })
  .map(({ length, width, legs, cutter, ...sizes }) =>
    told(
      'a seat on turned legs',
      {
        ...sizes,
        length,
        width,
        options: { cutter },
        legs: legs.map(({ x, y, turnDeg }, i) => {
          const quarter = (from: number, share: number, whole: number): number =>
            (from === 0 ? MARGIN : whole / 2 + MARGIN) + share * (whole / 2 - 2 * MARGIN);
          return { turnDeg, at: [quarter(i % 2, x, length), quarter(i < 2 ? 0 : 1, y, width)] as const };
        }),
      },
      turnedSeat,
    ),
  );

const mitred = fc
  .record({
    sides: fc.integer({ min: 3, max: 8 }),
    side: tenths(320, 700),
    railWidth: tenths(45, 90),
    thickness: tenths(20, 45),
    options: fc.record({ cutter: fc.constantFrom(6, 8) }),
  })
  .map((given) => told('a mitred ring', given, mitredRing));

const splayed = fc
  .record({
    rakeDeg: tenths(0, 12),
    splayDeg: tenths(0, 12),
    rails: fc.boolean(),
    topAxis: fc.constant('face' as const),
    into: fc.constantFrom(14, 18, 22),
    cheek: fc.constantFrom(0.05, 0.1),
  })
  .map((given) => told('a splayed base', given, splayedBase));

/** Designs with turned, mitred and compound-lean joints. */
export const angled: fc.Arbitrary<Angled> = fc.oneof(turned, mitred, splayed);

/** @returns the refusal of a joint that has no room; any other error is a fault and is thrown */
export function builtAngled({ build }: Angled): Design | JoinError {
  try {
    return build();
  } catch (error) {
    if (error instanceof JoinError) return error;
    throw error;
  }
}

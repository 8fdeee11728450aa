import { expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import {
  boltLengthFrom,
  boltLengths,
  boltLengthUpTo,
  fastener,
  fastenerSizes,
} from '../../src/tables/index.js';

const metric = fastenerSizes.filter((size) => size.startsWith('M'));
const inch = fastenerSizes.filter((size) => !size.startsWith('M'));

test('the table holds the sizes a jig is made with', () => {
  expect(fastenerSizes).toEqual(['M5', 'M6', 'M8', 'M10', '1/4', '5/16', '3/8']);
});

test.each([
  // ISO 273 medium; ISO 4014 s, k; ISO 4032 m; ISO 7089 d2; ISO 7093-1 d2
  ['M5', 5.5, 8, 3.5, 4.7, 10, 15],
  ['M6', 6.6, 10, 4, 5.2, 12, 18],
  ['M8', 9, 13, 5.3, 6.8, 16, 24],
  ['M10', 11, 16, 6.4, 8.4, 20, 30],
])(
  '%s has the sizes of ISO 273, 4014, 4032, 7089 and 7093',
  (size, hole, flats, head, nut, washer, large) => {
    const row = fastener(size);
    expect(row.clearanceHole).toBe(hole);
    expect(row.hexHead).toMatchObject({ acrossFlats: flats, height: head });
    expect(row.nut).toEqual({ acrossFlats: flats, thickness: nut });
    expect([row.washer.diameter, row.largeWasher.diameter]).toEqual([washer, large]);
  },
);

test.each(metric)('%s: a cap head is as high as the thread is thick (ISO 4762)', (size) => {
  const { diameter, capHead } = fastener(size);
  expect(diameter).toBe(Number(size.slice(1)));
  expect(capHead.height).toBe(diameter);
});

test.each(metric)('%s: a countersunk head is 2.24 d wide and 0.62 d high (ISO 10642)', (size) => {
  const { diameter, countersunkHead } = fastener(size);
  expect(countersunkHead.diameter).toBeCloseTo(2.24 * diameter, 6);
  expect(countersunkHead.height).toBeCloseTo(0.62 * diameter, 6);
});

test.each([
  // ASME B18.2.1 and B18.2.2, mm as printed in metric conversions of those tables
  ['1/4', 6.35, 11.1125, 4.366, 12.7],
  ['5/16', 7.9375, 12.7, 5.556, 15.875],
  ['3/8', 9.525, 14.2875, 6.35, 18.644],
])('%s in has the sizes of ASME B18.2.1 and the narrow washer, in mm', (size, d, flats, head, washer) => {
  const row = fastener(size);
  expect(row.diameter).toBeCloseTo(d, 6);
  expect(row.hexHead.acrossFlats).toBeCloseTo(flats, 6);
  expect(row.hexHead.height).toBeCloseTo(head, 3);
  expect(row.washer.diameter).toBeCloseTo(washer, 3);
});

test.each(inch)('%s in: a normal clearance hole is 1/32 in over the thread (ASME B18.2.8)', (size) => {
  const row = fastener(size);
  expect(row.clearanceHole).toBeCloseTo(row.diameter + 25.4 / 32, 6);
});

test.each([
  ['1/4', 20],
  ['5/16', 18],
  ['3/8', 16],
])('%s in has %i threads to the inch (ASME B1.1 coarse)', (size, threads) => {
  expect(25.4 / fastener(size).pitch).toBeCloseTo(threads, 4);
});

test.each(fastenerSizes)('%s: a hexagon lies between its round and its sharp corners', (size) => {
  const { acrossFlats, acrossCornersLeast } = fastener(size).hexHead;
  expect(acrossCornersLeast).toBeLessThan((acrossFlats * 2) / Math.sqrt(3));
  expect(acrossCornersLeast).toBeGreaterThan(acrossFlats * 1.08);
});

test.each(fastenerSizes)('%s: the washers pass the thread and cover the clearance hole', (size) => {
  const { diameter, clearanceHole, washer, largeWasher } = fastener(size);
  for (const each of [washer, largeWasher]) {
    expect(each.bore).toBeGreaterThan(diameter);
    expect(each.diameter).toBeGreaterThan(clearanceHole + 2);
  }
  expect(largeWasher.diameter).toBeGreaterThan(washer.diameter);
});

test('an unknown size is refused with the nearest one', () => {
  expect(() => fastener('M 8')).toThrow(InputError);
  expect(() => fastener('M 8')).toThrow("did you mean 'M8'?");
  expect(() => fastener('5/16in')).toThrow("did you mean '5/16'?");
});

test('bolt lengths are found upwards and downwards and end where the table ends', () => {
  expect(boltLengthFrom('metric', 70.1)).toBe(80);
  expect(boltLengthFrom('metric', 70)).toBe(70);
  expect(boltLengthUpTo('metric', 69.9)).toBe(65);
  expect(boltLengthFrom('inch', 60)).toBeCloseTo(2.5 * 25.4, 9);
  expect(boltLengthFrom('metric', 500)).toBeUndefined();
  expect(boltLengthUpTo('inch', 1)).toBeUndefined();
});

test.each(['metric', 'inch'] as const)('%s bolt lengths rise', (system) => {
  const lengths = boltLengths(system);
  expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
  expect(lengths.length).toBeGreaterThan(15);
});

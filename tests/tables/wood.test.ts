import { expect, test } from 'vitest';
import { cutters, density, routerSpeedLimit, sheet, species, speciesNames } from '../../src/tables/index.js';

/**
 * The movement coefficient is the shrinkage spread linearly from the start of shrinking to 0 %, referred to the size at
 * 10 %: C = S / (3000 − 20 S) from 30 %, S / (2200 − 12 S) from 22 % (Wood Handbook, chapter 13).
 */
const coefficient = (percent: number, start: number) => percent / (100 * start - percent * (start - 10));

const measured = speciesNames
  .map(species)
  .flatMap(({ name, shrinkage, movement }) => (shrinkage && movement ? [{ name, shrinkage, movement }] : []));

test.each(measured.filter((row) => !row.movement.byGroup))(
  '$name: shrinkage and movement, two tables of the handbook, agree',
  ({ shrinkage, movement }) => {
    expect(
      Math.abs(coefficient(shrinkage.radialPercent, shrinkage.startPercent) - movement.radial),
    ).toBeLessThan(1.1e-5);
    expect(
      Math.abs(coefficient(shrinkage.tangentialPercent, shrinkage.startPercent) - movement.tangential),
    ).toBeLessThan(1.1e-5);
  },
);

test('movement by commercial group is marked, because no one species gives it', () => {
  expect(measured.filter((row) => row.movement.byGroup).map((row) => row.name)).toEqual([
    'northern red oak',
    'white oak',
    'shagbark hickory',
  ]);
});

test('white ash weighs 672 kg/m³ at 12 % (specific gravity 0.60, Wood Handbook Table 5–3)', () => {
  expect(species('white ash').density).toBeCloseTo(672, 9);
  expect(density('white ash')).toBe(species('white ash').density);
});

test('sugar maple is as strong as the metric table prints: 109 000 kPa and 12 600 MPa, each rounded', () => {
  const maple = species('sugar maple');
  expect(Math.round(maple.rupture)).toBe(109);
  expect(Math.round(maple.elasticity / 100)).toBe(126);
});

test('every wood shrinks more along the rings than across them', () => {
  expect(measured.length).toBeGreaterThan(15);
  for (const { shrinkage, movement } of measured) {
    expect(shrinkage.tangentialPercent).toBeGreaterThan(shrinkage.radialPercent);
    expect(movement.tangential).toBeGreaterThan(movement.radial);
  }
});

test('a name in neither table is refused with the nearest one', () => {
  expect(() => species('white ahs')).toThrow("did you mean 'white ash'?");
  expect(() => sheet('birch ply')).toThrow("did you mean 'birch plywood'?");
  expect(() => density('hard board')).toThrow("did you mean 'hardboard'?");
});

test('fibreboard weighs what its makers print, 700 to 800 kg/m³', () => {
  expect(sheet('medium density fibreboard').density).toBe(750);
  expect(density('medium density fibreboard')).toBe(750);
});

test('cutters of both systems are in mm', () => {
  expect(cutters().map((cutter) => cutter.diameter)).toEqual([6, 8, 10, 12, 6.35, 7.9375, 9.525, 12.7]);
});

test.each([
  [6, 24000],
  [25.4, 24000],
  [25.5, 18000],
  [64, 12000],
])('a cutter of %f mm may turn at %i in a minute', (diameter, rpm) => {
  expect(routerSpeedLimit(diameter)).toBe(rpm);
});

test.each([0, -3, Number.NaN, 120])('a cutter of %f mm has no speed', (diameter) => {
  expect(() => routerSpeedLimit(diameter)).toThrow('has no speed in the table');
});

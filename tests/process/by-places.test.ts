import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, test } from 'vitest';
// @ts-expect-error a script of the build, without types
import { byPlaces } from '../../scripts/by-places.mjs';

const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-by-places-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Arrays taken apart and walked in every way the program does; the same with what is no array. */
const SOURCE = `
type Point = readonly [number, number];
interface Line { readonly ends: readonly [Point, Point]; readonly name?: string }
const add = ([a, b]: Point, [c, d]: Point): Point => [a + c, b + d];
function sum([first = 7, ...rest]: readonly (number | undefined)[], by: number): number {
  let all = first;
  for (const one of rest) all += one ?? 0;
  return all * by;
}
const between = ({ ends: [from, to] }: Line): Point => [to[0] - from[0], to[1] - from[1]];
const swapped = ([x, y] = [1, 2] as Point) => { let [p, q] = [x, y]; [p, q] = [q, p]; return [p, q]; };
const skipped = (all: readonly number[]) => { const [, second, , fourth = 9] = all; return [second, fourth]; };
export const walk = (): unknown => {
  const calls: (() => number)[] = [];
  const seen: number[] = [];
  const growing = [1, 2];
  for (const one of growing) {
    if (growing.length < 5) growing.push(one + 10);
    if (one === 2) continue;
    if (one > 20) break;
    calls.push(() => one);
  }
  for (const [[a], { name = 'none' }] of [[[3, 4], { name: undefined }]] as [Point, { name?: string }][]) seen.push(a, name.length);
  return [add([1, 2], [3, 4]), sum([undefined, 2, 3], 2), between({ ends: [[1, 1], [4, 5]] }), swapped(), skipped([1, 2, 3]),
    calls.map((call) => call()), seen];
};
export const others = (): unknown => {
  const told: unknown[] = [];
  for (const [key, value] of new Map([['a', 1], ['b', 2]])) told.push(key, value);
  const [first] = new Set([5, 6]);
  const [letter, next] = 'xyz';
  const made = function* ([from, to]: Point) { for (let i = from; i < to; i += 1) yield i; };
  const [one, two] = made([3, 6]);
  return [told, first, letter, next, one, two];
};
`;

/** What is done while no array can be walked by an iterator. */
function withoutIterators<T>(work: () => T): T {
  const usual = Array.prototype[Symbol.iterator];
  // biome-ignore lint/suspicious/noExplicitAny: taken away for a moment
  const bare = Array.prototype as any;
  bare[Symbol.iterator] = undefined;
  try {
    return work();
  } finally {
    bare[Symbol.iterator] = usual;
  }
}

test('arrays are taken apart and walked by their places with the same results, and what is no array as it is written', async () => {
  const file = path.join(folder, 'source.mts');
  writeFileSync(file, SOURCE);
  const text = byPlaces([file]).get(file)!;
  const lowered = path.join(folder, 'lowered.mjs');
  writeFileSync(lowered, text);
  const { walk, others } = await import(pathToFileURL(lowered).href);
  const expected = [[4, 6], 24, [3, 4], [2, 1], [2, 9], [1, 11, 12], [3, 4]];
  expect(walk()).toEqual(expected);
  expect(others()).toEqual([['a', 1, 'b', 2], 5, 'x', 'y', 3, 4]);
  // neither is a swap nor an array inside an object taken apart by places yet
  const bare = SOURCE.replace('[p, q] = [q, p];', 'const r = p; p = q; q = r;')
    .replace(
      '{ ends: [from, to] }: Line): Point => [',
      '{ ends }: Line): Point => { const [from, to] = ends; return [',
    )
    .replace('to[1] - from[1]];', 'to[1] - from[1]]; };');
  const plain = path.join(folder, 'plain.mts');
  writeFileSync(plain, bare);
  writeFileSync(lowered.replace('lowered', 'plain'), byPlaces([plain]).get(plain)!);
  const walked = await import(pathToFileURL(lowered.replace('lowered', 'plain')).href);
  expect(withoutIterators(() => walked.walk())).toEqual(expected);
});
